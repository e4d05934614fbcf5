// A roof: what each rain brings, and whether its downspouts can carry a storm.

import roofs from "../../../shared/roofs.json";
import type { Row, Typed } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, choice, date, formula, given, hidden, hiddenFrom, link, output } from "../rows.ts";
import { ROOF_CAUTIONS } from "./cautions.ts";
import { DIP_ROWS, dipping, learning } from "./dip.ts";
import { sieving, winter, yearly } from "./models.ts";
import { roofSeason } from "./season.ts";
import { ROOF_SPANS } from "./spans.ts";

const MATERIALS = Object.fromEntries(roofs.materials.map((material) => [material.word, material.label]));

function byMaterial(take: (material: (typeof roofs.materials)[number]) => Typed) {
  return { by: "material", pick: Object.fromEntries(roofs.materials.map((each) => [each.word, take(each)])) };
}

const FLUSH = roofs.first_flush.default;

const SURFACE: readonly Row[] = [
  given("footprint", "Ground it covers", "area", {
    formula: "(length + 2 * overhang) * (width + 2 * overhang)",
  }),
  given("length", "Length of the walls", "length", [20, "ft"], { min: 0.01, minor: true }),
  given("width", "Width of the walls", "length", [10, "ft"], { min: 0.01, minor: true }),
  given("overhang", "Eaves stand out by", "length", [0, "ft"], { minor: true, max: 10 }),
  choice("material", "Material", MATERIALS, "metal"),
  given(
    "runoff_coefficient",
    "Share that runs off",
    "factor",
    byMaterial((material) => [material.runoff_coefficient.value, "1"]),
    { max: 1 },
  ),
  choice(
    "losses",
    "Lost on the way",
    { each_rain: "a little of each rain", in_coefficient: "already in the share that runs off" },
    "each_rain",
    { minor: true },
  ),
  given(
    "wetting_loss",
    "Wets the roof, each rain day",
    "rain",
    byMaterial((material) => [material.wetting_loss.value, material.wetting_loss.unit]),
    { max: 0.02 },
  ),
  given("first_flush", "First flush, each rain", "rain", [FLUSH.value, FLUSH.unit], { max: 0.02 }),
];

const CONNECTION: readonly Row[] = [
  link("drains_to", "Drains to", "holds_water", "drains to no tank"),
  date("catch_from", "Connected from", "month_day", null, "connected all year"),
  date("catch_until", "Connected until", "month_day", null, "connected all year"),
];

const CATCH: readonly Row[] = [
  hiddenFrom("filter", "on")("filters_pass", "Its filters", "series", "passes", "list"),
  hidden("catching_area", "Counts as", "sieving", "area"),
  formula("catch_per_depth", "A rain brings", "catch_rate", "footprint * coefficient_in_use"),
  ...DIP_ROWS,
  output("mean_yearly_catch", "In a usual year", "yearly_catch", "yearly_volume"),
  output("driest_year_catch", "In the driest year", "yearly_catch", "yearly_volume"),
  hidden("frost_days_off", "Frost days while taken off", "winter", "count"),
  output("frost_days", "Frost days while connected", "winter", "count", { minor: true }),
];

const STORM: readonly Row[] = [
  given("design_storm", "Hard downpour to cope with", "rain_rate", [4, "in/h"], { minor: true, max: 0.0002 }),
  formula("storm_flow", "Runs off in a downpour", "flow", "footprint * design_storm", { minor: true }),
  given("downspout_diameter", "Downspout, inside", "bore", [3, "in"], { minor: true, min: 0.05, max: 0.21 }),
  given("downspout_count", "How many downspouts", "count", [1, "1"], { minor: true, min: 1, max: 100 }),
  formula(
    "downspout_capacity",
    "They carry",
    "flow",
    "downspout_count * leader_capacity(downspout_diameter)",
    { minor: true },
  ),
  formula("first_flush_volume", "First flush comes to", "volume", "footprint * first_flush", { minor: true }),
  given("standpipe_bore", "First-flush pipe, inside", "bore", [4, "in"], { minor: true, min: 0.01 }),
  formula(
    "standpipe_length",
    "First-flush pipe, length",
    "length",
    "first_flush_volume / circle_area(standpipe_bore)",
    { minor: true },
  ),
];

export const roof: Kind = {
  kind: "roof",
  label: "Roof",
  purpose: "Catches rain and sends it to a tank.",
  group: "Roofs",
  season: roofSeason,
  icon: { ink: "M3 11 20 5M6 10v10M17 6.5V20", tone: "M20 5v7", color: "water" },
  noted: ["cleaned", "drained"],
  uses: ["carries_dirt"],
  joins: { drains_to: "newest" },
  local: ["footprint", "length", "width"],
  mends: ["rain"],
  offers: [{ name: "gutter", says: "a gutter on {}", row: "drains_to", buys: "link" }],
  handSettings: [
    "footprint",
    "drains_to",
    "first_flush_volume",
    "standpipe_length",
    "catch_from",
    "catch_until",
  ],
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
