// What of a pump can hurt someone or mislead a grower.

import type { Caution } from "../../graph/types.ts";

export const PUMP_CAUTIONS: readonly Caution[] = [
  {
    id: "label_not_believed",
    where: { row: "believed_by", word: "label" },
    beside: "open_flow",
    weight: "note",
  },
  {
    id: "bucket_beats_pump",
    if: "tested_share > 101 %",
    beside: "tested_share",
    weight: "note",
  },
  {
    id: "bucket_doubtful",
    if: "tested_share < 50 % or tested_share > 150 %",
    beside: "tested_share",
    weight: "trouble",
  },
  {
    id: "buckets_disagree",
    if: "tests_apart > 1.1",
    beside: "tested_share",
    weight: "note",
  },
  {
    id: "one_place",
    if: "places > 1",
    beside: "places",
    weight: "note",
  },
  {
    id: "too_many_volts",
    if: "supply_voltage > 1.1 * rated_voltage",
    beside: "supply_voltage",
    weight: "harm",
  },
  {
    id: "draws_over_label",
    if: "running_current > 1.25 * rated_current and supply_voltage <= 1.1 * rated_voltage",
    beside: "running_current",
    weight: "trouble",
  },
  {
    id: "no_wire",
    if: "wire_resistance <= 0 ohm",
    beside: "powered_by",
    weight: "trouble",
  },
  {
    id: "mains_kept_away",
    beside: "powered_by",
    weight: "harm",
    kills: true,
  },
  {
    id: "dry_running",
    beside: "lowest_water",
    weight: "note",
  },
];
