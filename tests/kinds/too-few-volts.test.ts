// A pump on a battery of too few volts: the battery is named, not the hose; a hose over any lift is blamed itself.

import { describe, expect, test } from "vitest";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { type Parts, rig } from "./power-rig.ts";

/** Reasons of the hose's flow and of its water in a season. */
function reasons(parts: Parts): readonly (string | null)[] {
  const { results } = workOut(rig(parts), CARD_KINDS);
  return ["hose.flow", "hose.season_volume"].map((id) => {
    const result = results.get(id);
    if (result?.state === "none") return result.reason;
    return result?.state === "failed" ? result.problem.text : null;
  });
}

describe("a 12 V pump that lifts no water to the end of its hose", () => {
  test("names the battery that gives it 1 V", () => {
    const why =
      "its battery gives too few volts: at them the pump does not lift water to the end of the hose";
    expect(reasons({ battery: { nominal_voltage: [1, "V"] } })).toEqual([
      why,
      `Left out of the season: ${why}.`,
    ]);
  });

  test("names the hose where it ends 100 ft up, which no volts of its own would lift to", () => {
    const why = "its hose ends higher than this pump lifts";
    expect(reasons({ hose: { outlet_height: [100, "ft"] } })).toEqual([
      why,
      `Left out of the season: ${why}.`,
    ]);
  });

  test("names the battery also where a bucket was timed when it still gave 12 V", () => {
    const hose = { tested_voltage: [12, "V"] } as const;
    const measured = { flow: [2, "gal/min"] } as const;
    const weak = { nominal_voltage: [1, "V"] } as const;
    expect(reasons({ battery: weak, measured, hose })).toEqual([
      null,
      "Left out of the season: its pump on cell lifts no water to the end of the hose, however full the tank.",
    ]);
  });
});
