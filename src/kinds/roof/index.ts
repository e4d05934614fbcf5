// A roof: what each rain brings, and whether its downspouts can carry a storm.

import roofs from "../../../shared/roofs.json";
import type { Row, Typed } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import {
  COSTS,
  choice,
  DEFINITION,
  date,
  formula,
  gather,
  given,
  link,
  output,
  PRACTICE,
  RECORD,
} from "../rows.ts";
import { ROOF_CAUTIONS } from "./cautions.ts";
import { DIP_ROWS, dipping, learning } from "./dip.ts";
import { laidRoofs } from "./laid.ts";
import { sieving, winter, yearly } from "./models.ts";
import { ROOF_SPANS } from "./spans.ts";

const MATERIALS = Object.fromEntries(roofs.materials.map((material) => [material.word, material.label]));

function byMaterial(take: (material: (typeof roofs.materials)[number]) => Typed) {
  return { by: "material", pick: Object.fromEntries(roofs.materials.map((each) => [each.word, take(each)])) };
}

const FLUSH = roofs.first_flush.default;
const LEADERS = "National Standard Plumbing Code 2006, Table 13.6.1, leaders 7/24 full; Wyly and Eaton 1961";

const SURFACE: readonly Row[] = [
  given(
    "footprint",
    "Footprint",
    "area",
    { formula: "(length + 2 * overhang) * (width + 2 * overhang)" },
    "The ground it covers, seen from straight above, out to the gutter line. Never the sloped surface. Leave it empty to work it out from length and width.",
  ),
  given("length", "Length of the walls", "length", [20, "ft"], "Only used where no footprint is given.", {
    min: 0.01,
    minor: true,
  }),
  given("width", "Width of the walls", "length", [10, "ft"], "Level across, not up the slope.", {
    min: 0.01,
    minor: true,
  }),
  given("overhang", "Stands over them by", "length", [0, "ft"], "On every side, seen from above.", {
    minor: true,
    max: 10,
  }),
  choice("material", "Material", MATERIALS, "metal", "What the rain lands on."),
  given(
    "runoff_coefficient",
    "Share that runs off",
    "factor",
    byMaterial((material) => [material.runoff_coefficient.value, "1"]),
    "Of the rain on the roof, the share that reaches the gutter.",
    { max: 1 },
  ),
  choice(
    "losses",
    "Lost on the way",
    { each_rain: "a little of each rain", in_coefficient: "already in the share that runs off" },
    "each_rain",
    "Either the losses below, or a yearly share that already contains them. Never both.",
    { minor: true },
  ),
  given(
    "wetting_loss",
    "Wets the roof, each rain day",
    "rain",
    byMaterial((material) => [material.wetting_loss.value, material.wetting_loss.unit]),
    "Rain that only wets the roof and dries again.",
    { max: 0.02 },
  ),
  given(
    "first_flush",
    "First flush, each rain",
    "rain",
    [FLUSH.value, FLUSH.unit],
    "The first dirty water of a rain, led away; most of the dirt comes in the first 1.2 mm. An event ends with a day under 1 mm.",
    { max: 0.02 },
  ),
];

const CONNECTION: readonly Row[] = [
  link("drains_to", "Drains to", "holds_water", "drains to no tank", "The tank its downspout leads to."),
  date(
    "catch_from",
    "Connected from",
    "month_day",
    null,
    "Leave it empty when it is connected all year.",
    "connected all year",
  ),
  date(
    "catch_until",
    "Connected until",
    "month_day",
    null,
    "Take it off before hard frost.",
    "connected all year",
  ),
];

const CATCH: readonly Row[] = [
  gather(
    "filters_pass",
    "Its filters",
    "series",
    { kind: "filter", by: "on", take: "passes", how: "list" },
    "What the filters on it let through.",
    { hidden: true },
  ),
  output(
    "catching_area",
    "Counts as",
    "sieving",
    "area",
    "Footprint times the share that every filter on it lets through.",
    DEFINITION,
    { hidden: true },
  ),
  formula(
    "catch_per_depth",
    "A rain brings",
    "catch_rate",
    "footprint * coefficient_in_use",
    "Footprint times the share that runs off: water for each depth of rain, before what only wets the roof.",
    "definition: 1 in on 1 ft² is 144/231 gal",
  ),
  ...DIP_ROWS,
  output(
    "mean_yearly_catch",
    "In a usual year",
    "yearly_catch",
    "yearly_volume",
    "Every rain of the record, less what wets the roof, what is flushed and what filters throw away, over the whole calendar years.",
    RECORD,
  ),
  output(
    "driest_year_catch",
    "In the driest",
    "yearly_catch",
    "yearly_volume",
    "The same for the calendar year with the least rain.",
    RECORD,
  ),
  output(
    "frost_days_off",
    "Frost days while taken off",
    "winter",
    "count",
    "Days of a usual calendar year with a low under freezing while the roof is not connected.",
    RECORD,
    { hidden: true },
  ),
  output(
    "frost_days",
    "Frost days while connected",
    "winter",
    "count",
    "Days of a usual calendar year with a low under freezing while the roof is connected.",
    RECORD,
    { minor: true },
  ),
];

const STORM: readonly Row[] = [
  given(
    "design_storm",
    "Hard downpour to cope with",
    "rain_rate",
    [4, "in/h"],
    "A local five-minute rain that comes once in ten years; ask your building office.",
    { minor: true, max: 0.0002 },
  ),
  formula(
    "storm_flow",
    "Then runs off",
    "flow",
    "footprint * design_storm",
    "Footprint times the downpour, all of it running off.",
    "definition: 1 in/h on 96.25 ft² is 1 gpm",
    { minor: true },
  ),
  given("downspout_diameter", "Downspout, inside", "bore", [3, "in"], "Round ones of 2 to 8 in.", {
    minor: true,
    min: 0.05,
    max: 0.21,
  }),
  given("downspout_count", "How many downspouts", "count", [1, "1"], "That share this roof's water.", {
    minor: true,
    min: 1,
    max: 100,
  }),
  formula(
    "downspout_capacity",
    "They carry",
    "flow",
    "downspout_count * leader_capacity(downspout_diameter)",
    "What a round downspout of this bore carries with room for the air in its middle, times how many there are.",
    LEADERS,
    { minor: true },
  ),
  formula(
    "first_flush_volume",
    "First flush comes to",
    "volume",
    "footprint * first_flush",
    "Footprint times the depth that is led away.",
    DEFINITION,
    { minor: true },
  ),
  given("standpipe_bore", "First-flush pipe, inside", "bore", [4, "in"], "The pipe that holds it back.", {
    minor: true,
    min: 0.01,
    source: PRACTICE,
  }),
  formula(
    "standpipe_length",
    "Of it you need",
    "length",
    "first_flush_volume / circle_area(standpipe_bore)",
    "The first flush over the pipe's section.",
    "geometry: 18.4 in of 4 in pipe a gallon",
    { minor: true },
  ),
];

export const roof: Kind = {
  kind: "roof",
  label: "Roof",
  purpose: "Catches rain and sends it to a tank.",
  group: "Roofs",
  icon: { ink: "M3 11 20 5M6 10v10M17 6.5V20", tone: "M20 5v7", color: "water" },
  uses: ["carries_dirt"],
  joins: { drains_to: "newest" },
  firstNumbers: [{ row: "footprint" }],
  local: ["footprint", "length", "width"],
  handSettings: ["drains_to", "first_flush_volume", "standpipe_length", "catch_from", "catch_until"],
  laid: laidRoofs,
  drawn: {
    as: "roof",
    beside: [{ row: "mean_yearly_catch", tint: "water", text: "{} a year" }],
    spoken: "{title} drains to {drains_to|no tank}",
  },
  glance: ["mean_yearly_catch", "driest_year_catch"],
  spans: ROOF_SPANS,
  rows: [...SURFACE, ...CONNECTION, ...CATCH, ...STORM, ...COSTS],
  models: [sieving, dipping, learning, yearly, winter],
  cautions: ROOF_CAUTIONS,
};
