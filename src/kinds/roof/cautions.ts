// What can hurt someone about a roof, or keep its water from the tank.

import type { Caution } from "../../graph/types.ts";
import { DEFINITION, PRACTICE } from "../rows.ts";

export const ROOF_CAUTIONS: readonly Caution[] = [
  {
    id: "roof_water_not_drinking",
    text: "Roof water is not drinking water. Keep it off leaves you eat raw, and keep roofs with lead, asbestos or treated timber off your tanks. Local health rules decide.",
    beside: "mean_yearly_catch",
    source: "UConn Extension; BRANZ Build 151 p. 30",
    weight: "harm",
  },
  {
    id: "gutter_heights",
    text: "Gutters are cleaned from a ladder: a firm footing and somebody to hold it. Tunnel film carries nobody. Take gutters off a tunnel before snow.",
    beside: "footprint",
    source: "UConn Extension on tunnel gutters; ladder advice is common practice, no source",
    weight: "harm",
  },
  {
    id: "drains_nowhere",
    where: { row: "drains_to", state: "none" },
    text: "This roof drains to no tank, so its rain helps nobody. Choose the tank it leads to.",
    beside: "drains_to",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "downspout_too_small",
    if: "storm_flow > downspout_capacity",
    text: "The downpour brings {storm_flow} and the downspouts carry {downspout_capacity}: the rest goes over the gutter and down the wall. A wider downspout, or one more.",
    beside: "downspout_capacity",
    source: "National Standard Plumbing Code 2006, Table 13.6.1",
    weight: "trouble",
  },
  {
    id: "connected_in_frost",
    if: "frost_days > 0",
    text: "In a usual year it freezes on {frost_days} days while this roof is connected. Before the first hard frost turn the downspout away from the tank, and drain the first-flush pipe, hoses, filters, float valves and the pump; leave the taps open. Full tanks split: leave room at the top.",
    beside: "frost_days",
    source: PRACTICE,
    weight: "note",
  },
  {
    id: "drained_for_winter",
    if: "frost_days_off > 0",
    text: "When you take it off for the winter, drain what its water runs through as well: the first-flush pipe, hoses, filters, float valves and the pump; leave the taps open. It freezes on {frost_days_off} days of a usual winter without it. Full tanks split: leave room at the top.",
    beside: "catch_until",
    source: PRACTICE,
    weight: "note",
  },
  {
    id: "asphalt_and_food",
    where: { row: "material", word: "shingle" },
    text: "Advice on asphalt and food differs: one university answer is against it, Rutgers measured metals under reuse limits. Water the soil, never the leaves.",
    beside: "material",
    source: "University of Washington library answer; Rutgers FS1218",
    weight: "note",
  },
];
