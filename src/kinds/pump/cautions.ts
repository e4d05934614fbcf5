// What of a pump can hurt someone or mislead a grower.

import pumps from "../../../shared/pumps.json";
import type { Caution } from "../../graph/types.ts";
import { DEFINITION, PRACTICE } from "../rows.ts";

export const BOATUS = pumps.sources["BoatUS 14"];

export const PUMP_CAUTIONS: readonly Caution[] = [
  {
    id: "label_not_believed",
    where: { row: "believed_by", word: "label" },
    text: "Only {believed_share} of the label's flow is reckoned with until you test it: the label is without hose or lift, at {rated_voltage}.",
    beside: "open_flow",
    source: BOATUS,
    weight: "note",
  },
  {
    id: "bucket_beats_pump",
    if: "tested_share > 101 %",
    text: "The bucket shows more than the pump's figures allow: {tested_share} of their speed. The bucket is believed: the pump is better than its figures, or the hose wider or shorter.",
    beside: "tested_share",
    source: "curve of the pump against hose and lift",
    weight: "note",
  },
  {
    id: "bucket_doubtful",
    if: "tested_share < 50 % or tested_share > 150 %",
    text: "By the bucket it turns at {tested_share} of what its figures say: look at bucket, clock and volts again, and at the size above.",
    beside: "tested_share",
    source: PRACTICE,
    weight: "trouble",
  },
  {
    id: "buckets_disagree",
    if: "tests_apart > 1.1",
    text: "Its buckets at different hoses disagree by more than a tenth: their mean is taken. One hose is not as it is said to be.",
    beside: "tested_share",
    source: PRACTICE,
    weight: "note",
  },
  {
    id: "one_place",
    if: "places > 1",
    text: "It can stand in one tank at a time: its hours of the day are shared between {places} hoses.",
    beside: "places",
    source: DEFINITION,
    weight: "note",
  },
  {
    id: "too_many_volts",
    if: "supply_voltage > 1.1 * rated_voltage",
    text: "Its battery gives {supply_voltage}, more than a tenth over the {rated_voltage} it is made for: it draws far more, overheats and burns out. Take a battery of its own voltage, or a converter between.",
    beside: "supply_voltage",
    source: `ISO 8849:2021 in excerpts: pumps are tested up to their design voltage, 13.6 V for 12 V; a tenth over: ${PRACTICE}`,
    weight: "harm",
  },
  {
    id: "draws_over_label",
    if: "running_current > 1.25 * rated_current and supply_voltage <= 1.1 * rated_voltage",
    text: "It draws {running_current} where its label says {rated_current} wide open: it rubs or is clogged, or one of both figures is another pump's.",
    beside: "running_current",
    source: PRACTICE,
    weight: "trouble",
  },
  {
    id: "no_wire",
    if: "wire_resistance <= 0 ohm",
    text: "No wire's card feeds it: what the wire loses is left out, and no fuse is held against the rules. Add its wire.",
    beside: "powered_by",
    source: DEFINITION,
    weight: "trouble",
  },
  {
    id: "mains_kept_away",
    text: "Low voltage only in and near the water: 12 V, apart from every mains wire. A charger on the mains stays under a roof, dry, behind a ground-fault breaker, never beside a tank.",
    beside: "powered_by",
    source:
      "ISO 10133 §7.8 on keeping the two apart, read in an extract; local codes and a licensed electrician decide",
    weight: "harm",
  },
  {
    id: "dry_running",
    text: "Water is what cools it and keeps its seal: it must not run dry. Stop it, or let a float stop it, at {lowest_water}. Boat pumps must stand 7 h dry without a fire, not without wear.",
    beside: "lowest_water",
    source: "ISO 8849:2021 in excerpts and a caravan forum, read",
    weight: "note",
  },
];
