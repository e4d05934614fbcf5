import { expect, test } from "vitest";
import { leadOf } from "../../src/telling/lead.ts";
import { wasOf } from "../../src/telling/was.ts";

/** What stood and what stands, each as shown; what reads the same has not moved. */
const seen = (before: Record<string, string>, now: Record<string, string>) => ({
  moved: (id: string) => (before[id] === now[id] ? null : { was: before[id] ?? "" }),
  shown: (id: string) => now[id] ?? "",
});

test.each([
  ["of another whole", ["13", "20"], ["4", "4"], "13 of 20"],
  ["of another whole, the number alike", ["4", "20"], ["4", "4"], "4 of 20"],
  ["of the same whole", ["13", "20"], ["7", "20"], "13"],
  ["nothing moved", ["13", "20"], ["13", "20"], null],
])("what a part was: %s", (_what, [short = "", all = ""], [nowShort = "", nowAll = ""], wanted) => {
  const piece = { quantity: "short", whole: "all" };
  expect(wasOf(piece, seen({ short, all }, { short: nowShort, all: nowAll }))).toBe(wanted);
});

test("the seasons that the lead counts are a part of all seasons, whether some go short or none", () => {
  for (const short of [7, 0]) {
    const values: Record<string, number> = { "season.seasons": 20, "season.seasons_short": short };
    const result = (id: string) => {
      const value = id === "season.network" ? { nodes: [{ kind: "bed", id: "bed" }], edges: [] } : values[id];
      return value === undefined ? undefined : ({ state: "ready", value, origin: "computed" } as never);
    };
    const { pieces } = leadOf({ result, cards: [] }, {});
    const counted = pieces.filter(
      (piece) => typeof piece !== "string" && piece.quantity === "season.seasons_short",
    );
    expect(counted).toMatchObject([{ whole: "season.seasons" }]);
  }
});

test("that beds never go short of fewer seasons was never of more: nothing is said", () => {
  const piece = { quantity: "short", whole: "all", was: "short in" };
  expect(wasOf(piece, seen({ short: "0", all: "20" }, { short: "0", all: "4" }))).toBeNull();
  expect(wasOf(piece, seen({ short: "13", all: "20" }, { short: "0", all: "4" }))).toBe("13 of 20");
});
