// From the cards' results to the plan of one season run: what is known goes in, what is not is left out with its reason.

import {
  firstMissing,
  type Missing,
  numberOf,
  numberOrNull,
  readyNumber,
  readyWord,
  wordOf,
} from "../../graph/readers.ts";
import type { CardView, ModelInput } from "../../graph/types.ts";
import { waterersOf } from "../../network/beds.ts";
import { goesTo, leaningOn } from "../../network/gone.ts";
import { whyStopped, withStopped } from "../../network/network.ts";
import type { Vessel } from "../../physics/vessel.ts";
import type {
  BedPart,
  CarryPart,
  DrawPart,
  EtoChoice,
  LeftOut,
  LinePart,
  RoofPart,
  SeasonInput,
  TankPart,
  TeePart,
} from "../../season/input.ts";
import { BED_ROWS } from "../bed/rows.ts";
import { bedPart } from "../bed/season-part.ts";
import { networkIn } from "./network.ts";
import { batteryPart, deliveryPart, POWER_NEEDED, POWER_ROWS } from "./power.ts";

/** Rows of every kind that the plan is put together from. */
export const PLAN_ROWS: Readonly<Record<string, readonly string[]>> = {
  roof: [
    "catching_area",
    "coefficient_in_use",
    "losses",
    "wetting_loss",
    "first_flush",
    "drains_to",
    "catch_from",
    "catch_until",
  ],
  tank: ["vessel", "floor_height", "outlet_height", "open_surface", "overflows_to", "start_share", "leak"],
  line: [
    "from",
    "to",
    "length",
    "bore",
    "roughness",
    "all_k",
    "opening",
    "valve_band",
    "shut_level",
    "runs_from",
    "end_height",
    "check_valve",
    "blocked",
  ],
  tee: ["height"],
  draw: ["from", "volume", "every"],
  carry: ["from", "can_volume", "can_weight", "cans_at_once", "round_time", "distance"],
  bed: BED_ROWS,
  ...POWER_ROWS,
};

type Needed = readonly string[];

const NEEDED: Readonly<Record<string, Needed>> = {
  roof: ["catching_area", "coefficient_in_use", "losses", "wetting_loss", "first_flush"],
  tank: ["vessel", "floor_height", "outlet_height", "open_surface", "start_share", "leak"],
  line: [
    "from",
    "to",
    "length",
    "bore",
    "roughness",
    "all_k",
    "valve_band",
    "runs_from",
    "end_height",
    "check_valve",
  ],
  tee: ["height"],
  draw: ["from", "volume", "every"],
  carry: ["from", "can_volume", "can_weight", "cans_at_once", "round_time", "distance"],
  bed: [],
  ...POWER_NEEDED,
};

type Maker<Part> = (id: string, results: CardView["results"]) => Part | Missing;

function partsOf<Part>(
  input: ModelInput,
  kind: string,
  leftOut: LeftOut[],
  make: Maker<Part>,
): readonly Part[] {
  const parts: Part[] = [];
  for (const card of input.cards[kind] ?? []) {
    const part = firstMissing(card.results, NEEDED[kind] ?? []) ?? make(card.id, card.results);
    if (typeof part === "object" && part !== null && "reason" in part) leftOut.push({ id: card.id, ...part });
    else parts.push(part as Part);
  }
  return parts;
}

const idOrNull = (results: CardView["results"], name: string): string | null =>
  readyWord(results, name) || null;

const readyOrNull = (results: CardView["results"], name: string): number | null =>
  results[name]?.state === "ready" ? readyNumber(results, name) : null;

const roofPart: Maker<RoofPart> = (id, results) => {
  const inCoefficient = readyWord(results, "losses") === "in_coefficient";
  return {
    id,
    footprint: readyNumber(results, "catching_area"),
    runoffCoefficient: readyNumber(results, "coefficient_in_use"),
    wettingLoss: inCoefficient ? 0 : readyNumber(results, "wetting_loss"),
    firstFlush: inCoefficient ? 0 : readyNumber(results, "first_flush"),
    drainsTo: idOrNull(results, "drains_to"),
    catchFrom: idOrNull(results, "catch_from"),
    catchUntil: idOrNull(results, "catch_until"),
  };
};

function readyVessel(results: CardView["results"]): Vessel {
  const vessel = results["vessel"];
  if (vessel?.state !== "ready") throw new Error("The vessel is not known.");
  return vessel.value as Vessel;
}

const tankPart: Maker<TankPart> = (id, results) => ({
  id,
  vessel: readyVessel(results),
  floor: readyNumber(results, "floor_height"),
  outlet: readyNumber(results, "outlet_height"),
  openArea: readyNumber(results, "open_surface"),
  overflowsTo: idOrNull(results, "overflows_to"),
  startShare: readyNumber(results, "start_share"),
  leak: readyNumber(results, "leak"),
});

function linePart(viscosity: number): Maker<LinePart> {
  return (id, results) => {
    const opening = results["opening"];
    if (opening?.state === "failed") return { reason: opening.problem.text };
    return {
      id,
      from: readyWord(results, "from"),
      to: idOrNull(results, "to"),
      length: readyNumber(results, "length"),
      bore: readyNumber(results, "bore"),
      roughness: readyNumber(results, "roughness"),
      fittingsK: readyNumber(results, "all_k"),
      opening: readyOrNull(results, "opening"),
      valveBand: readyNumber(results, "valve_band"),
      shutLevel: opening?.state === "ready" ? readyOrNull(results, "shut_level") : null,
      startHeight: readyNumber(results, "runs_from"),
      endHeight: readyNumber(results, "end_height"),
      checkValve: readyWord(results, "check_valve") === "yes",
      blocked: idOrNull(results, "blocked"),
      viscosity,
    };
  };
}

const drawPart: Maker<DrawPart> = (id, results) => ({
  id,
  from: readyWord(results, "from"),
  volume: readyNumber(results, "volume"),
  every: readyNumber(results, "every"),
});

const carryPart: Maker<CarryPart> = (id, results) => ({
  id,
  from: readyWord(results, "from"),
  canVolume: readyNumber(results, "can_volume"),
  cansAtOnce: readyNumber(results, "cans_at_once"),
  roundTime: readyNumber(results, "round_time"),
  distance: readyNumber(results, "distance"),
  canMass: readyNumber(results, "can_weight"),
});

/** Parts that lean on a part that is not there go too; what is left is tied to nothing that is gone. */
function withoutDangling(plan: SeasonInput, titleOf: (id: string) => string): SeasonInput {
  const known = new Map(plan.leftOut.map((part) => [part.id, part]));
  const unlimited = plan.deliveries.filter(({ battery }) => battery === null).map(({ id }) => id);
  for (const { id, on } of leaningOn(plan.network, new Set(known.keys()), new Set(unlimited))) {
    const cause = known.get(on)?.cause;
    const reason = `${titleOf(on)} is left out`;
    known.set(id, { id, reason, ...(cause === undefined ? {} : { cause }) });
  }
  const reasons = new Map([...known.values()].map(({ id, reason }) => [id, reason]));
  const network = withStopped(plan.network, reasons);
  const here = <Part extends { readonly id: string }>(parts: readonly Part[]): Part[] =>
    parts.filter(({ id }) => !known.has(id));
  return {
    ...plan,
    roofs: plan.roofs.map((part) => ({ ...part, drainsTo: goesTo(network, "catches", part.id) })),
    tanks: plan.tanks.map((part) => ({ ...part, overflowsTo: goesTo(network, "spills", part.id) })),
    lines: here(plan.lines).map((part) => ({ ...part, blocked: whyStopped(network, part.id) })),
    draws: here(plan.draws),
    deliveries: here(plan.deliveries),
    carries: here(plan.carries),
    beds: here(plan.beds).map((part) => ({ ...part, wateredBy: waterersOf(network, part.id) })),
    network,
    leftOut: [...known.values()],
  };
}

/** The plan of the season from everything that the season card surveys and takes. */
export function seasonInput(input: ModelInput): SeasonInput {
  const leftOut: LeftOut[] = [];
  const viscosity = numberOf(input, "site.water_viscosity") / numberOf(input, "site.water_density");
  const beds = partsOf<BedPart>(input, "bed", leftOut, bedPart);
  const plan: SeasonInput = {
    start: wordOf(input, "site.season_start"),
    end: wordOf(input, "site.season_end"),
    storageRule: wordOf(input, "site.storage_rule") === "use_first" ? "use_first" : "spill_first",
    minutesPerDay: numberOrNull(input, "site.minutes_per_day"),
    waterAt: numberOf(input, "site.water_at"),
    holdDays: numberOf(input, "hold_days"),
    rainScale: numberOf(input, "weather.rain_scale"),
    waterDensity: numberOf(input, "site.water_density"),
    eto: input.values["weather.eto_choice"] as EtoChoice,
    roofs: partsOf(input, "roof", leftOut, roofPart),
    tanks: partsOf(input, "tank", leftOut, tankPart),
    lines: partsOf(input, "line", leftOut, linePart(viscosity)),
    tees: partsOf<TeePart>(input, "tee", leftOut, (id, results) => ({
      id,
      height: readyNumber(results, "height"),
    })),
    draws: partsOf(input, "draw", leftOut, drawPart),
    deliveries: partsOf(input, "delivery", leftOut, deliveryPart(input)),
    carries: partsOf(input, "carry", leftOut, carryPart),
    batteries: partsOf(input, "battery", leftOut, batteryPart(input)),
    beds,
    network: networkIn(input),
    leftOut,
  };
  const titles = new Map(
    Object.values(input.cards).flatMap((cards) => cards.map((card) => [card.id, card.title])),
  );
  return withoutDangling(plan, (id) => titles.get(id) ?? id);
}
