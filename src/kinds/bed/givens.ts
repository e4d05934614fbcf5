// What a gardener says of a bed: its ground, what grows there, cover, mulch, who waters it and when.

import soils from "../../../shared/soils.json";
import methods from "../../../shared/water-methods.json";
import type { Row, Typed } from "../../graph/types.ts";
import { DAY } from "../../units/constants.ts";
import { choice, date, given, links, text } from "../rows.ts";
import { CROP_OPTIONS, labelled, MULCH_LABELS } from "./crops.ts";

const EFFICIENCIES: Readonly<Record<string, Typed>> = Object.fromEntries(
  Object.entries(methods.methods).map(([word, method]) => [
    word,
    [method.efficiency.value * 100, "%"] as const,
  ]),
);

const YES_NO = { no: "no", yes: "yes" };
const IN_GROUND = { when: { row: "grown_in", is: ["ground"] } } as const;
const IN_POTS = { when: { row: "grown_in", is: ["pots"] } } as const;
const COVERED = { when: { row: "cover", is: ["covered"] }, minor: true } as const;
const BY_LIGHT = { when: { row: "cover_by", is: ["light"] }, minor: true } as const;
const WETTED = { when: { row: "ground_wetting", is: ["given"] }, minor: true } as const;

const SIZE: readonly Row[] = [
  given("length", "Length", "length", [20, "ft"], { min: 0.05, max: 5000, ...IN_GROUND }),
  given("width", "Width", "length", [4, "ft"], { min: 0.05, max: 5000, ...IN_GROUND }),
  {
    row: "list",
    of: "contents",
    name: "contents",
    label: "What grows there",
    crops: CROP_OPTIONS,
    default: [{ crop: "tomato", planted: "05-15", share: 1 }],
  },
  choice("grown_in", "Grown in", { ground: "the ground", pots: "pots or trays" }, "ground", {
    minor: true,
  }),
  given("pot_count", "Pots", "count", [10, "1"], { min: 1, max: 100_000, ...IN_POTS }),
  given("pot_volume", "Soil in each", "volume", [5, "gal"], { min: 0.000_01, max: 10, ...IN_POTS }),
  given("pot_spread", "Ground its leaves shade", "area", [2, "ft2"], { min: 0.001, max: 100, ...IN_POTS }),
];

const GROUND: readonly Row[] = [
  choice("soil", "Soil", labelled(soils.soils), "loam"),
  given("root_depth", "Roots go down to", "depth", [12, "in"], { min: 0.05, max: 3, ...IN_GROUND }),
  given("plant_count", "Plants watered one by one", "count", null, {
    min: 1,
    absent: "the whole bed is watered",
    minor: true,
    ...IN_GROUND,
  }),
  given("spot_area", "Wet spot of each", "area", null, {
    min: 0.000_1,
    absent: "the whole bed is watered",
    minor: true,
    when: { row: "plant_count" },
  }),
  given("plant_spread", "Ground each shades", "area", null, {
    absent: "their leaves close over the whole bed",
    minor: true,
    when: { row: "plant_count" },
  }),
  given("wetted_share", "Share of the bed that is watered", "share", [100, "%"], {
    min: 0.01,
    max: 1,
    minor: true,
    ...IN_GROUND,
  }),
  choice("mingled", "Crops grow into each other", YES_NO, "no", { minor: true }),
  given("young_days", "Days of daily water after planting", "count", [0, "1"], { max: 60, minor: true }),
];

const COVER: readonly Row[] = [
  choice("cover", "Under", { open: "open sky", covered: "a tunnel or roof" }, "open"),
  choice(
    "cover_by",
    "Drying there by",
    { factor: "a factor", light: "the light the cover lets through" },
    "factor",
    COVERED,
  ),
  given(
    "cover_factor",
    "Drying there against open sky",
    "factor",
    { by: "cover", pick: { open: [1, "1"], covered: [0.75, "1"] } },
    { max: 1.5, minor: true },
  ),
  given("cover_light", "Light the cover lets through", "share", [70, "%"], { min: 0.2, max: 1, ...BY_LIGHT }),
  choice("cover_sides", "Its sides are", { closed: "closed", sides_up: "up" }, "sides_up", BY_LIGHT),
  choice("mulch", "Mulch", MULCH_LABELS, "none"),
  choice(
    "ground_wetting",
    "Bare ground is wetted",
    { tables: "as the tables have it", given: "as often as I say" },
    "tables",
    { minor: true },
  ),
  given("wetted_every", "Once every", "span", [2, "day"], { min: DAY, max: 30 * DAY, ...WETTED }),
  given("wetted_depth", "Each time with", "depth", [0.4, "in"], { min: 0.001, max: 0.1, ...WETTED }),
  choice("air_corrects", "Dry, windy air drives the crop", YES_NO, "no", { minor: true }),
];

const CALENDAR = { when: { row: "rule", is: ["weekdays"] } } as const;
const SET_AMOUNT = { when: { row: "rule", is: ["fixed", "weekdays"] } } as const;

/** What a square meter counts of each, against others: our definition, common practice, no source. */
const WORTHS: Readonly<Record<string, Typed>> = {
  must_live: [10, "1"],
  good_to_have: [3, "1"],
  may_go: [1, "1"],
};

/** What it is to its grower: nobody else can know, so every bed is the same until somebody says. */
const WORTH: readonly Row[] = [
  choice(
    "worth",
    "What this bed is to you",
    { must_live: "must live", good_to_have: "good to have", may_go: "may go" },
    "good_to_have",
  ),
  given(
    "worth_weight",
    "Counts so often, ground for ground",
    "factor",
    { by: "worth", pick: WORTHS },
    { min: 0.01, max: 1000, minor: true },
  ),
];

const WATERING: readonly Row[] = [
  choice("method", "Watered with", labelled(methods.methods), "wand"),
  given(
    "efficiency",
    "Reaches the roots",
    "share",
    { by: "method", pick: EFFICIENCIES },
    { min: 0.1, max: 1, minor: true },
  ),
  {
    ...links("watered_by", "Watered by", "waters_beds", "watered by nobody"),
    swaps: [
      { from: "delivery", to: "carry", keep: "from", ask: "Swap the pump for cans" },
      { from: "carry", to: "delivery", keep: "from", ask: "Swap the cans for a pump" },
    ],
  },
  given("priority", "Its turn when water is short", "count", [5, "1"], { min: 1, max: 100, sizeless: true }),
  choice(
    "rule",
    "Watered when",
    {
      soil: "the soil asks for it",
      fixed: "so much every so many days",
      weekdays: "on set days of the week",
    },
    "soil",
  ),
  text("weekdays", "On these days", "tue fri", { of: "weekdays", ...CALENDAR }),
  choice("weekday_amount", "Each time", { lack: "what the soil lacks", fixed: "a set amount" }, "lack", {
    ...CALENDAR,
  }),
  given("fixed_volume", "Set amount", "volume", [20, "gal"], { ...SET_AMOUNT }),
  given("fixed_every", "Every so many days", "span", [3, "day"], {
    min: DAY,
    when: { row: "rule", is: ["fixed"] },
  }),
  choice(
    "decides_on",
    "You decide by",
    { evening: "last evening's soil", morning: "this morning's soil, with the night's rain in it" },
    "evening",
    { minor: true },
  ),
  date("let_go_from", "Given up from, in a dry spell", "month_day", null, "never given up"),
  given("let_go_dry_days", "After so many dry days", "count", [14, "1"], {
    min: 1,
    max: 366,
    minor: true,
    when: { row: "let_go_from" },
  }),
  date("last_soaked", "Last soaked through", "day", null, "not said"),
  given("can_volume", "Your can holds", "volume", [2, "gal"], {
    minor: true,
    min: 0.000_1,
    when: { row: "asks_can", is: ["1"] },
  }),
  given("usual_volume", "Usually given at once", "volume", null, {
    absent: "not said",
    minor: true,
    min: 0.000_1,
  }),
  given("soak_tried", "You soaked it dry with", "volume", null, {
    absent: "no soak tried yet",
    minor: true,
    min: 0.000_1,
  }),
];

/** Given rows of a bed, in the order in which they are shown. */
export const BED_GIVENS: readonly Row[] = [...SIZE, ...GROUND, ...COVER, ...WORTH, ...WATERING];
