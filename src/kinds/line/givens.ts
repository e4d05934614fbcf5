// What a gravity line asks: its ends, its hose, its valve, and the way it lies.

import type { Row } from "../../graph/types.ts";
import { choice, given, link, MEMORY } from "../rows.ts";

const HOSE: readonly Row[] = [
  link("from", "From", "ends_a_line", "starts at no tank", "The higher tank, or a joint."),
  link("to", "To", "ends_a_line", "leads to no tank", "The tank it fills, or a joint."),
  given("length", "Length", "length", [50, "ft"], "As it lies, bends and all.", { min: 0.01, max: 20_000 }),
  given(
    "bore",
    "Inside bore",
    "bore",
    [0.625, "in"],
    "A 5/8 in garden hose is 5/8 in inside; pipe sizes are not their bore.",
    { min: 0.001, max: 1 },
  ),
];

const VALVE: readonly Row[] = [
  given(
    "valve_bore",
    "Float valve seat",
    "bore",
    [4.8, "mm"],
    "The hole in the seat. Empty for an open end. A seat made for mains pressure is far smaller than one for a tank.",
    { absent: "no valve fitted", min: 0.000_2 },
  ),
  given(
    "shut_level",
    "Float shuts at depth",
    "depth",
    { formula: "to.water_height" },
    "In the lower tank, above its floor. For an open end, the depth that counts as full.",
    { min: 0.001 },
  ),
  given(
    "reference_share",
    "Upper tank full by",
    "share",
    [50, "%"],
    "How full the upper tank is when these answers are worked out.",
    { min: 0.01, max: 1 },
  ),
];

const DETAILS: readonly Row[] = [
  given(
    "fittings_k",
    "Bends and fittings",
    "factor",
    [3.4, "1"],
    "Entry 0.5, exit 1, each coupling about 0.9, a ball valve 0.05, an elbow 0.9.",
    {
      minor: true,
      max: 1000,
      source: "default from hydraulics tables: entry 0.5, exit 1.0, two couplings 0.9",
    },
  ),
  given("roughness", "Roughness", "roughness", [0.0015, "mm"], "Smooth plastic and hose.", {
    minor: true,
    source: MEMORY,
  }),
  given(
    "valve_coefficient",
    "Valve coefficient",
    "factor",
    [0.62, "1"],
    "Sharp-edged hole 0.62, short tube 0.80.",
    {
      minor: true,
      min: 0.05,
      max: 1,
      source: "Encyclopaedia Britannica, 11th ed., Hydraulics: 0.62 sharp edge",
    },
  ),
  given(
    "valve_band",
    "Closes over",
    "depth",
    [50, "mm"],
    "The last rise of water over which the float shuts the valve.",
    { minor: true, min: 0.001, source: MEMORY },
  ),
  choice("check_valve", "Check valve", { no: "none", yes: "fitted" }, "no", "Stops water running back.", {
    minor: true,
  }),
  {
    row: "list",
    of: "points",
    name: "route",
    label: "The way it lies",
    measures: ["distance", "height"],
    default: null,
    unit: "ft, ft",
    absent: "no route given",
    help: "Distance along the hose from its start, and the height of the hose there above the worksheet's zero. Humps are what matters.",
    source: "your own entry",
    minor: true,
  },
  choice(
    "primed",
    "Kept primed over its hump",
    { no: "no", yes: "yes, filled by hand" },
    "no",
    "Only for a hump above the upper water: filled wholly with water and kept so, it runs as a siphon.",
    { minor: true },
  ),
];

export const LINE_GIVENS: readonly Row[] = [...HOSE, ...VALVE, ...DETAILS];
