// Watering by hand: cans, trips, weight and time.

import type { Caution, Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { DEFINITION, formula, gather, given, link, output, PRACTICE } from "../rows.ts";
import { laidCans } from "./laid.ts";
import { CARRY_SPANS } from "./spans.ts";

const RUN = "your record, day by day";

const GIVENS: readonly Row[] = [
  link("from", "Filled at", "holds_water", "filled at no tank", "The tank the cans are filled from."),
  given("can_volume", "A can holds", "volume", [2, "gal"], "Filled as you carry it.", {
    min: 0.000_1,
    max: 0.1,
  }),
  given("can_weight", "An empty can weighs", "mass", [2, "lb"], "Steel or plastic.", {
    source: PRACTICE,
    minor: true,
  }),
  given("cans_at_once", "Cans at a time", "count", [2, "1"], "Two balance better than one.", {
    min: 1,
    max: 6,
  }),
  given("distance", "Way to the bed", "distance", [40, "ft"], "One way."),
  given(
    "weight_limit",
    "Most you want to carry",
    "mass",
    [40, "lb"],
    "Your own limit. A full bucket lifted from near the ground once a minute comes out at 40 lb by the lifting equation.",
    {
      min: 0.5,
      max: 100,
      source: "revised NIOSH lifting equation, a good grip close to the body, worked out by us",
    },
  ),
  given("pace", "Walking", "pace", [3, "ft/s"], "Loaded, on soft ground. Brisk empty walking is 5 ft/s.", {
    min: 0.1,
    max: 3,
    minor: true,
    source: PRACTICE,
  }),
  given("fill_time", "Filling, each can", "duration", [20, "s"], "By dipping or from a tap.", {
    minor: true,
    source: PRACTICE,
  }),
  given("pour_time", "Pouring, each can", "duration", [40, "s"], "Slowly, onto the soil.", {
    minor: true,
    source: PRACTICE,
  }),
];

const ONE_ROUND: readonly Row[] = [
  formula(
    "round_volume",
    "Carried at a time",
    "volume",
    "can_volume * cans_at_once",
    "A can times the cans.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "round_time",
    "One round takes",
    "duration",
    "cans_at_once * (fill_time + pour_time) + 2 * distance / pace",
    "Filling and pouring each can, and the way there and back.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "weight_per_trip",
    "Weight you carry",
    "mass",
    "cans_at_once * (can_volume * site.water_density + can_weight)",
    "Water and cans together.",
    "definition: water is about 8.34 lb a US gallon",
  ),
  formula(
    "limit_share",
    "Of what you want to carry",
    "share",
    "weight_per_trip / weight_limit",
    "The weight of a trip over your limit.",
    DEFINITION,
    { minor: true },
  ),
];

const A_WATERING: readonly Row[] = [
  gather(
    "largest_watering",
    "Largest watering",
    "volume",
    { kind: "bed", by: "watered_by", take: "watering_volume", how: "max" },
    "The bed that takes the most at once.",
    { minor: true },
  ),
  formula(
    "trips_per_watering",
    "Trips, largest watering",
    "count",
    "ceil(largest_watering / round_volume)",
    "The largest watering over what goes in one trip.",
    DEFINITION,
  ),
  formula(
    "time_per_watering",
    "It takes",
    "duration",
    "trips_per_watering * round_time",
    "Trips times the time of a round.",
    DEFINITION,
  ),
  formula(
    "weight_per_watering",
    "Lifted for it, in all",
    "mass",
    "trips_per_watering * weight_per_trip",
    "Trips times the weight of one.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "share_of_day",
    "Of your time to water",
    "share",
    "time_per_watering / site.minutes_per_day",
    "The largest watering over the time you have a day.",
    DEFINITION,
    { minor: true },
  ),
];

const A_SEASON: readonly Row[] = [
  output(
    "season_volume",
    "Carried in a season",
    "season.run",
    "volume",
    "What was carried in a usual season.",
    RUN,
  ),
  output(
    "season_trips",
    "Trips in a season",
    "season.run",
    "count",
    "Rounds of draw and refill in a usual season.",
    RUN,
  ),
  output(
    "season_time",
    "Your time in a season",
    "season.run",
    "duration",
    "Filling, walking and pouring in a usual season.",
    RUN,
  ),
  formula(
    "season_weight",
    "Weight lifted in a season",
    "mass",
    "season_volume / round_volume * weight_per_trip",
    "Trips in a season times the weight of one.",
    DEFINITION,
  ),
  formula(
    "season_distance",
    "Walked in a season",
    "long_distance",
    "season_volume / round_volume * 2 * distance",
    "Trips in a season times the way there and back.",
    DEFINITION,
  ),
];

const CAUTIONS: readonly Caution[] = [
  {
    id: "over_limit",
    if: "weight_per_trip > weight_limit",
    text: "{weight_per_trip} at a time is more than the {weight_limit} you want to carry. Fill the cans less, or carry one.",
    beside: "weight_per_trip",
    source: "your own limit",
    weight: "trouble",
  },
  {
    id: "lifting",
    if: "weight_per_trip > 23 kg",
    text: "{weight_per_trip} at a time is more than the 51 lb that the NIOSH lifting equation allows at its very best. Smaller cans, more trips.",
    beside: "weight_per_trip",
    source: "revised NIOSH lifting equation, load constant 23 kg",
    weight: "harm",
  },
  {
    id: "lifting_care",
    if: "weight_per_trip <= 23 kg",
    text: "Bend the knees, keep the load close, rest often. A bad back or heart: ask a doctor first.",
    beside: "weight_per_trip",
    source: "NIOSH and HSE lifting guidance; common practice",
    weight: "harm",
  },
  {
    id: "carrying_far",
    if: "distance > 10 m",
    text: "Put the cans down on the way: guidance says to carry no further than about 10 m, 33 ft, without a rest.",
    beside: "distance",
    source: "UK HSE lifting guidance, read second-hand",
    weight: "harm",
  },
];

export const carry: Kind = {
  kind: "carry",
  label: "Cans by hand",
  purpose: "Water carried from a tank to the beds.",
  group: "Ways for the water",
  icon: { ink: "M5 10h10l-1 10H6zM15 13l5-4M7 10a3 3 0 0 1 6 0" },
  uses: ["waters_beds"],
  joins: { from: "newest" },
  firstNumbers: [{ row: "distance" }],
  laid: laidCans,
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
