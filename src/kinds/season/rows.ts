// What the season card shows: its one given number, the answers of the run, and what other rows read.

import type { Row } from "../../graph/types.ts";
import { BOUND_OPTIONS } from "../../telling/words/bounds.ts";
import { formula, given, hidden, output } from "../rows.ts";
import { STORAGE_ROWS } from "./storage-answers.ts";
import { WEEK_ROWS } from "./week.ts";

/** Rows of the season card, in the order in which they are shown. */
export const SEASON_ROWS: readonly Row[] = [
  given("hold_days", "Hold back for the beds before, days", "count", [7, "1"], { max: 365 }),
  ...WEEK_ROWS,
  hidden("network", "Network", "linking", "series"),
  hidden("plan", "Plan", "planning", "series"),
  hidden("left_out_of_plan", "Left out before the run", "planning", "series"),
  hidden("part_kinds", "Kinds of the parts", "planning", "series"),
  hidden("left_out_list", "Left out", "listing", "series"),
  output("left_out", "Parts left out", "listing", "count"),
  output("reachable", "Water you can draw, all tanks", "peak_draw", "volume", { minor: true }),
  output("peak_day_draw", "Taken on a peak day", "peak_draw", "volume", { minor: true }),
  formula("days_of_autonomy", "Full tanks last", "span", "reachable / peak_day_draw * 1 day"),
  ...STORAGE_ROWS,
  output("need", "Beds need, a season", "run", "volume"),
  output("got", "Beds got, a season", "run", "volume"),
  output("past_roots", "Poured past their roots, a season", "run", "volume", { minor: true }),
  output("share_met", "Share of their thirst beds got", "run", "share"),
  output("days_short", "Days short, a season", "run", "count"),
  output("longest_short_run", "Longest run of short days", "run", "count"),
  output("seasons", "Seasons in the record", "run", "count", { minor: true }),
  output("seasons_short", "Seasons with a short day", "run", "count"),
  output("worst_season", "Worst season for the beds", "run", "year", { mostOf: "worst_season_days_short" }),
  output("worst_season_share_met", "Share got in that season", "run", "share"),
  output("worst_season_days_short", "Days short in that season", "run", "count"),
  output("driest_year_share_met", "Share got, driest year", "run", "share"),
  output("driest_year_days_short", "Days short, driest year", "run", "count"),
  hidden("short_first_bed", "Goes short first, by its id", "run", "text"),
  output("short_first", "Goes short first, driest year", "short_first", "text"),
  output("short_first_day", "From", "run", "text", { minor: true }),
  output("spill", "Spills, a season", "run", "volume"),
  output("binding", "Short of most often", "run", "text", { options: BOUND_OPTIONS }),
  hidden("binding_driver", "Driven by", "run", "text"),
  output("hands_time", "Your time, a season", "run", "duration", { minor: true }),
  output("hands_trips", "Trips with cans, a season", "run", "count", { minor: true }),
  output("hands_weight", "Lifted in cans, a season", "run", "mass", { minor: true }),
  output("hands_distance", "Walked with cans, a season", "run", "long_distance", { minor: true }),
  hidden("tightest_line", "Slowest line for its beds", "tightest", "text"),
  output("tightest_refill", "Its refill", "tightest", "duration", { minor: true }),
  output("tightest_interval", "Its beds ask again after", "tightest", "span", { minor: true }),
  output("tightest_share", "Refill over that time", "tightest", "share", { minor: true }),
  output("balance_error", "Water not accounted for", "run", "factor", { minor: true }),
  output("energy_error", "Charge not accounted for", "run", "factor", { minor: true }),
  output("unmetered", "Pumps whose power is not known", "planning", "count", { minor: true }),
  hidden("stored_total", "Water in all tanks", "run", "series"),
  hidden("short_days", "Short days", "run", "series"),
  hidden("by_season", "Season by season", "run", "series"),
  hidden("left_out_in_run", "Left out", "run", "series"),
  hidden("record_first_day", "First day", "run", "count"),
];
