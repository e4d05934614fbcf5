// What the answers of the whole place are called where they stand alone, over a curve or in a list: on their own card a
// row may lean on the one before it ("of them", "in that season"). And what a grower looks for first among answers.

/**
 * What a grower looks for first, in this order: what goes short, how long the water lasts, when it is there again, the rest
 * of the whole place. A name without a dot is a row's, of whatever part has one.
 */
const LOOKED_FOR: readonly string[] = [
  "season.worst_season_days_short",
  "season.seasons_short",
  "season.days_short",
  "days_short",
  "season.share_met",
  "season.days_of_autonomy",
  "days_of_autonomy",
  "refill_after_watering",
  "refill_time",
  "season.reliability_volume",
  "season.spill",
  "cost.total",
  "cost.yearly",
];

/** Answers of the whole place, in the order in which they are offered. */
export const OF_THE_PLACE: readonly string[] = LOOKED_FOR.filter((name) => name.includes("."));

/** Where an answer stands among those that are looked for, from nought on; behind them all stand the others, alike. */
export function placeInOrder(id: string): number {
  const own = LOOKED_FOR.indexOf(id);
  const at = own < 0 ? LOOKED_FOR.indexOf(id.split(".")[1] ?? "") : own;
  return at < 0 ? LOOKED_FOR.length : at;
}

const NAMES: ReadonlyMap<string, string> = new Map([
  ["season.worst_season_days_short", "Short days, worst season"],
  ["season.worst_season_share_met", "Share got, worst season"],
  ["season.worst_season", "Worst season"],
  ["season.driest_year_days_short", "Short days, driest year"],
  ["season.driest_year_share_met", "Share got, driest year"],
  ["season.seasons_short", "Seasons with a short day"],
  ["season.days_short", "Short days, usual season"],
  ["season.share_met", "Share got, all seasons"],
  ["season.days_of_autonomy", "Full tanks last"],
  ["season.reliability_volume", "Got of what was asked for"],
  ["season.reliability_years", "Seasons without a short day"],
  ["season.spill", "Spills, a season"],
  ["season.need", "Beds need, a season"],
  ["season.got", "Beds got, a season"],
  ["cost.total", "All parts cost"],
  ["cost.yearly", "Cost by the year"],
]);

/** The name that an answer has by itself; null where its row's label will do. */
export const answerName = (id: string): string | null => NAMES.get(id) ?? null;
