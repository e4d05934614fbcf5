// A pump: what its label or data sheet says of it, what of that is believed, and what it runs on.

import pumps from "../../../shared/pumps.json";
import type { Row } from "../../graph/types.ts";
import type { Kind } from "../kind.ts";
import { COSTS, choice, DEFINITION, gather, given, link, MEMORY, output, PRACTICE } from "../rows.ts";
import { column, options, typed } from "../tabled.ts";
import { BOATUS, PUMP_CAUTIONS } from "./cautions.ts";
import { laidPumps } from "./laid.ts";
import { PUMP_MODELS, WORDS } from "./models.ts";
import { PUMP_SPANS } from "./spans.ts";

const SIZES = pumps.pumps;
const AFFINITY = "affinity laws (from memory), solved for the speed at which its curve meets hose and lift";
const FIT = "H = H0 - a Q², from its ratings or by least squares over its points";

const LABEL: readonly Row[] = [
  choice("size", "About the size of", options(SIZES), "gph_500", "Fills in what its label does not say."),
  given(
    "open_flow",
    "Open flow",
    "flow",
    { by: "size", pick: column(SIZES, (size) => size.open_flow) },
    "Without any hose, as its label has it.",
    {
      min: 1e-7,
      source: MEMORY,
    },
  ),
  given(
    "shutoff_head",
    "Lifts at most",
    "head",
    { by: "size", pick: column(SIZES, (size) => size.shutoff_head) },
    "Height at which nothing comes any more. Labels rarely say: small ones stop at 2 to 5 m.",
    {
      min: 0.01,
      source: PRACTICE,
    },
  ),
  choice(
    "figures",
    "These figures are from",
    { label: "its label", tested: "your own test" },
    "label",
    "A label is believed to 0.8 of its flow: five pumps tested gave 15 to 33 % less.",
    { source: BOATUS },
  ),
  given(
    "believed_share",
    "Believed of its flow",
    "share",
    { by: "figures", pick: { label: typed(pumps.believed_share), tested: [1, "1"] } },
    "Share of the stated flow that is reckoned with.",
    {
      min: 0.05,
      max: 1,
      minor: true,
      source: BOATUS,
    },
  ),
  given(
    "rated_voltage",
    "Stated at",
    "voltage",
    typed(pumps.rated_voltage),
    "Makers commonly state the flow of a 12 V pump at 13.6 V.",
    {
      min: 1,
      max: 60,
      minor: true,
      source: pumps.sources["rating voltage"],
    },
  ),
  {
    row: "list",
    of: "points",
    name: "curve",
    label: "Data sheet",
    measures: ["flow", "head"],
    default: null,
    help: "Points of flow and height off its data sheet; they stand for the two ratings, and are believed.",
    source: "your own entry",
    minor: true,
    absent: "no data sheet",
  },
  given(
    "rated_current",
    "Draws, wide open",
    "current",
    { by: "size", pick: column(SIZES, (size) => size.rated_current) },
    "Current at open flow and the stated voltage.",
    { min: 0.01, source: MEMORY },
  ),
  given(
    "no_flow_current",
    "Draws, outlet shut",
    "current",
    { formula: `rated_current * ${pumps.no_flow_share.value}` },
    "Current while it turns against a shut outlet; not that of a stuck rotor.",
    {
      min: 0.001,
      minor: true,
      source: PRACTICE,
    },
  ),
  given(
    "no_load_current",
    "Turns at all from",
    "current",
    typed(pumps.no_load_current),
    "Against bearings and seal alone. A panel without a battery must give it before anything moves.",
    { max: 20, minor: true, source: MEMORY },
  ),
  given(
    "stall_current",
    "Draws, rotor stuck",
    "current",
    { formula: `rated_current * ${pumps.stall_multiple.value}` },
    "What a fuse must blow at. Three to six times the running current.",
    {
      min: 0.01,
      minor: true,
      source: PRACTICE,
    },
  ),
  given("maker_fuse", "Fuse its maker wants", "current", null, "It stands on the label or in the leaflet.", {
    absent: "its maker names none",
    min: 0.1,
  }),
  given(
    "lowest_water",
    "Leaves behind",
    "depth",
    typed(pumps.lowest_water),
    "Depth of water that it cannot pick up.",
    {
      source: pumps.sources.msraves,
    },
  ),
  link(
    "powered_by",
    "Runs on",
    "gives_power",
    "runs on nothing yet",
    "The battery it is clipped to, or a panel alone.",
  ),
];

const series = (name: string, label: string, of: string): Row =>
  output(name, label, of, "series", label, DEFINITION, { hidden: true });

const fromDeliveries = (
  name: string,
  label: string,
  measure: "power" | "energy" | "current",
  take: string,
  how: "max" | "sum",
): Row => gather(name, label, measure, { kind: "delivery", by: "pump", take, how }, label, { hidden: true });

const RESULTS: readonly Row[] = [
  series("curve_figured", "Its curve by its figures", "believing"),
  series("curve_in_use", "Its curve as reckoned with", "believing"),
  gather(
    "tests",
    "Buckets timed at its hoses",
    "series",
    { kind: "delivery", by: "pump", take: "bucket_test", how: "list" },
    "Each with its hose, lift and volts.",
    { hidden: true },
  ),
  output(
    "tested_share",
    "Turns, by your bucket, at",
    "believing",
    "share",
    "Of the speed that its figures are for: with it the open flow goes, and the greatest lift with its square. The mean of its buckets.",
    AFFINITY,
    { quiet: true },
  ),
  output("tests_apart", "Its buckets apart", "believing", "factor", "Most over least.", DEFINITION, {
    hidden: true,
  }),
  output("believed_by", "Goes by", "believing", "text", "What its curve rests on.", DEFINITION, {
    minor: true,
    options: Object.entries(WORDS).map(([word, label]) => ({ word, label })),
  }),
  output(
    "open_in_use",
    "Reckoned with, open flow",
    "believing",
    "flow",
    "Q0: the stated flow times the believed share of it, or as its data sheet or your bucket has it.",
    FIT,
    { minor: true },
  ),
  output(
    "shutoff_in_use",
    "Reckoned with, greatest lift",
    "believing",
    "head",
    "H0, at the stated voltage: as stated, or as its data sheet or your bucket has it.",
    FIT,
    { minor: true },
  ),
  output("supply_voltage", "Its source gives", "source", "voltage", "The battery's voltage.", DEFINITION, {
    minor: true,
  }),
  series("panel", "Its panel", "source"),
  output("panel_short", "Its panel, shorted", "source", "current", "In full sun.", DEFINITION, {
    hidden: true,
  }),
  output("source_short", "Its battery, shorted", "source", "current", "As its card says.", DEFINITION, {
    hidden: true,
  }),
  output("source_kind", "Kind of its battery", "source", "text", "As its card says.", DEFINITION, {
    hidden: true,
  }),
  gather(
    "wire_resistance",
    "Its wire, both ways",
    "resistance",
    { kind: "wire", by: "feeds", take: "resistance", how: "sum" },
    "All wire that feeds it, there and back.",
    { minor: true },
  ),
  output(
    "head_at_no_flow",
    "Lifts at most, as fed",
    "ends",
    "head",
    "Where nothing comes any more: H0 (V/Vr)², V the voltage that then arrives; the stated voltage Vr where it runs on no battery.",
    FIT,
  ),
  output(
    "flow_at_no_head",
    "Gives without hose, as fed",
    "ends",
    "flow",
    "What is believed of its open flow, times its battery's voltage over the stated one.",
    FIT,
    { relations: ["open_in_use * supply_voltage / rated_voltage"] },
  ),
  gather(
    "places",
    "Places it works at",
    "count",
    { kind: "delivery", by: "pump", take: "has_pump", how: "sum" },
    "Hoses that it is put to, one at a time.",
    { minor: true },
  ),
  gather(
    "running_current",
    "Draws at work",
    "current",
    { kind: "delivery", by: "pump", take: "current", how: "max" },
    "The most of any of its hoses.",
  ),
  fromDeliveries("running_power", "Takes from its battery", "power", "drawn_power", "max"),
  fromDeliveries("round_energy", "One watering takes", "energy", "round_energy", "sum"),
  fromDeliveries("peak_energy", "A peak day takes", "energy", "peak_energy", "sum"),
  gather(
    "liftings",
    "Hoses it is put to",
    "series",
    { kind: "delivery", by: "pump", take: "lifting", how: "list" },
    "Each with its lift.",
    { hidden: true },
  ),
  ...COSTS,
];

export const pump: Kind = {
  kind: "pump",
  label: "Pump",
  purpose: "A small submersible pump: what it can do, and what it runs on.",
  group: "Power",
  icon: { ink: "M6 20V10h10v10zM4 20h14M9 10V4h9", tone: "M11 13v4M9 15h4", color: "power" },
  uses: ["lifts_water"],
  joins: { powered_by: "newest" },
  glance: ["flow_at_no_head", "running_current"],
  spans: PUMP_SPANS,
  laid: laidPumps,
  rows: [...LABEL, ...RESULTS],
  models: PUMP_MODELS,
  cautions: PUMP_CAUTIONS,
};
