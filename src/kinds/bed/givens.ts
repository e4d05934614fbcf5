// What a gardener says of a bed: its ground, what grows there, cover, mulch, who waters it and when.

import soils from "../../../shared/soils.json";
import methods from "../../../shared/water-methods.json";
import type { Row, Typed } from "../../graph/types.ts";
import { choice, date, given, links, PRACTICE, text } from "../rows.ts";
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
  given("length", "Length", "length", [20, "ft"], "Of the part that is planted.", {
    min: 0.05,
    max: 5000,
    ...IN_GROUND,
  }),
  given("width", "Width", "length", [4, "ft"], "Of the part that is planted.", {
    min: 0.05,
    max: 5000,
    ...IN_GROUND,
  }),
  {
    row: "list",
    of: "contents",
    name: "contents",
    label: "What grows there",
    crops: CROP_OPTIONS,
    default: [{ crop: "tomato", planted: "05-15", share: 1 }],
    help: "Each crop, the day it is planted out, and its share of the bed. Where your garden is slower or faster than the tables, give the day of the last picking too.",
    source: "your own entry",
  },
  choice("grown_in", "Grown in", { ground: "the ground", pots: "pots or trays" }, "ground", "", {
    minor: true,
    help: "Pots have little soil and dry in a day or two.",
  }),
  given("pot_count", "Pots", "count", [10, "1"], "All of one size.", { min: 1, max: 100_000, ...IN_POTS }),
  given("pot_volume", "Soil in each", "volume", [5, "gal"], "A tray of plugs counts as one pot.", {
    min: 0.000_01,
    max: 10,
    ...IN_POTS,
  }),
  given(
    "pot_spread",
    "Ground its leaves shade",
    "area",
    [2, "ft2"],
    "Looked at from above, when grown. Rain is not counted: leaves shed most of it past the pot.",
    { min: 0.001, max: 100, ...IN_POTS },
  ),
];

const GROUND: readonly Row[] = [
  choice(
    "soil",
    "Soil",
    labelled(soils.soils),
    "loam",
    "Rub it wet between your fingers: gritty, silky or sticky.",
  ),
  given(
    "root_depth",
    "Roots go down to",
    "depth",
    [12, "in"],
    "Tunnel beds that are watered often root no deeper than a foot.",
    {
      min: 0.05,
      max: 3,
      source: "Univ. of Delaware Weekly Crop Update: 10 to 12 in for most",
      ...IN_GROUND,
    },
  ),
  given(
    "plant_count",
    "Plants watered one by one",
    "count",
    null,
    "Only where single plants are watered, not the whole bed.",
    { absent: "the whole bed is watered", minor: true, ...IN_GROUND },
  ),
  given("spot_area", "Wet spot of each", "area", null, "The wetted ground under one plant.", {
    absent: "the whole bed is watered",
    minor: true,
    when: { row: "plant_count" },
  }),
  given(
    "wetted_share",
    "Share of the bed that is watered",
    "share",
    [100, "%"],
    "Strips or spots: the share of the ground that is wetted and rooted.",
    { min: 0.01, max: 1, minor: true, ...IN_GROUND },
  ),
  choice(
    "mingled",
    "Crops grow into each other",
    YES_NO,
    "no",
    "Tall and low ones mixed on the same ground: then the tall ones count for more.",
    { minor: true, source: "FAO Irrigation and Drainage Paper 56, example 46" },
  ),
  given(
    "young_days",
    "Days of daily water after planting",
    "count",
    [0, "1"],
    "Fresh transplants have hardly any roots: a week of a little every day is usual.",
    { max: 60, minor: true, source: PRACTICE },
  ),
];

const COVER: readonly Row[] = [
  choice(
    "cover",
    "Under",
    { open: "open sky", covered: "a tunnel or roof" },
    "open",
    "Under cover no rain counts.",
  ),
  choice(
    "cover_by",
    "Drying there by",
    { factor: "a factor", light: "the light the cover lets through" },
    "factor",
    "A factor if you have one measured; else the light is the better guess.",
    COVERED,
  ),
  given(
    "cover_factor",
    "Drying there, to open sky",
    "factor",
    { by: "cover", pick: { open: [1, "1"], covered: [0.75, "1"] } },
    "A tunnel dries its beds about three quarters as fast as open ground. An open bed alone in dry ground dries 1.1 to 1.3 times as fast.",
    {
      max: 1.5,
      minor: true,
      source: "our default from published 0.60 to 0.90; 64 % by pans, Amiri et al. 2018",
    },
  ),
  given("cover_light", "Light the cover lets through", "share", [70, "%"], "New film more, old film less.", {
    min: 0.2,
    max: 1,
    source: "69 % measured in a plastic solar greenhouse, Water 2022 14(15) 2410",
    ...BY_LIGHT,
  }),
  choice(
    "cover_sides",
    "Its sides are",
    { closed: "closed", sides_up: "up" },
    "sides_up",
    "Sides up let some wind in.",
    BY_LIGHT,
  ),
  choice("mulch", "Mulch", MULCH_LABELS, "none", "Straw, leaves or film over the soil."),
  choice(
    "ground_wetting",
    "Bare ground is wetted",
    { tables: "as the tables have it", given: "as often as I say" },
    "tables",
    "Ground between young plants that is wetted often dries much faster. Film keeps it dry: then this changes nothing.",
    { minor: true, source: "FAO Irrigation and Drainage Paper 56, Table 12 and Annex 7" },
  ),
  given("wetted_every", "Once every", "span", [2, "day"], "Rain and watering together.", {
    min: 86_400,
    max: 2_592_000,
    ...WETTED,
  }),
  given("wetted_depth", "Each time with", "depth", [0.4, "in"], "Depth over the ground that is wetted.", {
    min: 0.001,
    max: 0.1,
    ...WETTED,
  }),
  choice(
    "air_corrects",
    "Dry, windy air drives the crop",
    YES_NO,
    "no",
    "Corrects the tables by the wind and damp of your record, where it has them. Never under cover.",
    { minor: true, source: "FAO Irrigation and Drainage Paper 56, Eq. 62" },
  ),
];

const CALENDAR = { when: { row: "rule", is: ["weekdays"] } } as const;
const SET_AMOUNT = { when: { row: "rule", is: ["fixed", "weekdays"] } } as const;

const WATERING: readonly Row[] = [
  choice("method", "Watered with", labelled(methods.methods), "wand", "How the water gets onto the soil."),
  given(
    "efficiency",
    "Reaches the roots",
    "share",
    { by: "method", pick: EFFICIENCIES },
    "The rest runs off, blows away or sinks too deep.",
    {
      min: 0.1,
      max: 1,
      minor: true,
      source: "FAO Irrigation Training Manual 4, read second-hand; assumed for hand watering",
    },
  ),
  {
    ...links(
      "watered_by",
      "Watered by",
      "waters_beds",
      "watered by nobody",
      "First what is tried first; the next gives what the one before could not.",
    ),
    swaps: [
      { from: "delivery", to: "carry", keep: "from", ask: "Swap the pump for cans" },
      { from: "carry", to: "delivery", keep: "from", ask: "Swap the cans for a pump" },
    ],
  },
  given("priority", "Comes at place", "count", [5, "1"], "1 is watered first when water is short.", {
    min: 1,
    max: 100,
  }),
  choice(
    "rule",
    "Watered when",
    {
      soil: "the soil asks for it",
      fixed: "so much every so many days",
      weekdays: "on set days of the week",
    },
    "soil",
    "By the soil is thrifty; by the calendar is simple.",
  ),
  text("weekdays", "On", "tue fri", "Days of the week on which you can be there.", {
    of: "weekdays",
    ...CALENDAR,
  }),
  choice("weekday_amount", "Each time", { lack: "what the soil lacks", fixed: "a set amount" }, "lack", "", {
    ...CALENDAR,
    help: "What the soil lacks by then, or the same amount every time.",
  }),
  given("fixed_volume", "So much", "volume", [20, "gal"], "Each time, when a set amount is given.", {
    ...SET_AMOUNT,
  }),
  given("fixed_every", "Every so many days", "span", [3, "day"], "When watered by the calendar.", {
    min: 86_400,
    when: { row: "rule", is: ["fixed"] },
  }),
  choice(
    "decides_on",
    "You decide by",
    { evening: "last evening's soil", morning: "this morning's soil, with the night's rain in it" },
    "evening",
    "Looking again in the morning saves a watering when rain came in the night.",
    { minor: true },
  ),
  date(
    "let_go_from",
    "Let go from, in a dry spell",
    "month_day",
    null,
    "From that day of the season the bed gets no more water once a dry spell is as long as you say below.",
    "never let go",
  ),
  given("let_go_dry_days", "After so many dry days", "count", [14, "1"], "Days on end under 1 mm.", {
    min: 1,
    max: 366,
    minor: true,
    when: { row: "let_go_from" },
  }),
  date("last_soaked", "Last soaked through", "day", null, "For what it needs today.", "not said"),
  given("can_volume", "Your can holds", "volume", [2, "gal"], "To say a watering in cans.", {
    minor: true,
    min: 0.000_1,
  }),
  given(
    "usual_volume",
    "Usually given at once",
    "volume",
    [20, "gal"],
    "Put in what you give, to set it beside what is worked out. 20 gallons is often said for a small tunnel: common practice, no source.",
    { minor: true, min: 0.000_1, source: `${PRACTICE}, for a small tunnel` },
  ),
  given("soak_tried", "You soaked it dry with", "volume", null, "To say how deep that should have gone.", {
    absent: "no soak tried yet",
    minor: true,
    min: 0.000_1,
  }),
];

/** Given rows of a bed, in the order in which they are shown. */
export const BED_GIVENS: readonly Row[] = [...SIZE, ...GROUND, ...COVER, ...WATERING];
