// The wire from a source to its pump, both ways, with the fuse that is fitted in it.

import gauges from "../../../shared/wire-gauges.json";
import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, choice, formula, given, hidden, link, output } from "../rows.ts";
import { typed } from "../tabled.ts";
import { WIRE_CAUTIONS } from "./cautions.ts";
import {
  FAULT_ROWS,
  FUSE_OPTIONS,
  GAUGE_OPTIONS,
  INSULATION_OPTIONS,
  POST_OPTIONS,
  WIRE_MODELS,
} from "./models.ts";
import { WIRE_SPANS } from "./spans.ts";

const flag = (name: string): Row => hidden(name, name.replaceAll("_", " "), "fusing", "count");

const ROWS: readonly Row[] = [
  link("feeds", "Feeds", "lifts_water", "feeds no pump"),
  choice("gauge", "Size", GAUGE_OPTIONS, "14 AWG"),
  given("one_way_length", "Length, one way", "length", [10, "ft"], { max: 1000 }),
  given("wire_temperature", "Gets as warm as", "temperature", typed(gauges.temperature), {
    min: 223.15,
    max: 473.15,
    minor: true,
  }),
  choice("insulation", "Its sheath", INSULATION_OPTIONS, "unknown", { minor: true }),
  given("fuse", "Fuse fitted", "current", null, { absent: "no fuse fitted", min: 0.1 }),
  choice("fuse_kind", "Kind of fuse", FUSE_OPTIONS, "blade", { minor: true }),
  given("fuse_from_battery", "Fuse sits from the battery", "depth", null, {
    absent: "not measured",
    minor: true,
  }),
  choice("post_fuse", "Fuse on the battery's post", POST_OPTIONS, "none", { minor: true }),
  choice("laid", "Both wires run", { pair: "together in one sheath", single: "each by itself" }, "pair", {
    minor: true,
  }),
  choice(
    "sheathed",
    "Wire up to the fuse",
    { no: "lies bare of any sleeve", yes: "in a sheath or conduit all the way" },
    "no",
    { minor: true },
  ),
  given("wanted_drop", "Drop you would bear", "share", typed(gauges.drop_advised), {
    min: 0.001,
    max: 0.5,
    minor: true,
  }),
  output("listed_resistance", "Resistance by the table, both ways", "copper", "resistance", { minor: true }),
  output("listed_at", "The table's copper is at", "copper", "temperature", { minor: true }),
  formula(
    "resistance",
    "Resistance, both ways",
    "resistance",
    "listed_resistance * (1 + 0.00393 * (wire_temperature - 20 degC) / 1 delta K) / (1 + 0.00393 * (listed_at - 20 degC) / 1 delta K)",
    { minor: true },
  ),
  formula("drop", "Voltage lost in it", "voltage", "resistance * feeds.running_current", {
    none: [
      {
        if: "resistance * feeds.running_current > feeds.supply_voltage",
        reason: "more than the battery has: no such current can flow in this wire",
      },
    ],
  }),
  formula("drop_share", "Lost, of the battery's voltage", "share", "drop / feeds.supply_voltage"),
  output("thinnest_gauge", "Thinnest that would do", "thinnest", "text", { minor: true }),
  output("ampacity", "May carry", "copper", "current"),
  hidden("counted_current", "Its fuse goes by", "fusing", "current"),
  output("counted_by", "That is", "fusing", "text", {
    hidden: true,
    options: [
      { word: "label", label: "by its label" },
      { word: "here", label: "as it runs here" },
    ],
  }),
  output("fuse_size", "Fuse to fit", "fusing", "current"),
  output("fuse_state", "Fuse as fitted", "fusing", "text", {
    options: [
      { word: "right", label: "right" },
      { word: "blows_early", label: "safe, but blows too early" },
      { word: "unsafe", label: "UNSAFE" },
      { word: "idle", label: "cannot blow: a panel alone" },
    ],
  }),
  formula(
    "stalled_current",
    "Current, rotor stuck",
    "current",
    "feeds.supply_voltage / (feeds.rated_voltage / feeds.stall_current + feeds.wire_resistance)",
    { minor: true },
  ),
  output("short_current", "A dead short of its battery", "breaking", "current", { minor: true }),
  output("breaks", "The fuse can break", "breaking", "current", { minor: true }),
  output("fuse_reach", "Fuse may sit from the post by", "breaking", "depth", { minor: true }),
  hidden("cannot_break", "Cannot break", "breaking", "count"),
  hidden("too_strong", "Too strong a short", "breaking", "count"),
  hidden("lead_too_strong", "A lead short", "breaking", "count"),
  hidden("too_thin_alone", "Too thin to run singly", "copper", "count"),
  hidden("on_battery", "Its pump runs on a battery", "fusing", "count"),
  ...FAULT_ROWS.map(flag),
  ...COSTS,
];

export const wire: Kind = {
  kind: "wire",
  label: "Wire and fuse",
  purpose: "The pair of wires from a battery to a pump, and the fuse in them.",
  group: "Power",
  icon: { ink: "M3 6h3c6 0 4 10 10 10h5M3 10c6 0 4 10 10 10h8", tone: "M14 4h6v4h-6z", color: "power" },
  joins: { feeds: "newest" },
  glance: ["drop_share", "fuse_state"],
  spans: WIRE_SPANS,
  rows: ROWS,
  models: WIRE_MODELS,
  cautions: WIRE_CAUTIONS,
};
