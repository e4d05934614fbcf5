// A bed: what grows in it, what it needs and when, how it is watered, and whether it will get it.

import type { Caution } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { demand } from "./demand.ts";
import { BED_GIVENS } from "./givens.ts";
import { drying, ground } from "./ground.ts";
import { compare, cropsSaid } from "./in-words.ts";
import { now } from "./now.ts";
import { BED_RESULTS } from "./results.ts";
import { bedSeason } from "./season.ts";
import { soak } from "./soak.ts";
import { BED_SPANS } from "./spans.ts";

const CAUTIONS: readonly Caution[] = [
  {
    id: "watered_by_nobody",
    where: { row: "watered_by", state: "none" },
    beside: "watered_by",
    weight: "trouble",
  },
  {
    id: "crowded",
    if: "most_share > 100.5 %",
    beside: "contents",
    weight: "trouble",
  },
  {
    id: "field_soil_in_pots",
    where: { row: "soil_in_pots", word: "field" },
    beside: "soil",
    weight: "trouble",
  },
  {
    id: "no_need",
    where: { row: "peak_day_need", state: "none" },
    beside: "contents",
    weight: "note",
  },
  {
    id: "roof_water_on_food",
    beside: "method",
    weight: "harm",
  },
  {
    id: "soak_in_goes",
    if: "soak_passes > 1",
    beside: "first_soak",
    weight: "note",
  },
  {
    id: "drip_by_gravity",
    where: { row: "method", word: "drip" },
    beside: "method",
    weight: "note",
  },
  {
    id: "soaker_by_gravity",
    where: { row: "method", word: "soaker" },
    beside: "method",
    weight: "note",
  },
];

export const bed: Kind = {
  kind: "bed",
  label: "Bed",
  purpose: "Where the water goes: soil, what grows in it, and who waters it.",
  group: "Beds",
  season: bedSeason,
  icon: { ink: "M3 14h18v6H3z", tone: "M7 14V8M12 14V6M17 14V8", color: "growth" },
  joins: { watered_by: "newest" },
  noted: ["gave", "soaked", "held", "planted", "pulled", "dug"],
  handSettings: ["length", "width", "cans_per_watering"],
  watered: {
    volume: "asked_volume",
    usual: "usual_volume",
    every: "asked_interval",
    by: "watered_by",
    days: "week_days",
  },
  offers: [
    {
      name: "mulch",
      says: "straw, leaves or compost on {}",
      row: "mulch",
      buys: { word: "organic", instead_of: "none" },
    },
  ],
  drawn: { as: "bed" },
  glance: [],
  views: { year: "through_year", seasons: "by_year", days: "calendar", week: "week" },
  spans: BED_SPANS,
  once: { met: "season_got" },
  rows: [...BED_GIVENS, ...BED_RESULTS],
  models: [ground, drying, cropsSaid, demand, now, compare, soak],
  cautions: CAUTIONS,
};
