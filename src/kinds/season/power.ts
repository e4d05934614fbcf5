// The pumps and batteries of a season's plan: which battery or panel drives each hose, and what charges each battery.

import { isReady, type Missing, readyNumber, readyWord, whyMissing } from "../../graph/readers.ts";
import type { CardView, ModelInput } from "../../graph/types.ts";
import type { BatteryPart, ChargeWay, DeliveryPart, SunOnPump } from "../../season/input.ts";
import type { ChargeMonths } from "../panel/models.ts";

type Results = CardView["results"];

const BATTERY_ROWS = [
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
];

/** Rows of pumps, hoses, batteries and panels that the plan is put together from. */
export const POWER_ROWS: Readonly<Record<string, readonly string[]>> = {
  delivery: ["from", "pump", "powered_by", "flow", "drawn_power", "by_depth", "dead_depth", "set_up"],
  pump: ["powered_by"],
  battery: BATTERY_ROWS,
  panel: ["charges", "charge_months", "supply"],
};

export const POWER_NEEDED: Readonly<Record<string, readonly string[]>> = {
  delivery: ["from", "dead_depth", "set_up"],
  battery: BATTERY_ROWS,
};

/** Rates of self-discharge are stated for so many days. */
const MONTH = 30;

type Table = {
  readonly depths: readonly number[];
  readonly flows: readonly number[];
  readonly powers: readonly number[];
  readonly sun: SunOnPump | null;
};

/** What a hose gives at each depth and takes for it: solved, or by its bucket and meter alone; null where it gives nothing. */
function tableOf(results: Results): (Table & { readonly metered: boolean }) | null {
  const solved = results["by_depth"];
  if (solved?.state === "ready") {
    const table = solved.value as Table;
    return table.flows.some((flow) => flow > 0) ? { ...table, metered: true } : null;
  }
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

/** Id of what drives a hose: of its pump's card where it has one. */
function driverOf(input: ModelInput, results: Results): string {
  const pump = input.cards["pump"]?.find(({ id }) => id === readyWord(results, "pump"));
  return readyWord(pump?.results ?? results, "powered_by");
}

/** A hose whose pump runs on a battery but whose power nobody knows: the season cannot tell when it stops. */
export function unmetered(input: ModelInput): readonly string[] {
  return (input.cards["delivery"] ?? [])
    .filter(({ results }) => {
      const table = tableOf(results);
      return table !== null && !table.metered;
    })
    .map(({ id }) => id);
}

export const deliveryPart =
  (input: ModelInput) =>
  (id: string, results: Results): DeliveryPart | Missing => {
    const driver = driverOf(input, results);
    const panel = input.cards["panel"]?.find((card) => card.id === driver);
    const dark = panel && whyMissing(panel.results, "supply");
    if (dark) return dark;
    const table = tableOf(results);
    if (!table) return whyMissing(results, "flow") ?? { reason: "it gives no water at any depth" };
    return {
      id,
      from: readyWord(results, "from"),
      pump: readyWord(results, "pump") || null,
      depths: table.depths,
      flows: table.flows,
      powers: table.powers,
      sun: table.sun,
      lowestWater: readyNumber(results, "dead_depth"),
      battery: table.metered && driver !== "" && !panel ? driver : null,
      setUp: readyNumber(results, "set_up"),
    };
  };

function wayOf(word: string): ChargeWay {
  return word === "mains" || word === "carried" || word === "swapped" ? word : "in_place";
}

/** A panel that charges the battery but whose sun cannot be worked out. */
function darkPanel(input: ModelInput, battery: string): CardView | undefined {
  return (input.cards["panel"] ?? []).find(
    ({ results }) => readyWord(results, "charges") === battery && !isReady(results["charge_months"]),
  );
}

export const batteryPart =
  (input: ModelInput) =>
  (id: string, results: Results): BatteryPart | Missing => {
    const word = readyWord(results, "charged");
    const dark = word === "mains" || word === "none" ? undefined : darkPanel(input, id);
    const missing = dark && whyMissing(dark.results, "charge_months");
    if (missing) return missing;
    const months = readySeries<ChargeMonths>(results, "charge_by_month");
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
      // What a full one loses comes out of the share that may be drawn.
      selfDischarge: Math.min(1, readyNumber(results, "self_discharge") / MONTH / wholeToUsable),
      otherLoads: readyNumber(results, "other_energy"),
      leastChargingTemperature: readySeries<{ readonly air: number | null }>(results, "coldest_charge").air,
    };
  };

function readySeries<Held>(results: Results, name: string): Held {
  const result = results[name];
  if (result?.state !== "ready") throw new Error(`${name} is not known.`);
  return result.value as Held;
}
