// What is worked out first of a worksheet of which no season has been run: for the frame what there is and how it hangs
// together, and where there is no frame what the lead asks, its numbers among it. What stands under the lead comes with the rest.

/** What the lead's words go by, and what the head says of the weather: its numbers keep their places meanwhile. */
export const FRAME_ASKED: readonly string[] = ["season.network", "weather.record_kind"];

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
  "season.stored_total",
  "season.short_days",
  "season.record_first_day",
  "weather.record_in_use",
  "weather.record_kind",
];

/** Of every card that has such a row: what the list of parts says of a bed on a phone. */
const OF_EACH: readonly string[] = ["needs_today"];

/** @param cards of the worksheet */
export const firstAsked = (cards: readonly { readonly id: string }[]): readonly string[] => [
  ...OF_THE_WHOLE,
  ...cards.flatMap(({ id }) => OF_EACH.map((row) => `${id}.${row}`)),
];
