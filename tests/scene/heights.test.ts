import { describe, expect, test } from "vitest";
import type { Card, Entry } from "../../src/document/worksheet.ts";
import type { NumberGiven, Result } from "../../src/graph/types.ts";
import { type Movable, movable, movedEntry } from "../../src/scene/height-edit.ts";
import { toSi } from "../../src/units/unit.ts";

const row = (name: string, more: Partial<NumberGiven> = {}): NumberGiven => ({
  row: "given",
  name,
  label: name,
  measure: "height",
  default: [0, "ft"],
  help: "",
  source: "your own entry",
  ...more,
});
const KIND = {
  rows: [row("ground_height", { min: -1000, max: 1000 }), row("stand_height", { min: 0 })],
  drawn: { as: "tank", heights: ["stand_height", "ground_height"] },
} as const;

const card = (givens: Record<string, Entry> = {}): Card => ({
  id: "tub",
  kind: "tank",
  title: "Tub",
  givens,
  measured: {},
});

const results =
  (values: Record<string, number>) =>
  (id: string): Result | undefined => {
    const value = values[id.split(".")[1] ?? ""];
    return value === undefined ? undefined : { state: "ready", value, origin: "given" };
  };

function grip(of: Card, values: Record<string, number>, unit = "ft"): Movable {
  const found = movable(of, KIND, results(values), () => unit);
  if (!found) throw new Error("it cannot be moved");
  return found;
}

describe("which height a drag moves", () => {
  test("the stand where there is one, else the ground", () => {
    expect(grip(card(), { ground_height: 1, stand_height: 0.3 }).row.name).toBe("stand_height");
    expect(grip(card(), { ground_height: 1, stand_height: 0 }).row.name).toBe("ground_height");
  });

  test("none where the height itself is not known", () => {
    expect(movable(card(), KIND, results({}), () => "ft")).toBeNull();
  });

  test("its own unit is kept, else the sheet's", () => {
    const typed = card({ ground_height: { value: 120, unit: "cm" } });
    expect(grip(typed, { ground_height: 1.2 }).unit).toBe("cm");
    expect(grip(card(), { ground_height: 1.2 }, "m").unit).toBe("m");
  });
});

describe("what a drag makes of it", () => {
  test("2 ft up is 2 ft more, in feet, and no longer what was measured; a guess stays one", () => {
    const tub = card({ ground_height: { value: 4, unit: "ft", from: "measured" } });
    const moved = movedEntry(grip(tub, { ground_height: toSi(4, "ft") }), toSi(2, "ft"));
    expect(moved).toEqual({ value: 6, unit: "ft" });
    const guessed = card({ ground_height: { value: 4, unit: "ft", from: "guessed" } });
    const raised = movedEntry(grip(guessed, { ground_height: toSi(4, "ft") }), toSi(2, "ft"));
    expect(raised).toEqual({ value: 6, unit: "ft", from: "guessed" });
  });

  test("steps are whole inches, or 2 cm where the number is metric", () => {
    const feet = grip(card({ ground_height: { value: 10, unit: "in" } }), { ground_height: toSi(10, "in") });
    expect(movedEntry(feet, toSi(1.4, "in"))?.value).toBe(11);
    expect(movedEntry(feet, toSi(-2.6, "in"))?.value).toBe(7);
    const metres = grip(card({ ground_height: { value: 1, unit: "m" } }), { ground_height: 1 });
    expect(movedEntry(metres, 0.031)?.value).toBe(1.04);
    expect(movedEntry(metres, 0.009)).toBeNull();
  });

  test("a stand goes no lower than the ground", () => {
    const tub = grip(card({ stand_height: { value: 1, unit: "ft" } }), {
      ground_height: 0,
      stand_height: toSi(1, "ft"),
    });
    expect(movedEntry(tub, toSi(-5, "ft"))).toEqual({ value: 0, unit: "ft" });
  });
});
