// What a bed's card says: how much, how often, by what means, whether it will get it, and what the season was like.

import type { Row } from "../../graph/types.ts";
import { REASON_OPTIONS } from "../../telling/words/bounds.ts";
import { formula, hidden, output } from "../rows.ts";
import { BED_NOW_ROWS } from "./now-rows.ts";
import { BED_SEASON_ROWS } from "./season-outputs.ts";

const HIDDEN: readonly Row[] = [
  hidden("planted_area", "Planted", "ground", "area"),
  hidden("watered_share", "Share watered", "ground", "share"),
  hidden("canopy_share", "Share that leaves cover", "ground", "share"),
  hidden("root_room", "Room for roots", "ground", "depth"),
  hidden("no_need_why", "Why it needs nothing", "demand", "text"),
  hidden("soil_in_pots", "Soil of its pots", "ground", "text"),
  hidden("most_share", "Shares that stand at once", "crops_said", "share"),
  hidden("crowded_from", "From", "crops_said", "text"),
  hidden("can_holds", "A can holds", "season.hands", "volume"),
  hidden("asks_can", "No cans here water it", "season.hands", "count"),
];

const NEED: readonly Row[] = [
  formula("area", "Ground", "area", "length * width", {
    minor: true,
    when: { row: "grown_in", is: ["ground"] },
  }),
  output("drying_there", "Dries, against open sky", "cover_drying", "factor", { minor: true }),
  output("growing", "Stands", "crops_said", "text", { minor: true }),
  output("taken_from", "Not in the tables", "crops_said", "text", { minor: true, quiet: true }),
  output("peak_day_need", "Needs on a peak day", "demand", "volume"),
  output("season_need", "Needs in a usual season", "season.run", "volume", {
    relations: ["(potential_use + lacked_at_planting - rain_counted) / efficiency"],
  }),
  output("potential_use", "Would use with water enough", "season.run", "volume", { minor: true }),
  output("lacked_at_planting", "Its ground lacked at planting", "season.run", "volume", { minor: true }),
  output("rain_counted", "Rain that counts, a season", "season.run", "volume", { minor: true }),
];

/** By the soil it is a good watering. */
const BY_CALENDAR = { when: { row: "rule", is: ["fixed", "weekdays"] } } as const;

const GIVING: readonly Row[] = [
  hidden("easy_depth", "Within easy reach, as a depth", "demand", "depth"),
  output("easy_volume", "Within easy reach of its roots", "demand", "volume", {
    minor: true,
    relations: ["easy_depth * planted_area / efficiency"],
  }),
  output("watering_volume", "A good watering", "demand", "volume", {
    relations: ["min(easy_volume, watering_interval / 1 day * peak_day_need)"],
  }),
  output("watering_interval", "A good watering lasts, at the peak", "demand", "span", {
    relations: ["max(1, floor(easy_volume / peak_day_need)) * 1 day"],
  }),
  output("asked_volume", "Given at once, by its rule", "demand", "volume", BY_CALENDAR),
  output("asked_interval", "And again after, at the soonest", "demand", "span", {
    minor: true,
    ...BY_CALENDAR,
  }),
  formula("cans_per_watering", "A watering in cans", "count", "ceil(asked_volume / can_holds)"),
  output("trips_per_watering", "By hand: trips", "season.hands", "count", { quiet: true }),
  output("weight_per_trip", "Weight a trip", "season.hands", "mass", { quiet: true }),
  output("time_by_hand", "By hand it takes", "season.hands", "duration", { quiet: true }),
  output("time_by_pump", "By pump it takes", "season.hands", "duration", { quiet: true }),
  formula(
    "usual_lasts",
    "What you usually give lasts, at the peak",
    "span",
    "usual_volume / peak_day_need * 1 day",
    {
      minor: true,
      none: [{ if: "peak_day_need <= 0 gal", reason: "it needs nothing on a peak day" }],
      quiet: true,
    },
  ),
  output("usual_compared", "What you usually give", "compare", "text", { fills: true, quiet: true }),
];

const SOAK: readonly Row[] = [
  output("first_soak", "First soak, if dry to the bottom", "soak", "volume", { minor: true }),
  output("soak_passes", "In so many goes", "soak", "count", { minor: true }),
  output("soak_pass_volume", "Each go", "soak", "volume", {
    minor: true,
    relations: ["first_soak / soak_passes"],
  }),
  output("soak_wait", "Wait between two", "soak", "duration", { minor: true }),
  output("soak_time", "All of it takes", "soak", "duration", {
    minor: true,
    relations: ["soak_passes * soak_wait"],
  }),
  output("soak_reaches", "Your soak goes down to", "soak", "depth", { minor: true, quiet: true }),
];

const SEASON: readonly Row[] = [
  output("season_got", "Got in a season", "season.run", "volume"),
  output("season_past_roots", "Poured past the roots, a season", "season.run", "volume", { minor: true }),
  output("share_met", "Share of its thirst it got", "season.run", "share"),
  output("days_short", "Days short, a season", "season.run", "count"),
  output("outside_days", "Stands outside the season, unwatered", "season.run", "count", { minor: true }),
  output("rule_kept", "Its rule was kept", "season.run", "share", { minor: true, quiet: true }),
  output("goes_short_by", "Goes short because", "season.run", "text", {
    options: REASON_OPTIONS,
    minor: true,
    quiet: true,
  }),
  output("likely_loss", "Harvest likely lost, a season", "season.run", "share", { minor: true }),
];

/** Result rows of a bed, in the order in which they are shown. */
export const BED_RESULTS: readonly Row[] = [
  ...BED_NOW_ROWS,
  ...HIDDEN,
  ...NEED,
  ...GIVING,
  ...SOAK,
  ...SEASON,
  ...BED_SEASON_ROWS,
];
