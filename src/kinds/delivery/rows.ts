// A delivery's solved point: flow, head, current, voltage and power.

import type { Row } from "../../graph/types.ts";
import { DEFINITION, formula, output, PRACTICE } from "../rows.ts";
import { BLAMES } from "./blame.ts";
import { TEST_CONDITIONS } from "./hose.ts";

const SOLVED = "pump curve against lift and hose (Darcy-Weisbach with Churchill 1977), with the wire's drop";

const AFFINITY =
  "affinity laws: flow with the speed, and speed with the voltage (from memory); torque, and so current, with its square";

export const POINT_ROWS: readonly Row[] = [
  output(
    "flow",
    "Comes out of the hose",
    "running",
    "flow",
    "Where the head that the pump makes is just used up by lift, hose and wand; without a pump's card, the bucket over its time.",
    SOLVED,
    {
      measurable: { teaches: "the pump; through a wand or rose, the wand" },
      keeps: TEST_CONDITIONS,
      relations: [
        "open_flow_here * sqrt(1 - head / (pump.shutoff_in_use * (arriving_voltage / pump.rated_voltage)^2))",
        "bucket_volume / bucket_time",
      ],
    },
  ),
  formula(
    "share_of_label",
    "Of the pump's label",
    "share",
    "flow / pump.open_flow",
    "What comes out over the open flow on the label.",
    DEFINITION,
  ),
  formula(
    "head",
    "Head the pump makes",
    "head",
    "lift + hose_head + wand_head",
    "Lift, and what hose, fittings, wand and rose use up; the pump makes just that where it runs.",
    SOLVED,
    { minor: true },
  ),
  output(
    "lift",
    "Of that, lift",
    "standing",
    "head",
    "From the water in the tank, filled to the share given, up to the hose's end.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "velocity",
    "Speed in the hose",
    "velocity",
    "flow / circle_area(hose_bore)",
    "Flow over the bore's area.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "friction",
    "Friction factor",
    "factor",
    "friction_factor(reynolds_number(flow, hose_bore, site.water_viscosity / site.water_density), roughness / hose_bore)",
    "How much the hose's wall holds the water back.",
    "Churchill 1977, Chem. Eng. 84:91-92",
    { minor: true },
  ),
  formula(
    "hose_head",
    "Used up by hose and fittings",
    "head",
    "(friction * hose_length / hose_bore + fittings_k + filters_k) * velocity^2 / (2 * 9.80665 m/s2)",
    "Friction factor times length over bore, plus all fittings, times the head of the speed.",
    "Darcy-Weisbach with Churchill 1977",
  ),
  formula(
    "wand_head",
    "Used up by wand and rose",
    "head",
    "(head_k_in_use + rose_k) * velocity^2 / (2 * 9.80665 m/s2)",
    "Their losses times the head of the speed in the hose.",
    "Darcy-Weisbach practice: K times the velocity head",
    { minor: true },
  ),
  output(
    "rose_k",
    "The rose, by its holes",
    "running",
    "factor",
    "The hose's area over 0.62 of all its holes' area, squared; nothing where a bucket was timed through it.",
    "Torricelli; orifice of d √N, Cd 0.62 for a sharp edge",
    {
      minor: true,
      relations: ["(circle_area(hose_bore) / (holes_in_use * opening_of(rose_hole, 0.62)))^2"],
    },
  ),
  output(
    "holes_in_use",
    "Holes reckoned with",
    "running",
    "count",
    "None where a bucket stands.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  output(
    "open_flow_here",
    "Open flow at the voltage that arrives",
    "running",
    "flow",
    "What it would give without lift and hose.",
    AFFINITY,
    { minor: true, relations: ["pump.open_in_use * arriving_voltage / pump.rated_voltage"] },
  ),
  output(
    "current",
    "Draws",
    "running",
    "current",
    "What a meter in the lead shows while it runs: (V/Vr)² (I0 + (Io - I0) q), I0 shut, Io wide open, q the flow over the open flow at the voltage V that arrives; or your own reading.",
    `${AFFINITY}; a straight line between its two currents`,
    {
      measurable: { teaches: "the current itself" },
      relations: [
        "(arriving_voltage / pump.rated_voltage)^2 * (pump.no_flow_current + (pump.rated_current - pump.no_flow_current) * min(1, flow / open_flow_here)) + friction_here * (1 - (arriving_voltage / pump.rated_voltage)^2)",
      ],
    },
  ),
  output(
    "arriving_voltage",
    "Voltage that arrives",
    "running",
    "voltage",
    "The battery's voltage less the current times the wire's resistance, both ways.",
    "Ohm's law",
    { minor: true, relations: ["source_voltage - current * pump.wire_resistance"] },
  ),
  output(
    "friction_here",
    "Of that, to turn at all",
    "running",
    "current",
    "On a panel alone; on a battery it is not told apart.",
    AFFINITY,
    { hidden: true },
  ),
  output(
    "source_voltage",
    "Voltage at its source",
    "running",
    "voltage",
    "Of the battery or panel.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  formula(
    "power",
    "Takes",
    "power",
    "current * arriving_voltage",
    "Its current times the voltage that arrives.",
    DEFINITION,
  ),
  formula(
    "drawn_power",
    "Out of the battery",
    "power",
    "current * source_voltage",
    "Its current times the battery's voltage: the pump's and the wire's together.",
    DEFINITION,
    { minor: true },
  ),
  formula(
    "efficiency",
    "Of that lifts water",
    "share",
    "lifting_power / power",
    "Weight of the water a second times the head it is lifted by, over the power. Small ones reach a fifth at best.",
    DEFINITION,
    {
      minor: true,
      none: [
        { if: "power <= 0 W", reason: "it takes no power" },
        { if: "lifting_power > power", reason: "more than all its power would lift water: a figure is off" },
      ],
    },
  ),
  formula(
    "lifting_power",
    "Lifts water with",
    "power",
    "site.water_density * 9.80665 m/s2 * flow * head",
    "Weight of the water a second times the head.",
    DEFINITION,
    { hidden: true },
  ),
  formula(
    "spare_head",
    "Lift to spare",
    "head",
    "pump.head_at_no_flow - lift",
    "What the pump lifts at most, as fed, less the lift.",
    "curve of the pump at no flow",
    { minor: true },
  ),
  output(
    "head_k_in_use",
    "Wand or rose, as it is",
    "running",
    "factor",
    "By the bucket, where one was timed.",
    SOLVED,
    { minor: true },
  ),
  output(
    "blames",
    "What differs is laid to",
    "blaming",
    "text",
    "What the bucket showed against what the figures say, within 7 %: at the open end the pump's doing, through the wand what is left.",
    PRACTICE,
    { quiet: true, options: Object.entries(BLAMES).map(([word, label]) => ({ word, label })) },
  ),
  output("has_test", "A bucket was timed", "testing", "count", "1 where one was.", DEFINITION, {
    hidden: true,
  }),
  output(
    "bucket_test",
    "The bucket as it was timed",
    "testing",
    "series",
    "With its hose and volts.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  output(
    "dead_depth",
    "Dead water",
    "leaving",
    "depth",
    "The pump's own figure where it has a card.",
    DEFINITION,
    {
      hidden: true,
    },
  ),
  output("has_pump", "Has a pump's card", "running", "count", "1 where it has.", DEFINITION, {
    hidden: true,
  }),
  output("lifting", "Pump, hose and lift", "running", "series", "Put together.", DEFINITION, {
    hidden: true,
  }),
  output("what_if", "The same watering otherwise", "comparing", "series", "Side by side.", SOLVED, {
    hidden: true,
  }),
  output(
    "hose_wins",
    "A hose gains more",
    "comparing",
    "count",
    "1 where it gains more than a bigger pump.",
    SOLVED,
    {
      hidden: true,
    },
  ),
  output("curves", "Pump against lift and hose", "comparing", "series", "Both curves.", SOLVED, {
    hidden: true,
  }),
  output("by_depth", "By the tank's depth", "tabling", "series", "Flow and power at each depth.", SOLVED, {
    hidden: true,
  }),
];
