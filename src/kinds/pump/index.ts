// A pump: what its label or data sheet says of it, what of that is believed, and what it runs on.

import pumps from "../../../shared/pumps.json";
import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { limitsOf } from "../limits.ts";
import { COSTS, choice, gather, given, hidden, hiddenFrom, link, output } from "../rows.ts";
import { column, options, typed } from "../tabled.ts";
import { PUMP_CAUTIONS } from "./cautions.ts";
import { PUMP_MODELS, WORDS } from "./models.ts";
import { pumpSeason } from "./season.ts";
import { PUMP_SPANS } from "./spans.ts";

const SIZES = pumps.pumps;

const LABEL: readonly Row[] = [
  choice("size", "About the size of", options(SIZES), "gph_500"),
  given(
    "open_flow",
    "Open flow",
    "flow",
    { by: "size", pick: column(SIZES, (size) => size.open_flow) },
    { min: 1e-7 },
  ),
  given(
    "shutoff_head",
    "Lifts at most",
    "head",
    { by: "size", pick: column(SIZES, (size) => size.shutoff_head) },
    { min: 0.01 },
  ),
  choice("figures", "These figures are from", { label: "its label", tested: "your own test" }, "label"),
  given(
    "believed_share",
    "Share of its flow believed",
    "share",
    { by: "figures", pick: { label: typed(pumps.believed_share), tested: [1, "1"] } },
    { min: 0.05, max: 1, minor: true },
  ),
  given("rated_voltage", "Stated at", "voltage", typed(pumps.rated_voltage), {
    min: 1,
    max: 60,
    minor: true,
  }),
  {
    row: "list",
    of: "points",
    name: "curve",
    label: "Data sheet",
    measures: ["flow", "head"],
    limits: [limitsOf("flow"), limitsOf("head")],
    default: null,
    minor: true,
    absent: "no data sheet",
  },
  given(
    "rated_current",
    "Draws, wide open",
    "current",
    { by: "size", pick: column(SIZES, (size) => size.rated_current) },
    { min: 0.01 },
  ),
  given(
    "no_flow_current",
    "Draws, outlet shut",
    "current",
    { formula: `rated_current * ${pumps.no_flow_share.value}` },
    { min: 0.001, minor: true },
  ),
  given("no_load_current", "Turns at all from", "current", typed(pumps.no_load_current), {
    max: 20,
    minor: true,
  }),
  given(
    "stall_current",
    "Draws, rotor stuck",
    "current",
    { formula: `rated_current * ${pumps.stall_multiple.value}` },
    { min: 0.01, minor: true },
  ),
  given("maker_fuse", "Fuse its maker wants", "current", null, { absent: "its maker names none", min: 0.1 }),
  given("lowest_water", "Leaves behind", "depth", typed(pumps.lowest_water)),
  link("powered_by", "Runs on", "gives_power", "runs on nothing yet"),
];

const series = (name: string, label: string, of: string): Row => hidden(name, label, of, "series");

const fromDeliveries = hiddenFrom("delivery", "pump");

const RESULTS: readonly Row[] = [
  series("curve_figured", "Its curve by its figures", "believing"),
  series("curve_in_use", "Its curve as reckoned with", "believing"),
  fromDeliveries("tests", "Buckets timed at its hoses", "series", "bucket_test", "list"),
  output("tested_share", "Turns, by your bucket, at", "believing", "share", { quiet: true }),
  hidden("tests_apart", "Its buckets apart", "believing", "factor"),
  output("believed_by", "Goes by", "believing", "text", {
    minor: true,
    options: Object.entries(WORDS).map(([word, label]) => ({ word, label })),
  }),
  output("open_in_use", "Reckoned with, open flow", "believing", "flow", { minor: true }),
  output("shutoff_in_use", "Reckoned with, greatest lift", "believing", "head", { minor: true }),
  output("supply_voltage", "Its source gives", "source", "voltage", { minor: true }),
  series("panel", "Its panel", "lighting"),
  hidden("dark", "Its panel gives no light", "lighting", "text"),
  hidden("panel_short", "Its panel, shorted", "source", "current"),
  hidden("source_short", "Its battery, shorted", "source", "current"),
  hidden("source_kind", "Kind of its battery", "source", "text"),
  gather(
    "wire_resistance",
    "Its wire, both ways",
    "resistance",
    { kind: "wire", by: "feeds", take: "resistance", how: "sum" },
    { minor: true },
  ),
  output("head_at_no_flow", "Lifts at most, as fed", "ends", "head"),
  output("flow_at_no_head", "Gives without hose, as fed", "ends", "flow", {
    relations: ["open_in_use * supply_voltage / rated_voltage"],
  }),
  gather(
    "places",
    "Places it works at",
    "count",
    { kind: "delivery", by: "pump", take: "has_pump", how: "sum" },
    { minor: true },
  ),
  gather("running_current", "Draws at work", "current", {
    kind: "delivery",
    by: "pump",
    take: "current",
    how: "max",
  }),
  fromDeliveries("running_power", "Takes from its battery", "power", "drawn_power", "max"),
  fromDeliveries("round_energy", "One watering takes", "energy", "round_energy", "sum"),
  fromDeliveries("peak_energy", "A peak day takes", "energy", "peak_energy", "sum"),
  fromDeliveries("liftings", "Hoses it is put to", "series", "lifting", "list"),
  ...COSTS,
];

export const pump: Kind = {
  kind: "pump",
  label: "Pump",
  purpose: "A small submersible pump: what it can do, and what it runs on.",
  group: "Power",
  season: pumpSeason,
  icon: { ink: "M6 20V10h10v10zM4 20h14M9 10V4h9", tone: "M11 13v4M9 15h4", color: "power" },
  noted: ["cleaned", "drained"],
  uses: ["lifts_water"],
  joins: { powered_by: "newest" },
  handSettings: ["lowest_water", "powered_by"],
  glance: ["flow_at_no_head", "running_current"],
  spans: PUMP_SPANS,
  mends: ["pump_time"],
  offers: [
    {
      name: "bigger",
      says: "the next size of pump for {}",
      row: "size",
      buys: "next_word",
      forgets: ["open_flow", "shutoff_head", "rated_current", "no_flow_current", "stall_current", "curve"],
    },
  ],
  rows: [...LABEL, ...RESULTS],
  models: PUMP_MODELS,
  cautions: PUMP_CAUTIONS,
};
