// A pump's hose and its share in the season.

import { outcomes } from "../../graph/outcomes.ts";
import {
  type CardResults,
  isReady,
  type Missing,
  numberIn,
  readyNumber,
  readyWord,
  valueIn,
  whyMissing,
} from "../../graph/readers.ts";
import type { ModelInput } from "../../graph/types.ts";
import { driverOf } from "../../network/power.ts";
import type { DeliveryPart, SunOnPump } from "../../season/input.ts";
import { networkIn } from "../network-in.ts";
import { gives, type SeasonShare, takes } from "../season-share.ts";

type Table = {
  readonly depths: readonly number[];
  readonly flows: readonly number[];
  readonly powers: readonly number[];
  readonly sun: SunOnPump | null;
};

/** What a hose gives at each depth and takes for it: solved, or by its bucket and meter alone; null where it gives nothing. */
function tableOf(results: CardResults): (Table & { readonly metered: boolean }) | null {
  const solved = valueIn(results["by_depth"]) as Table | null;
  if (solved) return solved.flows.some((flow) => flow > 0) ? { ...solved, metered: true } : null;
  if (!isReady(results["flow"])) return null;
  const metered = isReady(results["drawn_power"]);
  return {
    depths: [0],
    flows: [readyNumber(results, "flow")],
    powers: [metered ? readyNumber(results, "drawn_power") : 0],
    sun: null,
    metered,
  };
}

/** Hoses whose pump runs on a battery but whose power nobody knows: the season cannot tell when it stops. */
export function unmetered(input: ModelInput): readonly string[] {
  return (input.cards["delivery"] ?? [])
    .filter(({ results }) => tableOf(results)?.metered === false)
    .map(({ id }) => id);
}

/** Of a hose whose bucket showed water, while its pump as it stands lifts none from any depth of the tank. */
function liftsNothing(input: ModelInput, driver: string | null): Missing {
  const battery = input.cards["battery"]?.find(({ id }) => id === driver);
  const at = battery ? ` on ${battery.title}` : "";
  return { reason: `its pump${at} lifts no water to the end of the hose, however full the tank` };
}

function partOf(id: string, results: CardResults, input: ModelInput): DeliveryPart | Missing {
  const driver = driverOf(networkIn(input), id);
  const panel = input.cards["panel"]?.find((card) => card.id === driver);
  const dark = panel && whyMissing(panel.results, "supply");
  if (dark) return dark;
  const table = tableOf(results);
  if (!table) return whyMissing(results, "flow") ?? liftsNothing(input, driver);
  return {
    id,
    from: readyWord(results, "from"),
    pump: readyWord(results, "pump") || null,
    depths: table.depths,
    flows: table.flows,
    powers: table.powers,
    sun: table.sun,
    lowestWater: numberIn(results["gives_down_to"]) ?? readyNumber(results, "dead_depth"),
    battery: table.metered && !panel ? driver : null,
    setUp: readyNumber(results, "set_up"),
  };
}

export const deliverySeason: SeasonShare = {
  role: "waterer",
  ties: [
    { kind: "draws", from: ["from"], to: "itself", passes: { blocked: "stopped_by" } },
    // Its pump's card says what drives it, where it has one.
    { kind: "powers", from: ["pump", "powered_by"], to: "itself" },
  ],
  must: ["from", "dead_depth", "set_up"],
  may: ["pump", "flow", "drawn_power", "by_depth", "gives_down_to"],
  takes: takes("deliveries", partOf),
  gives: gives("deliveries", ({ seasonVolume, seasonTime }) =>
    outcomes({ season_volume: seasonVolume, season_time: seasonTime }),
  ),
};
