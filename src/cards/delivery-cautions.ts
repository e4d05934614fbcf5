// What can go wrong between a pump and the end of its hose.

import type { Caution } from "../graph/types.ts";

export const DELIVERY_CAUTIONS: readonly Caution[] = [
  {
    id: "siphons_empty",
    if: "siphons_down_to <= dead_depth",
    text: "The hose ends under the tank's floor: when the pump stops, it runs on as a siphon until the tank is empty. Hang its end above the tank's brim, or drill a small hole in the hose just above the water.",
    beside: "outlet_height",
    source: "hydrostatics; cure: common practice, no source",
    weight: "trouble",
  },
  {
    id: "end_below_tank",
    if: "siphons_down_to > dead_depth",
    text: "The hose ends under the tank's brim: when the pump stops, it runs on as a siphon down to a depth of {siphons_down_to}. Hang its end above the brim, or drill a small hole in the hose just above the water.",
    beside: "outlet_height",
    source: "hydrostatics; cure: common practice, no source",
    weight: "trouble",
  },
  {
    id: "fuse_at_battery",
    text: "A fuse at the battery, within a hand's width of its post, no bigger than the pump's maker and the thinnest wire allow. A bare battery lead can start a fire.",
    beside: "powered_by",
    source: "33 CFR 183.455 and common practice; licensed practice decides",
    weight: "harm",
  },
  {
    id: "runs_dry",
    text: "Do not leave it running dry: the water is what cools it.",
    beside: "lowest_water",
    source: "trade discussion; common practice",
    weight: "note",
  },
  {
    id: "lift_above_shutoff",
    if: "spare_head <= 0 ft",
    text: "The hose ends higher over the water than this pump lifts: nothing comes. Lower its end, or find a pump that lifts more.",
    beside: "flow",
    source: "curve of the pump at no flow",
    weight: "trouble",
  },
  {
    id: "far_under_label",
    if: "share_of_label < 60 %",
    text: "Only {share_of_label} of the label: the label is without hose or lift. {hose_length} of {hose_bore} hose takes most of it; a wider hose gains more than a bigger pump.",
    beside: "share_of_label",
    source: "BoatUS Foundation Findings 14 for labels; Darcy-Weisbach with Churchill for the hose",
    weight: "note",
  },
  {
    id: "bucket_beats_pump",
    if: "bucket_over > 0.01",
    text: "The bucket shows more than the pump's figures allow. The bucket is believed: the pump is better than its figures, or the hose wider or shorter.",
    beside: "flow",
    source: "curve of the pump against hose and lift",
    weight: "note",
  },
  {
    id: "tank_gives_out",
    where: { row: "watering_end", word: "dry" },
    text: "A full tank is empty before the largest watering is done: stand by, and stop the pump before it runs dry.",
    beside: "watering_time",
    source: "continuity of the tank",
    weight: "trouble",
  },
  {
    id: "falls_too_low",
    where: { row: "watering_end", word: "too_low" },
    text: "As the tank empties the lift grows beyond this pump before the watering is done.",
    beside: "watering_time",
    source: "curve of the pump at no flow",
    weight: "trouble",
  },
];
