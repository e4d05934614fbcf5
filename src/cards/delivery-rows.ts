// A delivery's hose and its solved point: flow, head, current, voltage and power.

import type { Row } from "../graph/types.ts";
import { DEFINITION, formula, given, output, PRACTICE } from "./rows.ts";

const SOLVED = "pump curve against lift and hose (Darcy-Weisbach with Churchill 1977), with the wire's drop";

export const HOSE_ROWS: readonly Row[] = [
  given("hose_length", "Hose", "length", [50, "ft"], "From the pump to its end.", { max: 1000 }),
  given("hose_bore", "Inside bore", "bore", [0.625, "in"], "A 5/8 in garden hose is 5/8 in inside.", {
    min: 0.002,
    max: 0.5,
  }),
  given("roughness", "Roughness", "roughness", [0.0015, "mm"], "Smooth plastic and hose.", {
    max: 0.005,
    minor: true,
    source: "from memory",
  }),
  given(
    "fittings_k",
    "Fittings",
    "factor",
    [2.5, "1"],
    "All of them together, entry and open end too, on the speed in the hose.",
    { max: 1000, minor: true, source: PRACTICE },
  ),
  given(
    "head_k",
    "Wand or rose",
    "factor",
    [0, "1"],
    "What it takes on top of an open end, on the speed in the hose. A bucket timed through it teaches this.",
    { max: 100_000, minor: true },
  ),
  given(
    "tank_share",
    "With the tank filled to",
    "share",
    [50, "%"],
    "The water that the flow below is for, and the bucket was timed at.",
    {
      max: 1,
      minor: true,
    },
  ),
];

export const POINT_ROWS: readonly Row[] = [
  output(
    "flow",
    "Comes out of the hose",
    "running",
    "flow",
    "Where the pump's head is just used up by lift, hose and wand; without a pump's card, the bucket over its time.",
    SOLVED,
    { measurable: { teaches: "the flow itself" } },
  ),
  formula(
    "share_of_label",
    "Of the pump's label",
    "share",
    "flow / pump.open_flow",
    "What comes out over the open flow on the label.",
    DEFINITION,
  ),
  output(
    "head",
    "Head the pump makes",
    "running",
    "head",
    "Lift plus what hose, fittings and wand use up.",
    SOLVED,
    {
      minor: true,
    },
  ),
  output(
    "current",
    "Draws",
    "running",
    "current",
    "What a meter in the lead shows while it runs: worked out from pump, hose and wire, or your own reading.",
    SOLVED,
    { measurable: { teaches: "the current itself" } },
  ),
  output(
    "arriving_voltage",
    "Voltage that arrives",
    "running",
    "voltage",
    "The battery's voltage less what the wire loses at that current.",
    SOLVED,
    { minor: true },
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
  output(
    "efficiency",
    "Of that lifts water",
    "lifting_share",
    "share",
    "Weight of the water a second times the head, over the power. Small ones reach a fifth at best.",
    "definition",
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
    "spare_head",
    "Lift to spare",
    "running",
    "head",
    "What the pump lifts at most less the lift.",
    SOLVED,
    {
      minor: true,
    },
  ),
  output(
    "bucket_over",
    "Bucket over the pump's most",
    "running",
    "factor",
    "Flow in the bucket over the pump's most, less one.",
    SOLVED,
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
  output("by_depth", "By the tank's depth", "tabling", "series", "Flow and power at each depth.", SOLVED, {
    hidden: true,
  }),
];
