// What the first answers ask of a worksheet of which no season has been run: so much is worked out before they are painted.

/** Of the season and the weather. */
const OF_THE_WHOLE: readonly string[] = [
  "season.network",
  "season.plan",
  "season.seasons",
  "season.seasons_short",
  "season.worst_season_days_short",
  "season.days_of_autonomy",
  "season.days_short",
  "season.binding_driver",
  "season.left_out_list",
  "season.left_out_of_plan",
  "season.unmetered",
  "season.tightest_line",
  "season.spill",
  "season.stored_total",
  "season.short_days",
  "season.record_first_day",
  "weather.record_in_use",
  "weather.record_kind",
];

/** Of every card that has such a row; the last is what the list of parts says of a bed on a phone. */
const OF_EACH: readonly string[] = ["watering_time", "time_per_watering", "days_short", "needs_today"];

/** @param cards of the worksheet */
export const firstAsked = (cards: readonly { readonly id: string }[]): readonly string[] => [
  ...OF_THE_WHOLE,
  ...cards.flatMap(({ id }) => OF_EACH.map((row) => `${id}.${row}`)),
];
