import { describe, expect, test } from "vitest";
import type { Result } from "../../src/graph/types.ts";
import { networkOf } from "../../src/network/network.ts";
import { neighboursOf, partsInRow } from "../../src/telling/neighbours.ts";

const network = networkOf(
  [
    { id: "barn", role: "roof" },
    { id: "totes", role: "tank" },
    { id: "tub", role: "tank" },
    { id: "wand", role: "waterer" },
    { id: "cell", role: "battery" },
    { id: "bed", role: "bed" },
  ],
  [
    { kind: "catches", by: "barn", from: "barn", to: "totes", stopped: null },
    { kind: "feeds", by: "hose", from: "totes", to: "tub", stopped: null },
    { kind: "draws", by: "wand", from: "tub", to: "wand", stopped: null },
    { kind: "powers", by: "wand", from: "cell", to: "wand", stopped: null },
    { kind: "waters", by: "bed", from: "wand", to: "bed", stopped: null },
  ],
);
const held: Result = { state: "ready", value: network, origin: "computed" };
const asked = { cards: [], result: (id: string) => (id === "season.network" ? held : undefined) };

describe("a part's neighbours", () => {
  test("a line stands between the tanks that it joins", () => {
    expect(neighboursOf(asked, "totes")).toEqual({
      before: [{ words: "filled by", ids: ["barn"] }],
      after: [{ words: "feeds", ids: ["hose"] }],
    });
    expect(neighboursOf(asked, "hose").after).toEqual([{ words: "feeds", ids: ["tub"] }]);
    expect(neighboursOf(asked, "tub").before).toEqual([{ words: "filled by", ids: ["hose"] }]);
  });
  test("what drives and what is drawn from are told apart", () => {
    expect(neighboursOf(asked, "wand")).toEqual({
      before: [
        { words: "draws from", ids: ["tub"] },
        { words: "powered by", ids: ["cell"] },
      ],
      after: [{ words: "waters", ids: ["bed"] }],
    });
  });
  test("what hangs on nothing has none", () => {
    expect(neighboursOf(asked, "site")).toEqual({ before: [], after: [] });
  });
  test("the row goes as the water goes, and each card stands in it once", () => {
    const ids = ["site", "barn", "totes", "tub", "hose", "wand", "cell", "bed", "season"];
    const row = partsInRow(asked, ids);
    expect(row).toEqual(["site", "barn", "totes", "hose", "tub", "cell", "wand", "bed", "season"]);
  });
  test("a ring is cut where the page begins it", () => {
    const ring = networkOf(
      [
        { id: "a", role: "tank" },
        { id: "b", role: "tank" },
      ],
      [
        { kind: "spills", by: "a", from: "a", to: "b", stopped: null },
        { kind: "spills", by: "b", from: "b", to: "a", stopped: null },
      ],
    );
    const value: Result = { state: "ready", value: ring, origin: "computed" };
    expect(partsInRow({ cards: [], result: () => value }, ["b", "a"])).toEqual(["b", "a"]);
  });
});
