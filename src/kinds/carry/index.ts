// Watering by hand: cans, trips, weight and time.

import type { Caution, Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { formula, gather, given, link, output } from "../rows.ts";
import { carrySeason } from "./season.ts";
import { CARRY_SPANS } from "./spans.ts";

const GIVENS: readonly Row[] = [
  link("from", "Filled at", "holds_water", "filled at no tank"),
  given("can_volume", "A can holds", "volume", [2, "gal"], { min: 0.000_1, max: 0.1 }),
  given("can_weight", "An empty can weighs", "mass", [2, "lb"], { minor: true }),
  given("cans_at_once", "Cans at a time", "count", [2, "1"], { min: 1, max: 6 }),
  given("distance", "Way to the bed", "distance", [40, "ft"]),
  given("weight_limit", "Most you want to carry", "mass", [40, "lb"], { min: 0.5, max: 100 }),
  given("pace", "Walking", "pace", [3, "ft/s"], { min: 0.1, max: 3, minor: true }),
  given("fill_time", "Filling, each can", "duration", [20, "s"], { minor: true }),
  given("pour_time", "Pouring, each can", "duration", [40, "s"], { minor: true }),
];

const ONE_ROUND: readonly Row[] = [
  formula("round_volume", "Carried at a time", "volume", "can_volume * cans_at_once", { minor: true }),
  formula(
    "round_time",
    "One round takes",
    "duration",
    "cans_at_once * (fill_time + pour_time) + 2 * distance / pace",
    { minor: true },
  ),
  formula(
    "weight_per_trip",
    "Weight you carry",
    "mass",
    "cans_at_once * (can_volume * site.water_density + can_weight)",
  ),
  formula("limit_share", "Share of what you want to carry", "share", "weight_per_trip / weight_limit", {
    minor: true,
  }),
];

const A_WATERING: readonly Row[] = [
  gather(
    "largest_watering",
    "Largest watering",
    "volume",
    { kind: "bed", by: "watered_by", take: "asked_volume", how: "max" },
    { minor: true },
  ),
  formula("trips_per_watering", "Trips, largest watering", "count", "ceil(largest_watering / round_volume)"),
  formula("time_per_watering", "Time, largest watering", "duration", "trips_per_watering * round_time"),
  formula("weight_per_watering", "Lifted, largest watering", "mass", "trips_per_watering * weight_per_trip", {
    minor: true,
  }),
  formula(
    "share_of_day",
    "Share of your time to water",
    "share",
    "time_per_watering / site.minutes_per_day",
    {
      minor: true,
    },
  ),
];

const A_SEASON: readonly Row[] = [
  output("season_volume", "Carried in a season", "season.run", "volume"),
  output("season_trips", "Trips in a season", "season.run", "count"),
  output("season_time", "Your time in a season", "season.run", "duration"),
  formula(
    "season_weight",
    "Weight lifted in a season",
    "mass",
    "season_volume / round_volume * weight_per_trip",
    { minor: true },
  ),
  formula(
    "season_distance",
    "Walked in a season",
    "long_distance",
    "season_volume / round_volume * 2 * distance",
    { minor: true },
  ),
];

const CAUTIONS: readonly Caution[] = [
  {
    id: "over_limit",
    if: "weight_per_trip > weight_limit",
    beside: "weight_per_trip",
    weight: "trouble",
  },
  {
    id: "lifting",
    if: "weight_per_trip > 23 kg",
    beside: "weight_per_trip",
    weight: "harm",
  },
  {
    id: "lifting_care",
    if: "weight_per_trip <= 23 kg",
    beside: "weight_per_trip",
    weight: "harm",
  },
  {
    id: "carrying_far",
    if: "distance > 10 m",
    beside: "distance",
    weight: "harm",
  },
];

export const carry: Kind = {
  kind: "carry",
  label: "Cans by hand",
  purpose: "Water carried from a tank to the beds.",
  group: "Ways for the water",
  season: carrySeason,
  icon: { ink: "M5 10h10l-1 10H6zM15 13l5-4M7 10a3 3 0 0 1 6 0" },
  noted: ["cleaned", "drained"],
  uses: ["waters_beds"],
  joins: { from: "newest" },
  mends: ["hands"],
  offers: [{ name: "can", says: "a second can for {}", row: "cans_at_once", buys: { more: "one", most: 2 } }],
  drawn: {
    as: "carry",
    beside: [{ row: "trips_per_watering", tint: "growth", text: "{} trips a watering" }],
    spoken: "{title}, filled at {from|no tank}",
  },
  glance: ["trips_per_watering", "time_per_watering"],
  spans: CARRY_SPANS,
  rows: [...GIVENS, ...ONE_ROUND, ...A_WATERING, ...A_SEASON],
  models: [],
  cautions: CAUTIONS,
};
