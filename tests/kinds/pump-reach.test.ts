// What of a tank a pump brings to the end of its hose: down to where it would have to lift higher than it can, and nothing
// where it lifts none at all or has nothing to run on, as of a line that cannot run.

import { describe, expect, test } from "vitest";
import type { ModelInput } from "../../src/graph/types.ts";
import { running } from "../../src/kinds/delivery/run.ts";
import { type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

/** Five feet of water on the ground, under a roof; a pump on a charged battery; a bed. */
function place(hose: Givens, more: Parameters<typeof sheetOf>[0] = {}): Whole {
  return workedOut(
    sheetOf({
      barn: ["roof", { footprint: [400, "ft2"], drains_to: "tank" }],
      tank: [
        "tank",
        { capacity: [4000, "L"], water_height: [1.5, "m"], outlet_height: [0, "m"], ground_height: [0, "m"] },
      ],
      cell: ["battery", { charged: "mains" }],
      pump: ["pump", { size: "gph_500", powered_by: "cell" }],
      hose: ["delivery", { from: "tank", pump: "pump", ...hose }],
      plot: ["bed", { length: [20, "ft"], width: [4, "ft"], watered_by: ["hose"] }],
      ...more,
    }),
  );
}

const reasonAt = (whole: Whole, id: string): string => {
  const result = whole.results.get(id);
  return result?.state === "none" ? result.reason : JSON.stringify(result);
};

describe("a pump", () => {
  // What it lifts against when nothing flows, whatever the hose.
  const most = numberAt(place({}), "pump.head_at_no_flow");

  test("leaves in the tank what it would have to lift too high, and the season stops there", () => {
    // Its hose ends so high that with a metre of water in the tank it lifts nothing more.
    const high = place({ outlet_height: [most + 1, "m"] });
    // Half a metre of the one and a half.
    expect(numberAt(high, "tank.reachable")).toBeCloseTo(4 / 3, 6);
    expect(numberAt(high, "season.reachable")).toBeCloseTo(4 / 3, 6);
    expect(numberAt(high, "tank.lowest_drawable")).toBeCloseTo(1, 6);
    expect(high.results.get("season.binding")).not.toMatchObject({ value: "pump_time" });
    expect(Math.abs(numberAt(high, "season.balance_error"))).toBeLessThan(1e-9);
  });

  test("that lifts to the hose's end from any depth is stopped by its own lowest water alone", () => {
    const low = place({ outlet_height: [most / 2, "m"] });
    expect(numberAt(low, "tank.lowest_drawable")).toBeCloseTo(numberAt(low, "pump.lowest_water"), 12);
  });

  test.each([
    ["that cannot lift at all", place({ outlet_height: [most + 2, "m"] })],
    ["on nothing", place({}, { pump: ["pump", { size: "gph_500" }] })],
  ])("%s makes no water reachable, and its tank lasts no day", (_name, whole) => {
    expect(numberAt(whole, "tank.reachable")).toBe(0);
    expect(numberAt(whole, "tank.days_of_autonomy")).toBe(0);
    expect(reasonAt(whole, "season.days_of_autonomy")).toBe("no bed is in the run");
    expect(reasonAt(whole, "hose.tankfuls_per_watering")).toBe("none of its tank's water comes out");
  });

  test("on nothing says so, on a panel whose light is not known that", () => {
    expect(reasonAt(place({}, { pump: ["pump", { size: "gph_500" }] }), "hose.flow")).toBe(
      "its pump runs on no battery and no panel",
    );
    // As its pump's card says it where the record has neither temperatures nor sunshine.
    const dark = "the sun cannot be worked out";
    const results = { "pump.dark": { state: "ready", value: dark, origin: "computed" } };
    const input = { values: { "pump.curve_in_use": {} }, results, cards: {} } as unknown as ModelInput;
    expect(running.run(input)["flow"]).toEqual({ none: dark });
  });
});
