// The rules that a wire and its fuse are held against, and what they cost when broken.

import type { Caution } from "../../graph/types.ts";

const rule = (id: string, weight: Caution["weight"] = "harm"): Caution => ({
  id,
  if: `${id} > 0`,
  beside: "fuse",
  weight,
});

export const WIRE_CAUTIONS: readonly Caution[] = [
  {
    ...rule("no_fuse"),
    if: "no_fuse > 0 and on_battery > 0",
  },
  rule("panel_over_wire"),
  rule("over_carry"),
  {
    id: "too_thin_alone",
    if: "too_thin_alone > 0",
    where: { row: "laid", word: "single" },
    beside: "gauge",
    weight: "harm",
    kills: true,
  },
  rule("over_maker"),
  rule("over_ampacity"),
  rule("over_regulation"),
  rule("stall_does_not_blow"),
  rule("under_running_current", "trouble"),
  rule("little_margin", "trouble"),
  rule("cannot_break"),
  rule("lead_too_strong", "trouble"),
  {
    id: "fuse_too_far",
    if: "fuse_from_battery > fuse_reach and on_battery > 0",
    beside: "fuse",
    weight: "harm",
    kills: true,
  },
  {
    id: "drop_too_big",
    if: "drop_share > 10 %",
    beside: "drop_share",
    weight: "trouble",
  },
  {
    id: "drop_over_wanted",
    if: "drop_share > wanted_drop and drop_share <= 10 %",
    beside: "drop_share",
    weight: "note",
  },
  {
    id: "insulation_unknown",
    where: { row: "insulation", word: "unknown" },
    beside: "ampacity",
    weight: "note",
  },
  {
    id: "fuse_at_battery",
    if: "on_battery > 0",
    beside: "fuse_size",
    weight: "harm",
    kills: true,
  },
];
