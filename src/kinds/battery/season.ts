// A battery's share in the season.

import { outcomes } from "../../graph/outcomes.ts";
import {
  type CardResults,
  isReady,
  type Missing,
  readyNumber,
  readyWord,
  valueIn,
  whyMissing,
} from "../../graph/readers.ts";
import type { CardView, ModelInput } from "../../graph/types.ts";
import { chargersOf } from "../../network/power.ts";
import type { BatteryPart, ChargeWay } from "../../season/input.ts";
import { networkIn } from "../network-in.ts";
import type { ChargeMonths } from "../panel/models.ts";
import { gives, type SeasonShare, takes } from "../season-share.ts";

/** Rates of self-discharge are stated for so many days. */
const MONTH = 30;

function wayOf(word: string): ChargeWay {
  return word === "mains" || word === "carried" || word === "swapped" ? word : "in_place";
}

/** A panel that charges the battery but whose sun cannot be worked out. */
function darkPanel(input: ModelInput, battery: string): CardView | undefined {
  const chargers = chargersOf(networkIn(input), battery);
  return (input.cards["panel"] ?? []).find(
    ({ id, results }) => chargers.includes(id) && !isReady(results["charge_months"]),
  );
}

/** What each panel on a battery brings it, of those whose sun can be worked out. */
const panelsOn = (input: ModelInput, battery: string): Readonly<Record<string, ChargeMonths>> => {
  const chargers = chargersOf(networkIn(input), battery);
  return Object.fromEntries(
    (input.cards["panel"] ?? []).flatMap(({ id, results }) => {
      const months = chargers.includes(id) ? valueIn(results["charge_months"]) : null;
      return months === null ? [] : [[id, months as ChargeMonths]];
    }),
  );
};

function partOf(id: string, results: CardResults, input: ModelInput): BatteryPart | Missing {
  const word = readyWord(results, "charged");
  const dark = word === "mains" || word === "none" ? undefined : darkPanel(input, id);
  const missing = dark && whyMissing(dark.results, "charge_months");
  if (missing) return missing;
  const months = valueIn(results["charge_by_month"]) as ChargeMonths;
  const wholeToUsable = readyNumber(results, "depth_of_discharge");
  return {
    id,
    usable: readyNumber(results, "usable_energy"),
    efficiency: readyNumber(results, "round_trip_efficiency"),
    startShare: readyNumber(results, "charge_today"),
    charged: wayOf(word),
    carriedEvery: Math.max(1, Math.round(readyNumber(results, "carried_every"))),
    dryCharge: months.dry,
    wetCharge: months.wet,
    panels: panelsOn(input, id),
    // What a full one loses comes out of the share that may be drawn.
    selfDischarge: Math.min(1, readyNumber(results, "self_discharge") / MONTH / wholeToUsable),
    otherLoads: readyNumber(results, "other_energy"),
    leastChargingTemperature: (valueIn(results["coldest_charge"]) as { readonly air: number | null }).air,
  };
}

export const batterySeason: SeasonShare = {
  role: "battery",
  must: [
    "usable_energy",
    "round_trip_efficiency",
    "charge_today",
    "charged",
    "carried_every",
    "charge_by_month",
    "coldest_charge",
    "self_discharge",
    "other_energy",
    "depth_of_discharge",
  ],
  takes: takes("batteries", partOf),
  gives: gives("batteries", (battery) =>
    outcomes({
      days_flat: battery.daysEmpty,
      lowest_charge: battery.lowestShare,
      season_charge: battery.seasonEntered,
      season_use: battery.seasonUsed,
      season_loss: battery.seasonLost,
    }),
  ),
};
