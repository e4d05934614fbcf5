// What is taken of each tank and of all on a peak day, and how long today's water lasts: the season's own reckoning, fed
// from the cards.

import { causeOf, numberIn, numberOrNull, readyList, valueIn } from "../../graph/readers.ts";
import type { CardView, Model, ModelInput, Outcome, Outputs } from "../../graph/types.ts";
import { autonomyOf, type TankAutonomy, type WholeAutonomy } from "../../season/autonomy.ts";
import type { LeftOut, SeasonInput } from "../../season/input.ts";
import { networkIn } from "../network-in.ts";
import { NO_BED } from "../none-said.ts";
import { lastsUntil } from "./lasts-until.ts";

function asked(input: ModelInput): WholeAutonomy {
  const { tank = [], bed = [] } = input.cards;
  return autonomyOf({
    network: networkIn(input),
    tanks: tank.map(({ id, results }) => ({
      id,
      reachable: numberIn(results["reachable"]) ?? 0,
      openArea: numberIn(results["open_surface"]) ?? 0,
      leak: numberIn(results["leak"]) ?? 0,
    })),
    needs: new Map(bed.map(({ id, results }) => [id, numberIn(results["peak_day_need"]) ?? 0])),
    peakEto: numberOrNull(input, "weather.peak_day_eto") ?? 0,
  });
}

/** What is left out of the season is left out of the whole, as the answers say of both at once. */
function withoutLeftOut(input: ModelInput): ModelInput {
  const plan = valueIn(input.results["plan"]) as SeasonInput | null;
  const out = new Set(
    (readyList(input.results, "left_out_of_plan") as readonly LeftOut[]).map(({ id }) => id),
  );
  if (plan === null || out.size === 0) return input;
  const here = (cards: readonly CardView[] = []) => cards.filter(({ id }) => !out.has(id));
  const { tank, bed } = input.cards;
  return {
    ...input,
    values: { ...input.values, network: plan.network },
    cards: { ...input.cards, tank: here(tank), bed: here(bed) },
  };
}

/** The first of some beds whose need failed says what is not known; null where all are known. */
function unknownNeed(input: ModelInput, ids: readonly string[]): Outcome | null {
  for (const bed of input.cards["bed"] ?? []) {
    const cause = ids.includes(bed.id) ? causeOf(bed.results["peak_day_need"]) : null;
    if (cause !== null) return { failed: `What ${bed.title} needs is not known.`, cause };
  }
  return null;
}

/** What is taken on a peak day, or why nothing is. */
function drawn(
  input: ModelInput,
  store: { readonly draw: number | null; readonly beds: readonly string[] },
  words: { readonly noBed: string; readonly noNeed: string },
): Outcome {
  const { draw, beds } = store;
  if (draw === null) return { none: words.noBed };
  return unknownNeed(input, beds) ?? (draw > 0 ? { value: draw } : { none: words.noNeed });
}

const OF_TANK = { noBed: "serves no bed", noNeed: "its beds need nothing in the season" };
const OF_ALL = { noBed: "no tank serves a bed yet", noNeed: "the beds need nothing in the season" };

function tankOutputs(
  input: ModelInput,
  tank: CardView,
  store: TankAutonomy,
  stores: readonly TankAutonomy[],
): Outputs {
  const known = store.draw === null || numberIn(tank.results["reachable"]) !== null;
  const draw: Outcome = known
    ? drawn(input, store, OF_TANK)
    : { failed: "What of its water can be reached is not known." };
  return {
    [`${tank.id}.peak_day_draw`]: draw,
    [`${tank.id}.lasts_until`]: "value" in draw ? lastsUntil(input, tank, Number(draw.value), stores) : draw,
  };
}

function peakDraws(input: ModelInput): Outputs {
  const all = asked(input);
  const tanks = input.cards["tank"] ?? [];
  const rows = tanks.flatMap((tank, place) => {
    const store = all.tanks[place];
    return store ? [tankOutputs(input, tank, store, all.tanks)] : [];
  });
  const known = withoutLeftOut(input);
  const whole = known === input ? all : asked(known);
  // Beds that something meant to water, but for what is left out.
  const ofAll =
    whole.draw === null && all.tanks.some((tank) => tank.beds.length > 0)
      ? { ...OF_ALL, noBed: NO_BED }
      : OF_ALL;
  return {
    ...Object.assign({}, ...rows),
    "season.reachable": whole.draw === null ? { none: ofAll.noBed } : { value: whole.reachable },
    "season.peak_day_draw": drawn(known, whole, ofAll),
  };
}

/** Reachable water and a peak day's draw of each tank and of the whole, by quantity id. */
export const peakDraw: Model = {
  name: "peak_draw",
  takes: ["network", "plan", "left_out_of_plan", "weather.peak_day_eto", "site.today"],
  surveys: {
    tank: ["reachable", "leak", "open_surface", "water_today", "dipped_on", "vessel", "floor_height"],
    line: ["last_flow_height"],
    bed: ["peak_day_need"],
  },
  tolerant: true,
  outputs: "by quantity id",
  run: peakDraws,
};
