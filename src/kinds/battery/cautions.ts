// What of a battery can hurt someone, or leave the beds dry.

import type { Caution } from "../../graph/types.ts";

export const BATTERY_CAUTIONS: readonly Caution[] = [
  {
    id: "lead_gas",
    where: { row: "chemistry", word: "flooded" },
    beside: "chemistry",
    weight: "harm",
    kills: true,
  },
  {
    id: "sealed_gas",
    where: { row: "chemistry", word: "agm" },
    beside: "chemistry",
    weight: "harm",
    kills: true,
  },
  {
    id: "ups_gas",
    where: { row: "chemistry", word: "ups" },
    beside: "chemistry",
    weight: "harm",
    kills: true,
  },
  {
    id: "lithium_cold",
    where: { row: "chemistry", word: "lifepo4" },
    beside: "chemistry",
    weight: "harm",
    kills: true,
  },
  {
    id: "bare_cells",
    where: { row: "chemistry", word: "lifepo4" },
    beside: "health",
    weight: "harm",
    kills: true,
  },
  {
    id: "battery_short",
    beside: "usable_energy",
    weight: "harm",
    kills: true,
  },
  {
    id: "cold_charge",
    if: "frost_months > 0",
    beside: "charged",
    weight: "harm",
    kills: true,
  },
  {
    id: "flat_before_one_watering",
    if: "round_energy > usable_energy",
    beside: "waterings_per_charge",
    weight: "trouble",
  },
  {
    id: "nothing_charges",
    if: "uncharged > 0",
    beside: "charged",
    weight: "trouble",
  },
  {
    id: "charged_too_fast",
    if: "charging_current > most_charging_current",
    beside: "charging_current",
    weight: "harm",
    kills: true,
  },
  {
    id: "health_doubtful",
    if: "health_in_use > 115 %",
    beside: "health_in_use",
    weight: "note",
  },
  {
    id: "not_a_week",
    if: "uncharged > 0 and days_without_sun < 7 day",
    beside: "days_without_sun",
    weight: "trouble",
  },
  {
    id: "worn_out",
    if: "health_in_use < 80 %",
    beside: "health_in_use",
    weight: "note",
  },
  {
    id: "house_charger",
    where: { row: "charged", word: "mains" },
    beside: "charged",
    weight: "harm",
    kills: true,
  },
];
