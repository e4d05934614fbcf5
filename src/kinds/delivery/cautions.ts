// What can go wrong between a pump and the end of its hose.

import type { Caution } from "../../graph/types.ts";

export const DELIVERY_CAUTIONS: readonly Caution[] = [
  {
    id: "waits_for_refill",
    if: "tankfuls_per_watering > 1 and refill_wait > 0 s",
    beside: "watering_time",
    weight: "trouble",
  },
  {
    id: "more_than_the_tank",
    if: "tankfuls_per_watering > 1",
    where: { row: "refill_wait", state: "none" },
    beside: "watering_time",
    weight: "trouble",
  },
  {
    id: "siphons_empty",
    if: "siphons_down_to <= dead_depth",
    beside: "outlet_height",
    weight: "trouble",
  },
  {
    id: "end_below_tank",
    if: "siphons_down_to > dead_depth",
    beside: "outlet_height",
    weight: "trouble",
  },
  {
    id: "fuse_at_battery",
    if: "has_pump < 1",
    beside: "powered_by",
    weight: "harm",
    kills: true,
  },
  {
    id: "runs_dry",
    if: "has_pump < 1",
    beside: "lowest_water",
    weight: "note",
  },
  {
    id: "lift_above_shutoff",
    if: "spare_head <= 0 ft",
    beside: "flow",
    weight: "trouble",
  },
  {
    id: "far_under_label",
    if: "share_of_label < 60 % and lift >= 0 ft",
    beside: "share_of_label",
    weight: "note",
  },
  {
    id: "far_under_label_downhill",
    if: "share_of_label < 60 % and lift < 0 ft",
    beside: "share_of_label",
    weight: "note",
  },
  {
    id: "hose_before_pump",
    if: "hose_wins > 0",
    beside: "share_of_label",
    weight: "note",
  },
  {
    id: "too_good",
    if: "efficiency > 25 % and has_test < 1",
    beside: "efficiency",
    weight: "note",
  },
  {
    id: "too_good_as_timed",
    if: "efficiency > 25 % and has_test > 0",
    beside: "efficiency",
    weight: "note",
  },
  {
    id: "over_all_power",
    if: "lifting_power > power",
    beside: "efficiency",
    weight: "trouble",
  },
  {
    id: "strainer_clogs",
    beside: "filters_k",
    weight: "note",
  },
  {
    id: "laid_to_pump",
    where: { row: "blames", word: "pump_by_one" },
    beside: "flow",
    weight: "note",
  },
  {
    id: "laid_to_wand",
    where: { row: "blames", word: "wand_by_one" },
    beside: "flow",
    weight: "note",
  },
  {
    id: "tank_gives_out",
    where: { row: "watering_end", word: "dry" },
    beside: "watering_time",
    weight: "trouble",
  },
  {
    id: "falls_too_low",
    where: { row: "watering_end", word: "too_low" },
    beside: "watering_time",
    weight: "trouble",
  },
];
