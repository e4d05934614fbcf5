// A bed: what grows in it, what it needs and when, how it is watered, and whether it will get it.

import type { Caution } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { DEFINITION, PRACTICE } from "../rows.ts";
import { demand } from "./demand.ts";
import { BED_GIVENS } from "./givens.ts";
import { drying, ground } from "./ground.ts";
import { compare, cropsSaid } from "./in-words.ts";
import { laidBeds } from "./laid.ts";
import { now } from "./now.ts";
import { BED_RESULTS } from "./results.ts";
import { soak } from "./soak.ts";
import { BED_SPANS } from "./spans.ts";

const CAUTIONS: readonly Caution[] = [
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
  {
    id: "soak_in_goes",
    if: "soak_passes > 1",
    text: "Soak a dry bed in {soak_passes} goes of {soak_pass_volume}, {soak_wait} apart: more at once runs off. Then dig and look how deep it went.",
    beside: "first_soak",
    source: `${PRACTICE}; intake after USDA, read second-hand`,
    weight: "note",
  },
  {
    id: "drip_by_gravity",
    where: { row: "method", word: "drip" },
    text: "Drip lines are made for 8 psi and more. From a raised tank they give a third to a half of that, and clog sooner: run one into a bucket and time it.",
    beside: "method",
    source: "square-root law of a turbulent emitter, from memory; Texas Tech thesis on drip at low pressure",
    weight: "note",
  },
  {
    id: "soaker_by_gravity",
    where: { row: "method", word: "soaker" },
    text: "What a soaker hose gives from a raised tank differs from hose to hose. Measure yours with a bucket.",
    beside: "method",
    source: PRACTICE,
    weight: "note",
  },
];

export const bed: Kind = {
  kind: "bed",
  label: "Bed",
  purpose: "Where the water goes: soil, what grows in it, and who waters it.",
  group: "Beds",
  icon: { ink: "M3 14h18v6H3z", tone: "M7 14V8M12 14V6M17 14V8", color: "growth" },
  joins: { watered_by: "newest" },
  firstNumbers: [{ row: "length" }, { row: "width" }],
  handSettings: ["cans_per_watering"],
  watered: { volume: "watering_volume", every: "watering_interval", by: "watered_by", days: "week_days" },
  laid: laidBeds,
  drawn: { as: "bed" },
  glance: [],
  views: { year: "through_year", seasons: "by_year", days: "calendar", week: "week" },
  spans: BED_SPANS,
  rows: [...BED_GIVENS, ...BED_RESULTS],
  models: [ground, drying, cropsSaid, demand, now, compare, soak],
  cautions: CAUTIONS,
};
