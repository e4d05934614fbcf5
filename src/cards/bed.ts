// A bed: what grows in it, what it needs and when, how it is watered, and whether it will get it.

import soils from "../../shared/soils.json";
import methods from "../../shared/water-methods.json";
import type { CardKind, Typed } from "../graph/types.ts";
import { demand, wetting } from "./bed-demand.ts";
import { CROP_OPTIONS, labelled, MULCH_LABELS } from "./crops.ts";
import { choice, DEFINITION, date, formula, given, links, output } from "./rows.ts";

const EFFICIENCIES: Readonly<Record<string, Typed>> = Object.fromEntries(
  Object.entries(methods.methods).map(([word, method]) => [
    word,
    [method.efficiency.value * 100, "%"] as const,
  ]),
);

const FAO = "FAO Irrigation and Drainage Paper 56";

export const bed: CardKind = {
  kind: "bed",
  label: "Bed",
  purpose: "Where the water goes: soil, what grows in it, and who waters it.",
  glance: ["peak_day_need", "share_met"],
  rows: [
    given("length", "Length", "length", [20, "ft"], "Of the part that is planted.", { min: 0.05, max: 5000 }),
    given("width", "Width", "length", [4, "ft"], "Of the part that is planted.", { min: 0.05, max: 5000 }),
    {
      row: "list",
      of: "contents",
      name: "contents",
      label: "What grows there",
      crops: CROP_OPTIONS,
      default: [{ crop: "tomato", planted: "05-15", share: 1 }],
      help: "Each crop, the day it is planted out, and its share of the bed.",
      source: "your own entry",
    },
    given(
      "plant_count",
      "Plants watered one by one",
      "count",
      null,
      "Only where single plants are watered, not the whole bed.",
      { absent: "the whole bed is watered", minor: true },
    ),
    given("spot_area", "Wet spot of each", "area", null, "The wetted ground under one plant.", {
      absent: "the whole bed is watered",
      minor: true,
    }),
    given(
      "wetted_share",
      "Share of the bed that is watered",
      "share",
      [100, "%"],
      "Strips or spots: the share of the ground that is wetted and rooted.",
      { min: 0.01, max: 1, minor: true },
    ),
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
      { min: 0.05, max: 3, source: "Univ. of Delaware Weekly Crop Update: 10 to 12 in for most" },
    ),
    choice(
      "cover",
      "Under",
      { open: "open sky", covered: "a tunnel or roof" },
      "open",
      "Under cover no rain counts.",
    ),
    given(
      "cover_factor",
      "Drying there, to open sky",
      "factor",
      { by: "cover", pick: { open: [1, "1"], covered: [0.75, "1"] } },
      "A tunnel dries its beds about three quarters as fast as open ground.",
      {
        max: 1.5,
        minor: true,
        source: "our default from published 0.60 to 0.90; 64 % by pans, Amiri et al. 2018",
      },
    ),
    choice("mulch", "Mulch", MULCH_LABELS, "none", "Straw, leaves or film over the soil."),
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
    links(
      "watered_by",
      "Watered by",
      ["delivery", "carry"],
      "watered by nobody",
      "First what is tried first; the next gives what the one before could not.",
    ),
    given("priority", "Comes at place", "count", [5, "1"], "1 is watered first when water is short.", {
      min: 1,
      max: 100,
    }),
    choice(
      "rule",
      "Watered when",
      { soil: "the soil asks for it", fixed: "so much every so many days" },
      "soil",
      "By the soil is thrifty; by the calendar is simple.",
    ),
    given("fixed_volume", "So much", "volume", [20, "gal"], "Each time, when watered by the calendar.", {
      minor: true,
    }),
    given("fixed_every", "Every so many days", "span", [3, "day"], "When watered by the calendar.", {
      min: 86_400,
      minor: true,
    }),
    date("last_soaked", "Last soaked through", "day", null, "For what it needs today.", "not said"),
    given("can_volume", "Your can holds", "volume", [2, "gal"], "To say a watering in cans.", {
      minor: true,
      min: 0.000_1,
    }),
    formula("area", "Ground", "area", "length * width", "Length times width.", DEFINITION),
    output(
      "watered_share",
      "Share watered",
      "wetting",
      "share",
      "Spots times plants over the bed, or the share given.",
      DEFINITION,
      { hidden: true },
    ),
    output(
      "peak_day_need",
      "Needs on a peak day",
      "demand",
      "volume",
      "Crop use less the rain that counts, over what reaches the roots: of each season the highest ten-day mean, of those the one that nine seasons in ten stay under.",
      `${FAO}; the quantile is our definition`,
    ),
    output(
      "season_need",
      "Needs in a usual season",
      "demand",
      "volume",
      "Crop use over the season less the rain that counted, over what reaches the roots; the mean of the record's seasons.",
      FAO,
    ),
    output(
      "watering_volume",
      "A good watering",
      "demand",
      "volume",
      "What fills the roots' soil again when the easy half is gone, over what reaches the roots.",
      `${FAO}, chapter 8: readily available water`,
    ),
    output(
      "watering_interval",
      "Then lasts, at the peak",
      "demand",
      "span",
      "A good watering over a peak day's need.",
      FAO,
    ),
    formula(
      "cans_per_watering",
      "A watering in cans",
      "count",
      "ceil(watering_volume / can_volume)",
      "A good watering over your can.",
      DEFINITION,
    ),
    output(
      "potential_use",
      "Would use with water enough",
      "demand",
      "volume",
      "What the crops use in a season when they are never short.",
      FAO,
      { minor: true },
    ),
    output(
      "met",
      "Gets in a season",
      "season.run",
      "volume",
      "What it was given in a usual season.",
      "your record, day by day",
    ),
    output(
      "share_met",
      "Share of its thirst met",
      "season.run",
      "share",
      "What the crops used over what they would have used, all seasons together.",
      `your record, day by day; ${FAO}, Eq. 84`,
    ),
    output(
      "days_short",
      "Days short, a season",
      "season.run",
      "count",
      "Days on which the soil was so dry that the crop held back.",
      `your record, day by day; ${FAO}, Eq. 84`,
    ),
  ],
  models: [wetting, demand],
  cautions: [
    {
      id: "watered_by_nobody",
      where: { row: "watered_by", state: "none" },
      text: "Nothing waters this bed. Choose a pump or cans.",
      beside: "watered_by",
      source: DEFINITION,
      weight: "trouble",
    },
    {
      id: "no_need",
      where: { row: "peak_day_need", state: "none" },
      text: "This bed asks for no water: nothing grows in it between the first and the last day of the season. Check the days of planting, or the season.",
      beside: "contents",
      source: DEFINITION,
      weight: "note",
    },
    {
      id: "roof_water_on_food",
      text: "Roof water goes on the soil, not on the leaves, and in the morning or well before picking. Wash what you eat raw.",
      beside: "method",
      source: "Illinois Extension and Rutgers FS1218 on rain barrels and vegetables",
      weight: "harm",
    },
  ],
};
