// What a gravity line asks: its ends, its hose, its valve, and the way it lies.

import type { Row } from "../../graph/types.ts";
import { limitsOf } from "../limits.ts";
import { choice, given, link } from "../rows.ts";

const HOSE: readonly Row[] = [
  link("from", "From", "ends_a_line", "starts at no tank"),
  link("to", "To", "ends_a_line", "leads to no tank"),
  given("length", "Length", "length", [50, "ft"], { min: 0.01, max: 20_000 }),
  given("bore", "Inside bore", "bore", [0.625, "in"], { min: 0.001, max: 1 }),
];

const VALVE: readonly Row[] = [
  given("valve_bore", "Float valve seat", "bore", [4.8, "mm"], { absent: "no valve fitted", min: 0.000_2 }),
  given("shut_level", "Float shuts at depth", "depth", { formula: "to.water_height" }, { min: 0.001 }),
  given("reference_share", "Upper tank filled to", "share", [50, "%"], { min: 0.01, max: 1, minor: true }),
];

const DETAILS: readonly Row[] = [
  given("fittings_k", "Bends and fittings", "factor", [3.4, "1"], { minor: true, max: 1000 }),
  given("roughness", "Roughness", "roughness", [0.0015, "mm"], { minor: true }),
  given("valve_coefficient", "Valve coefficient", "factor", [0.62, "1"], { minor: true, min: 0.05, max: 1 }),
  given("valve_band", "Valve closes over", "depth", [50, "mm"], { minor: true, min: 0.001 }),
  choice("check_valve", "Check valve", { no: "none", yes: "fitted" }, "no", { minor: true }),
  {
    row: "list",
    of: "points",
    name: "route",
    label: "The way it lies",
    measures: ["distance", "height"],
    limits: [limitsOf("distance"), limitsOf("height")],
    default: null,
    unit: "ft, ft",
    absent: "no route given",
    minor: true,
  },
  choice("primed", "Kept primed over its hump", { no: "no", yes: "yes, filled by hand" }, "no", {
    minor: true,
  }),
];

export const LINE_GIVENS: readonly Row[] = [...HOSE, ...VALVE, ...DETAILS];
