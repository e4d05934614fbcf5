// A delivery's solved point: flow, head, current, voltage and power.

import type { Row } from "../../graph/types.ts";
import { formula, hidden, output, STANDARD_GRAVITY } from "../rows.ts";
import { BLAMES } from "./blame.ts";
import { TEST_CONDITIONS } from "./hose.ts";

export const POINT_ROWS: readonly Row[] = [
  output("flow", "Comes out of the hose", "running", "flow", {
    measurable: { teaches: "the pump; through a wand or rose, the wand" },
    keeps: TEST_CONDITIONS,
    relations: [
      "open_flow_here * sqrt(1 - head / (pump.shutoff_in_use * (arriving_voltage / pump.rated_voltage)^2))",
      "bucket_volume / bucket_time",
    ],
  }),
  formula("share_of_label", "Share of the pump's label", "share", "flow / pump.open_flow"),
  formula("head", "Head the pump makes", "head", "lift + hose_head + wand_head", { minor: true }),
  output("lift", "Lift, of that head", "standing", "head", { minor: true }),
  formula("velocity", "Speed in the hose", "velocity", "flow / circle_area(hose_bore)", { minor: true }),
  formula(
    "friction",
    "Friction factor",
    "factor",
    "friction_factor(reynolds_number(flow, hose_bore, site.water_viscosity / site.water_density), roughness / hose_bore)",
    { minor: true },
  ),
  formula(
    "hose_head",
    "Used up by hose and fittings",
    "head",
    `(friction * hose_length / hose_bore + fittings_k + filters_k) * velocity^2 / (2 * ${STANDARD_GRAVITY})`,
  ),
  formula(
    "wand_head",
    "Used up by wand and rose",
    "head",
    `(head_k_in_use + rose_k) * velocity^2 / (2 * ${STANDARD_GRAVITY})`,
    { minor: true },
  ),
  output("rose_k", "The rose, by its holes", "running", "factor", {
    minor: true,
    relations: ["(circle_area(hose_bore) / (holes_in_use * opening_of(rose_hole, 0.62)))^2"],
  }),
  hidden("holes_in_use", "Holes reckoned with", "running", "count"),
  output("open_flow_here", "Open flow at the voltage that arrives", "running", "flow", {
    minor: true,
    relations: ["pump.open_in_use * arriving_voltage / pump.rated_voltage"],
  }),
  output("current", "Draws", "running", "current", {
    measurable: { teaches: "the current itself" },
    relations: [
      "(arriving_voltage / pump.rated_voltage)^2 * (pump.no_flow_current + (pump.rated_current - pump.no_flow_current) * min(1, flow / open_flow_here)) + friction_here * (1 - (arriving_voltage / pump.rated_voltage)^2)",
    ],
  }),
  output("arriving_voltage", "Voltage that arrives", "running", "voltage", {
    minor: true,
    relations: ["source_voltage - current * pump.wire_resistance"],
  }),
  hidden("friction_here", "Of that, to turn at all", "running", "current"),
  hidden("source_voltage", "Voltage at its source", "running", "voltage"),
  formula("power", "Takes", "power", "current * arriving_voltage", { minor: true }),
  formula("drawn_power", "Out of the battery", "power", "current * source_voltage", { minor: true }),
  formula("efficiency", "Share that lifts water", "share", "lifting_power / power", {
    minor: true,
    none: [
      { if: "power <= 0 W", reason: "it takes no power" },
      { if: "lifting_power < 0 W", reason: "the water would run by itself: the pump only holds it back" },
      { if: "lifting_power > power", reason: "more than all its power would lift water: a figure is off" },
    ],
  }),
  formula(
    "lifting_power",
    "Lifts water with",
    "power",
    `site.water_density * ${STANDARD_GRAVITY} * flow * head`,
    { hidden: true },
  ),
  formula("spare_head", "Lift to spare", "head", "pump.head_at_no_flow - lift", { minor: true }),
  output("head_k_in_use", "Wand or rose, as it is", "running", "factor", { minor: true }),
  output("blames", "What differs is laid to", "blaming", "text", {
    quiet: true,
    options: Object.entries(BLAMES).map(([word, label]) => ({ word, label })),
  }),
  hidden("has_test", "A bucket was timed", "testing", "count"),
  hidden("bucket_test", "The bucket as it was timed", "testing", "series"),
  hidden("dead_depth", "Dead water", "leaving", "depth"),
  hidden("gives_down_to", "Comes out down to", "reaching", "depth"),
  hidden("stopped_by", "Stopped by", "stopping", "text"),
  hidden("has_pump", "Has a pump's card", "running", "count"),
  hidden("lifting", "Pump, hose and lift", "running", "series"),
  hidden("what_if", "The same watering otherwise", "comparing", "series"),
  hidden("hose_wins", "A hose gains more", "comparing", "count"),
  hidden("curves", "Pump against lift and hose", "comparing", "series"),
  hidden("by_depth", "By the tank's depth", "tabling", "series"),
];
