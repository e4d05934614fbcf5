// Every function that a formula may call. To add one is one row: its name, how the working names it, the units it takes
// and gives, where it comes from, and what computes it.

import { airPressure } from "../physics/air.ts";
import { downspoutCapacity } from "../physics/downspout.ts";
import { openingOf } from "../physics/orifice.ts";
import { boreArea, frictionFactor, reynoldsNumber } from "../physics/pipe-friction.ts";
import {
  atmosphericHead,
  kinematicViscosity,
  siphonLimit,
  vapourPressure,
  waterDensity,
  waterViscosity,
} from "../physics/water.ts";

/**
 * `fixed`: unit texts of each argument and of the answer; numbers pass in SI.
 * `alike`: all arguments of one dimension, which the answer keeps. `root`: the answer has half the powers.
 */
export type Signature =
  | { readonly rule: "fixed"; readonly takes: readonly string[]; readonly gives: string }
  | { readonly rule: "alike"; readonly least: number; readonly most: number }
  | { readonly rule: "root" };

export type FormulaFunction = {
  readonly name: string;
  /** In the working, before its arguments in brackets. */
  readonly shown: string;
  readonly signature: Signature;
  readonly source: string;
  readonly run: (...args: number[]) => number;
};

const MATHS = "definition";
const MANY = 20;

function fixed(
  name: string,
  shown: string,
  takes: readonly string[],
  gives: string,
  run: (...args: number[]) => number,
  source = MATHS,
): FormulaFunction {
  return { name, shown, signature: { rule: "fixed", takes, gives }, source, run };
}

function alike(
  name: string,
  shown: string,
  least: number,
  most: number,
  run: FormulaFunction["run"],
): FormulaFunction {
  return { name, shown, signature: { rule: "alike", least, most }, source: MATHS, run };
}

function clamp(...args: number[]): number {
  const [value = Number.NaN, low = Number.NaN, high = Number.NaN] = args;
  return Math.min(Math.max(value, low), high);
}

/** A physics function with plain number parameters as a function of a list. */
function one(run: (a: number) => number): FormulaFunction["run"] {
  return (a = Number.NaN) => run(a);
}
function two(run: (a: number, b: number) => number): FormulaFunction["run"] {
  return (a = Number.NaN, b = Number.NaN) => run(a, b);
}
function three(run: (a: number, b: number, c: number) => number): FormulaFunction["run"] {
  return (a = Number.NaN, b = Number.NaN, c = Number.NaN) => run(a, b, c);
}

const FAO_AIR = "FAO Irrigation and Drainage Paper 56, Eq. 7";
const TANAKA = "Tanaka et al. 2001, Metrologia 38:301";
const PATEK = "Patek et al. 2009, J. Phys. Chem. Ref. Data 38:21";
const WAGNER = "Wagner and Pruss 1993, J. Phys. Chem. Ref. Data 22:783";

const ROWS: readonly FormulaFunction[] = [
  alike("min", "the smallest of", 2, MANY, Math.min),
  alike("max", "the largest of", 2, MANY, Math.max),
  alike("abs", "the size of", 1, 1, Math.abs),
  alike("clamp", "held within bounds", 3, 3, clamp),
  {
    name: "sqrt",
    shown: "the square root of",
    signature: { rule: "root" },
    source: MATHS,
    run: one(Math.sqrt),
  },
  fixed("floor", "rounded down", ["1"], "1", one(Math.floor)),
  fixed("ceil", "rounded up", ["1"], "1", one(Math.ceil)),
  fixed("round", "rounded", ["1"], "1", one(Math.round)),
  fixed("exp", "e to the power of", ["1"], "1", one(Math.exp)),
  fixed("ln", "the natural logarithm of", ["1"], "1", one(Math.log)),
  fixed("log10", "the logarithm to base ten of", ["1"], "1", one(Math.log10)),
  fixed("sin", "the sine of", ["rad"], "1", one(Math.sin)),
  fixed("cos", "the cosine of", ["rad"], "1", one(Math.cos)),
  fixed("tan", "the tangent of", ["rad"], "1", one(Math.tan)),
  fixed("circle_area", "the area of a circle across", ["m"], "m2", one(boreArea)),
  fixed("opening_of", "the effective opening of a hole", ["m", "1"], "m2", two(openingOf)),
  fixed(
    "leader_capacity",
    "what a round downspout carries of a bore of",
    ["m"],
    "m3/s",
    one(downspoutCapacity),
    "Wyly and Eaton, NBS Monograph 31 (1961), as in National Standard Plumbing Code 2006 Table 13.6.1",
  ),
  fixed("reynolds_number", "the Reynolds number of", ["m3/s", "m", "m2/s"], "1", three(reynoldsNumber)),
  fixed(
    "friction_factor",
    "the friction factor of",
    ["1", "1"],
    "1",
    two(frictionFactor),
    "Churchill 1977, Chem. Eng. 84:91-92",
  ),
  fixed("water_density", "the density of water at", ["K"], "kg/m3", one(waterDensity), TANAKA),
  fixed("water_viscosity", "the viscosity of water at", ["K"], "Pa s", one(waterViscosity), PATEK),
  fixed(
    "kinematic_viscosity",
    "the viscosity over the density of water at",
    ["K"],
    "m2/s",
    one(kinematicViscosity),
    `${PATEK}; ${TANAKA}`,
  ),
  fixed("vapour_pressure", "the vapour pressure of water at", ["K"], "Pa", one(vapourPressure), WAGNER),
  fixed("air_pressure", "the air's pressure at a height of", ["m"], "Pa", one(airPressure), FAO_AIR),
  fixed(
    "atmospheric_head",
    "the water column that the air holds up at",
    ["m", "K"],
    "m",
    two(atmosphericHead),
    `${FAO_AIR}; ${TANAKA}`,
  ),
  fixed(
    "siphon_limit",
    "the highest that a siphon lifts at",
    ["m", "K"],
    "m",
    two(siphonLimit),
    `${FAO_AIR}; ${TANAKA}; ${WAGNER}`,
  ),
];

/** By name. A map, so that no inherited name is ever found. */
export const FUNCTIONS: ReadonlyMap<string, FormulaFunction> = new Map(ROWS.map((row) => [row.name, row]));

/** The least and most arguments of a function. */
export function argumentBounds(signature: Signature): { readonly least: number; readonly most: number } {
  if (signature.rule === "alike") return signature;
  const count = signature.rule === "root" ? 1 : signature.takes.length;
  return { least: count, most: count };
}
