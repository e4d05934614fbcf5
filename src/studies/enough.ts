// From where on a turned number is enough: an answer is as good as it can be from there to the end of what was tried.

import type { QuantityId, Row } from "../graph/types.ts";
import { kneeOf } from "./knee.ts";

/** What an answer is when nothing is lacking; answers that are not here have no such value. */
export const WHEN_ENOUGH: ReadonlyMap<QuantityId, number> = new Map([
  ["season.days_short", 0],
  ["season.seasons_short", 0],
  ["season.worst_season_days_short", 0],
  ["season.driest_year_days_short", 0],
  ["season.longest_short_run", 0],
  ["season.share_met", 1],
  ["season.worst_season_share_met", 1],
  ["season.driest_year_share_met", 1],
  ["season.reliability_years", 1],
  ["season.reliability_days", 1],
]);
/** Counting over decades leaves dust. */
export const DUST = 1e-9;

/** Shares of thirst met, along which a knee is looked for. */
const SHARES: ReadonlySet<QuantityId> = new Set(["season.share_met", "season.reliability_volume"]);

/** Whether so much of a number can be enough: not of a place, a turn or a name. */
export const hasEnough = (row: Row): boolean => row.row !== "given" || !row.sizeless;

/** One tried value: where on the axis, in ratios of any one of them, and the answer there. */
export type Tried = { readonly place: number; readonly size: number; readonly answer: number | null };

/** A place on the axis that is worth naming: enough from there on or up to there, or little more past it. */
export type Enough = { readonly place: number; readonly how: "from" | "up to" | "little more" };

/**
 * Where enough begins or ends; null where it is enough nowhere or everywhere, or at both ends and not between.
 *
 * @param answer the answer that was tried
 * @param tried in any order
 */
export function enoughOf(answer: QuantityId, tried: readonly Tried[]): Enough | null {
  const goal = WHEN_ENOUGH.get(answer);
  const rising = [...tried].sort((a, b) => a.place - b.place);
  const meets = rising.map(
    (point) => point.answer !== null && Math.abs(point.answer - (goal ?? NaN)) <= DUST,
  );
  const lowMeets = meets[0] ?? false;
  const highMeets = meets.at(-1) ?? false;
  if (lowMeets !== highMeets) {
    const at = highMeets ? meets.lastIndexOf(false) + 1 : meets.indexOf(false) - 1;
    const place = rising[at]?.place;
    return place === undefined ? null : { place, how: highMeets ? "from" : "up to" };
  }
  return lowMeets || !SHARES.has(answer) ? null : littleMore(rising);
}

function littleMore(rising: readonly Tried[]): Enough | null {
  const sized = rising.filter(({ size }) => size > 0);
  const knee = kneeOf(sized.map(({ size, answer }) => ({ multiple: size, shareMet: answer })));
  const point = sized.find(({ size }) => size === knee);
  return point ? { place: point.place, how: "little more" } : null;
}
