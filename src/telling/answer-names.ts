// What the answers of the whole place are called where they stand alone, over a curve or in a list: on their own card a
// row may lean on the one before it ("of them", "in that season").

/** Answers of the whole place, as they are offered: what goes short, how long the water lasts, the rest. */
export const OF_THE_PLACE: readonly string[] = [
  "season.worst_season_days_short",
  "season.seasons_short",
  "season.days_short",
  "season.share_met",
  "season.days_of_autonomy",
  "season.reliability_volume",
  "season.spill",
  "cost.total",
  "cost.yearly",
];

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
