// The network: plain nodes and edges, and the questions that cards, season, scene and sentences ask of them.

import { describe, expect, test } from "vitest";
import { bedsServed, bedsStraightFrom, firstTankOf, takersOf, waterersOf } from "../../src/network/beds.ts";
import { fedBy, feedersOf, fillersOf, isRoofed, overflowEnd, stepsDown } from "../../src/network/feeds.ts";
import { goesTo, leaningOn } from "../../src/network/gone.ts";
import {
  type Edge,
  type EdgeKind,
  type Network,
  networkOf,
  type Role,
  whyStopped,
  withDryJoints,
  withStopped,
} from "../../src/network/network.ts";
import { chargersOf, driverOf } from "../../src/network/power.ts";

const edge = (
  kind: EdgeKind,
  by: string,
  from: string,
  to: string | null,
  stopped: string | null = null,
): Edge => ({
  kind,
  by,
  from,
  to,
  stopped,
});

/** An upper tank feeds two tubs through a joint; a barrel spills into the upper; one bed by hose and can, one by can. */
function place(more: { readonly mainStopped?: string } = {}): Network {
  const roles: Readonly<Record<string, Role>> = {
    roof: "roof",
    barrel: "tank",
    upper: "tank",
    joint: "joint",
    tub: "tank",
    far_tub: "tank",
    hose: "waterer",
    can: "waterer",
    pump: "pump",
    battery: "battery",
    panel: "panel",
    bed: "bed",
    far_bed: "bed",
    goats: "draw",
  };
  return networkOf(
    Object.entries(roles).map(([id, role]) => ({ id, role })),
    [
      edge("catches", "roof", "roof", "barrel"),
      edge("spills", "barrel", "barrel", "upper"),
      edge("feeds", "main", "upper", "joint", more.mainStopped ?? null),
      edge("feeds", "to_tub", "joint", "tub"),
      edge("feeds", "to_far", "joint", "far_tub"),
      edge("draws", "hose", "tub", "hose"),
      edge("draws", "can", "far_tub", "can"),
      edge("draws", "goats", "upper", "goats"),
      edge("powers", "hose", "pump", "hose"),
      edge("powers", "pump", "battery", "pump"),
      edge("charges", "panel", "panel", "battery"),
      edge("waters", "bed", "hose", "bed"),
      edge("waters", "bed", "can", "bed"),
      edge("waters", "far_bed", "can", "far_bed"),
    ],
  );
}

describe("water", () => {
  const whole = place();

  test("comes to a tank through lines and joints, and by overflow besides", () => {
    expect(feedersOf(whole, "tub")).toEqual(["tub", "upper"]);
    expect(fillersOf(whole, "tub")).toEqual(["tub", "upper", "barrel"]);
    expect(fedBy(whole, "upper")).toEqual(["upper", "far_tub", "tub"]);
    expect(fedBy(whole, "barrel")).toEqual(["barrel"]);
  });

  test("through a line that cannot run comes to nobody, and the line says why", () => {
    const dry = place({ mainStopped: "its far end is too high" });
    expect(feedersOf(dry, "tub")).toEqual(["tub"]);
    expect(fillersOf(dry, "far_tub")).toEqual(["far_tub"]);
    expect(bedsServed(dry, "upper")).toEqual([]);
    expect(whyStopped(dry, "main")).toBe("its far end is too high");
    expect(whyStopped(dry, "to_tub")).toBeNull();
  });

  test("of a roof is to come to a tank through what stands above it, whether the lines there run or not", () => {
    const tanks = ["high", "tub", "bare"].map((id) => ({ id, role: "tank" as const }));
    const roofed = networkOf(
      [...tanks, { id: "barn", role: "roof" }],
      [edge("catches", "barn", "barn", "high"), edge("feeds", "line", "high", "tub", "a hump")],
    );
    expect(["high", "tub", "bare"].map((id) => isRoofed(roofed, id))).toEqual([true, true, false]);
    const spilling = networkOf(tanks, [edge("spills", "high", "high", "tub")]);
    expect(isRoofed(spilling, "tub")).toBe(false);
  });

  test("in a ring of tanks goes round once", () => {
    const tanks = ["a", "b", "c"].map((id) => ({ id, role: "tank" as const }));
    const ring = networkOf(tanks, [
      edge("feeds", "one", "a", "b"),
      edge("feeds", "two", "b", "c"),
      edge("feeds", "three", "c", "a"),
      edge("spills", "a", "a", "b"),
      edge("spills", "b", "b", "a"),
    ]);
    expect(feedersOf(ring, "a")).toEqual(["a", "c", "b"]);
    expect(overflowEnd(ring, "a")).toBe("loop");
    expect(overflowEnd(ring, "c")).toBe("ground");
    expect([...stepsDown(ring).values()].every((steps) => steps <= tanks.length)).toBe(true);
  });

  test("stands in the order in which it flows", () => {
    const steps = stepsDown(whole);
    expect(["barrel", "upper", "joint", "tub"].map((id) => steps.get(id))).toEqual([0, 1, 2, 3]);
  });

  test("overflows over the ground, into a tank, or nowhere once the tank is gone", () => {
    expect(overflowEnd(whole, "barrel")).toBe("tank");
    expect(goesTo(whole, "spills", "barrel")).toBe("upper");
    expect(goesTo(withStopped(whole, new Map([["upper", "gone"]])), "spills", "barrel")).toBeNull();
  });
});

describe("joints", () => {
  const heights = (over: number) =>
    new Map([
      ["main", { over: 0, brim: 2 }],
      ["to_tub", { over, brim: null }],
      ["to_far", { over: 0.5, brim: null }],
    ]);

  test("a line from a joint runs where the tank behind it can ever stand higher than it ends", () => {
    expect(whyStopped(withDryJoints(place(), heights(1.99)), "to_tub")).toBeNull();
    expect(whyStopped(withDryJoints(place(), heights(2)), "to_tub")).toMatch(/never stands high enough/);
    expect(whyStopped(withDryJoints(place(), heights(2)), "to_far")).toBeNull();
  });

  test("a joint that no line fills gives nothing on", () => {
    const dry = withDryJoints(place({ mainStopped: "blocked" }), heights(1));
    expect(whyStopped(dry, "to_tub")).toMatch(/no water comes to the joint/);
    expect(whyStopped(dry, "to_far")).toMatch(/no water comes to the joint/);
  });
});

describe("beds and power", () => {
  const whole = place();

  test("a bed's waterers are tried in its own order, and its first tank is that of the first", () => {
    expect(waterersOf(whole, "bed")).toEqual(["hose", "can"]);
    expect(firstTankOf(whole, "bed")).toBe("tub");
    expect(bedsStraightFrom(whole, "far_tub")).toEqual(["bed", "far_bed"]);
    expect(bedsServed(whole, "upper")).toEqual(["bed", "far_bed"]);
    expect(takersOf(whole, "upper")).toEqual(["goats"]);
  });

  test("a hose is driven by what drives its pump", () => {
    expect(driverOf(whole, "hose")).toBe("battery");
    expect(driverOf(whole, "can")).toBeNull();
    expect(chargersOf(whole, "battery")).toEqual(["panel"]);
  });
});

describe("parts that are gone", () => {
  const gone = (id: string, unlimited: readonly string[] = []) =>
    leaningOn(place(), new Set([id]), new Set(unlimited))
      .map(({ id: part, on }) => `${part} on ${on}`)
      .sort();

  test("take with them what leans on them, and no more", () => {
    expect(gone("tub")).toEqual(["hose on tub", "to_tub on tub"]);
    expect(gone("far_tub")).toEqual(["can on far_tub", "far_bed on can", "to_far on far_tub"]);
    expect(gone("joint")).toEqual(["main on joint", "to_far on joint", "to_tub on joint"]);
    expect(gone("battery")).toEqual(["hose on battery"]);
    expect(gone("battery", ["hose"])).toEqual([]);
    expect(gone("panel")).toEqual([]);
  });
});

test("[G11] the order in which parts come changes nothing", () => {
  const whole = place();
  const turned = networkOf(
    [...whole.nodes].reverse(),
    [...whole.edges].filter(({ kind }) => kind !== "waters").reverse(),
  );
  expect(turned.nodes).toEqual(whole.nodes);
  expect(turned.edges.map(({ by }) => by)).toEqual(
    whole.edges.filter(({ kind }) => kind !== "waters").map(({ by }) => by),
  );
});
