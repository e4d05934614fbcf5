// A formula after reading: plain frozen data. Every node knows its columns [start, end) in the text as typed.

import type { Dimension } from "../units/dimension.ts";

export type FormulaProblem = { readonly message: string; readonly start: number; readonly end: number };

export type Place = { readonly start: number; readonly end: number };

export type ArithmeticSign = "+" | "-" | "*" | "/" | "^";
export type ComparisonSign = "<" | "<=" | ">" | ">=" | "==" | "!=";
export type LogicSign = "and" | "or";
export type BinarySign = ArithmeticSign | ComparisonSign | LogicSign;

export type Literal = Place & {
  readonly kind: "literal";
  /** [SI] */
  readonly value: number;
  readonly dimension: Dimension;
  /** As typed, with one space before the unit. */
  readonly shown: string;
  /** A 0 without a unit, which fits every dimension. */
  readonly bareZero: boolean;
  readonly hasUnit: boolean;
};
export type NameNode = Place & { readonly kind: "name"; readonly name: string };
export type UnaryNode = Place & { readonly kind: "unary"; readonly sign: "-" | "not"; readonly of: Node };
export type BinaryNode = Place & {
  readonly kind: "binary";
  readonly sign: BinarySign;
  readonly left: Node;
  readonly right: Node;
};
export type ChoiceNode = Place & {
  readonly kind: "choice";
  readonly condition: Node;
  readonly yes: Node;
  readonly no: Node;
};
export type CallNode = Place & {
  readonly kind: "call";
  readonly name: string;
  readonly args: readonly Node[];
};

export type Node = Literal | NameNode | UnaryNode | BinaryNode | ChoiceNode | CallNode;

export type NameRead = Place & { readonly name: string };

export type Formula = {
  readonly text: string;
  /** Every name read, in order of appearance, all occurrences. */
  readonly names: readonly NameRead[];
  /** Whether the answer is yes (1) or no (0). */
  readonly isCondition: boolean;
  readonly root: Node;
};

const COMPARISONS: ReadonlySet<string> = new Set(["<", "<=", ">", ">=", "==", "!="]);

export function isComparison(sign: BinarySign): sign is ComparisonSign {
  return COMPARISONS.has(sign);
}

export function isLogic(sign: BinarySign): sign is LogicSign {
  return sign === "and" || sign === "or";
}

/** Whether a node answers yes (1) or no (0). */
export function isCondition(node: Node): boolean {
  if (node.kind === "unary") return node.sign === "not";
  if (node.kind === "binary") return isComparison(node.sign) || isLogic(node.sign);
  return node.kind === "choice" && isCondition(node.yes) && isCondition(node.no);
}

/** Thrown inside this folder only, and caught by the public functions. */
export class FormulaTrouble extends Error {
  readonly problem: FormulaProblem;
  constructor(message: string, place: Place) {
    super(message);
    this.problem = Object.freeze({ message, start: place.start, end: place.end });
  }
}

/** The answer of some work, or the problem that stopped it. */
export function orProblem<T extends object>(
  work: () => T,
): (T & { ok: true }) | { readonly ok: false; readonly problem: FormulaProblem } {
  try {
    return { ok: true, ...work() };
  } catch (trouble) {
    if (trouble instanceof FormulaTrouble) return { ok: false, problem: trouble.problem };
    throw trouble;
  }
}
