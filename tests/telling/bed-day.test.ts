// What the waterings of a day lacked: the tank that had run out has its name, and beds with the same to say share a sentence.

import { describe, expect, test } from "vitest";
import { BOUNDS, type Bound } from "../../src/network/bounds.ts";
import { type Edge, networkOf } from "../../src/network/network.ts";
import { dayNotes, type NotedBed } from "../../src/telling/bed-day.ts";
import { tanksNamed } from "../../src/telling/named-tanks.ts";

const lacking = (title: string, bound: Bound, given = 0, tanks?: NotedBed["tanks"]): NotedBed => ({
  title,
  ways: ["Hose"],
  ...(tanks ? { tanks } : {}),
  notes: {
    given: new Float64Array([given]),
    lacked: new Uint8Array([BOUNDS.indexOf(bound) + 1]),
    lastBy: new Uint8Array([given > 0 ? 1 : 0]),
    unfilled: new Uint8Array([1]),
    driver: "either",
  },
});
const said = (beds: readonly NotedBed[]): readonly string[] => dayNotes(beds, 0, (si) => `${si} L`);

describe("the notes of a day", () => {
  test("name the tank that had run out", () => {
    const tanks = { reach: "Kitchen drums", filled: "" };
    expect(said([lacking("Kitchen bed", "storage", 0, tanks)])).toEqual([
      "Kitchen bed got nothing: Kitchen drums had run out, having spilled earlier.",
    ]);
    expect(said([lacking("Kitchen bed", "rain", 3, tanks)])).toEqual([
      "Kitchen bed got only 3 L: Kitchen drums had run out, for want of rain.",
    ]);
  });

  test("say once what holds of two beds, count more, and keep apart what is not the same", () => {
    const [a, b, c] = ["A", "B", "C"].map((title) => lacking(title, "rain")) as [
      NotedBed,
      NotedBed,
      NotedBed,
    ];
    const why = "got nothing: the water had run out, for want of rain.";
    expect(said([a, b])).toEqual([`A and B ${why}`]);
    expect(said([a, b, c])).toEqual([`3 beds ${why}`]);
    expect(said([a, lacking("D", "hands"), b])).toEqual([
      `A and B ${why}`,
      "D got nothing: your time ran out.",
    ]);
  });
});

test("beds that lacked the same share a sentence, however much each of them got", () => {
  const tanks = { reach: "Two totes", filled: "" };
  const ran = (title: string, given: number) => lacking(title, "storage", given, tanks);
  const why = "Two totes had run out, having spilled earlier.";
  expect(said([ran("A", 0), ran("B", 3), ran("C", 0), ran("D", 4)])).toEqual([
    `A and C got nothing, B got only 3 L, D got only 4 L: ${why}`,
  ]);
  expect(said([ran("A", 3), ran("B", 3)])).toEqual([`A and B got only 3 L each: ${why}`]);
  const eight = ["A", "B", "C", "D", "E", "F", "G", "H"].map((title, at) => ran(title, at < 4 ? 0 : at));
  expect(said(eight)).toEqual([`4 beds got nothing, 4 beds got only part of their water: ${why}`]);
});

describe("the tanks of a bed", () => {
  const edge = (kind: Edge["kind"], by: string, from: string, to: string): Edge => ({
    kind,
    by,
    from,
    to,
    stopped: null,
  });
  const network = networkOf(
    [
      { id: "upper", role: "tank" },
      { id: "lower", role: "tank" },
      { id: "drums", role: "tank" },
      { id: "hose", role: "waterer" },
      { id: "cans", role: "waterer" },
      { id: "near", role: "bed" },
      { id: "far", role: "bed" },
      { id: "both", role: "bed" },
    ],
    [
      edge("feeds", "line", "upper", "lower"),
      edge("draws", "hose", "lower", "hose"),
      edge("draws", "cans", "drums", "cans"),
      edge("waters", "far", "hose", "far"),
      edge("waters", "near", "cans", "near"),
      edge("waters", "both", "hose", "both"),
      edge("waters", "both", "cans", "both"),
    ],
  );
  const named = (bed: string) => tanksNamed(network, bed, (id) => id);

  test("are all whose water comes to it, and none is named where these are all that there are", () => {
    expect(named("near")).toEqual({ reach: "drums", filled: "" });
    expect(named("far")).toEqual({ reach: "lower and upper", filled: "lower" });
    expect(named("both").reach).toBe("");
  });
});
