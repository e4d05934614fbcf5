// What kind of quantity a formula gives, checked over the whole of it.

import {
  type Dimension,
  isPlain,
  PLAIN,
  powerOf,
  productOf,
  quotientOf,
  sameDimension,
} from "../units/dimension.ts";
import { kindWords } from "../units/suits.ts";
import { dimensionOf as dimensionOfUnit } from "../units/unit.ts";
import { type FormulaFunction, FUNCTIONS } from "./functions.ts";
import {
  type BinaryNode,
  type CallNode,
  type Formula,
  type FormulaProblem,
  FormulaTrouble,
  isComparison,
  isLogic,
  type Node,
  orProblem,
  type Place,
} from "./tree.ts";

/** A bare 0 fits every dimension but a temperature point, where it would mean absolute zero. */
type Kind = Dimension | "zero";

const BASE_UNITS = ["m", "kg", "s", "K", "A", "rad", "money"] as const;
const UNKNOWN_KIND = "another kind of quantity";
const QUOTABLE = 30;

function baseUnits(dimension: Dimension): string {
  const written = (sign: 1 | -1) =>
    dimension.powers.flatMap((power, index) => {
      const size = power * sign;
      return size > 0 ? [size === 1 ? `${BASE_UNITS[index]}` : `${BASE_UNITS[index]}${size}`] : [];
    });
  return [written(1).join(" ") || "1", ...written(-1)].join("/");
}

function words(kind: Kind): string {
  if (kind === "zero") return "a plain 0";
  const known = kindWords(kind);
  return known === UNKNOWN_KIND ? `a quantity in ${baseUnits(kind)}` : known;
}

function plainOf(kind: Kind): Dimension {
  return kind === "zero" ? PLAIN : kind;
}

/** Columns widened until every bracket in them has its partner. */
function balanced(text: string, place: Place): Place {
  let { start, end } = place;
  let open = 0;
  let least = 0;
  for (const sign of text.slice(start, end)) {
    if (sign === "(") open += 1;
    if (sign === ")") open -= 1;
    least = Math.min(least, open);
  }
  for (let missing = -least; missing > 0 && start > 0; ) {
    start -= 1;
    if (text[start] === "(") missing -= 1;
  }
  for (let missing = open - least; missing > 0 && end < text.length; end++) {
    if (text[end] === ")") missing -= 1;
  }
  return { start, end };
}

class Inference {
  readonly text: string;
  readonly dimensionOf: (name: string) => Dimension | string;

  constructor(text: string, dimensionOf: (name: string) => Dimension | string) {
    this.text = text;
    this.dimensionOf = dimensionOf;
  }

  of(node: Node): Kind {
    switch (node.kind) {
      case "literal":
        return node.bareZero ? "zero" : node.dimension;
      case "name":
        return this.named(node.name, node);
      case "unary":
        return this.negated(node.of, node);
      case "binary":
        return this.binary(node);
      case "choice":
        this.of(node.condition);
        return this.same(
          node,
          [node.yes, node.no],
          (a, b) => `Both answers must be of one kind: here ${a}, there ${b}.`,
        );
      default:
        return this.call(node);
    }
  }

  private stop(message: string, place: Place): never {
    throw new FormulaTrouble(message, balanced(this.text, place));
  }

  private quoted(node: Node, kind: Kind): string {
    const { start, end } = balanced(this.text, node);
    const written = this.text.slice(start, end);
    return written.length > QUOTABLE || kind === "zero" ? words(kind) : `${words(kind)} (${written})`;
  }

  private named(name: string, place: Place): Dimension {
    const found = this.dimensionOf(name);
    return typeof found === "string" ? this.stop(found, place) : found;
  }

  private negated(of: Node, whole: Place): Kind {
    const kind = this.of(of);
    if (kind !== "zero" && kind.point) this.stop("A temperature on a thermometer has no opposite.", whole);
    return kind;
  }

  private binary(node: BinaryNode): Kind {
    const { sign, left, right } = node;
    if (sign === "+" || sign === "-") return this.sum(node, sign);
    if (sign === "*" || sign === "/") return this.product(node, sign);
    if (sign === "^") return this.power(node);
    if (isLogic(sign)) {
      this.of(left);
      this.of(right);
    } else if (isComparison(sign)) this.same(node, [left, right], (a, b) => `This compares ${a} with ${b}.`);
    return PLAIN;
  }

  private sum(node: BinaryNode, sign: "+" | "-"): Kind {
    const left = this.of(node.left);
    const right = this.of(node.right);
    if ((left !== "zero" && left.point) || (right !== "zero" && right.point))
      return this.pointSum(node, left, right);
    if (left === "zero") return right;
    if (right === "zero" || sameDimension(left, right)) return left;
    const [a, b] = [this.quoted(node.left, left), this.quoted(node.right, right)];
    return this.stop(sign === "+" ? `This adds ${a} to ${b}.` : `This takes ${b} from ${a}.`, node);
  }

  private pointSum(node: BinaryNode, left: Kind, right: Kind): Dimension {
    const difference = { ...dimensionOfUnit("K"), point: false };
    const isPoint = (kind: Kind) => kind !== "zero" && kind.point;
    const isStep = (kind: Kind) => kind === "zero" || sameDimension(kind, difference);
    if (node.sign === "-" && isPoint(left) && isPoint(right)) return difference;
    if (isPoint(left) && isStep(right)) return plainOf(left);
    if (node.sign === "+" && isStep(left) && isPoint(right)) return plainOf(right);
    if (isPoint(left) && isPoint(right)) {
      return this.stop("Two temperatures cannot be added; a difference such as 5 delta degC can.", node);
    }
    const [a, b] = [this.quoted(node.left, left), this.quoted(node.right, right)];
    return this.stop(node.sign === "+" ? `This adds ${a} to ${b}.` : `This takes ${b} from ${a}.`, node);
  }

  private product(node: BinaryNode, sign: "*" | "/"): Kind {
    const left = plainOf(this.of(node.left));
    const right = plainOf(this.of(node.right));
    if (left.point || right.point) {
      const what = sign === "*" ? "multiplied" : "divided";
      this.stop(`A temperature on a thermometer cannot be ${what}; take a difference first.`, node);
    }
    return sign === "*" ? productOf(left, right) : quotientOf(left, right);
  }

  private power(node: BinaryNode): Kind {
    const base = plainOf(this.of(node.left));
    const exponent = plainOf(this.of(node.right));
    if (!isPlain(exponent)) {
      this.stop(`A power must be a plain number; this is ${this.quoted(node.right, exponent)}.`, node.right);
    }
    if (isPlain(base)) return PLAIN;
    if (base.point) this.stop("A temperature on a thermometer cannot be raised to a power.", node);
    const raised = constantOf(node.right);
    if (raised === null || !Number.isInteger(raised * 2)) {
      const what = this.quoted(node.left, base);
      this.stop(
        `The power of ${what} must be written as a whole or half number, such as 2 or 0.5.`,
        node.right,
      );
    }
    return powerOf(base, raised ?? 1);
  }

  private same(whole: Place, nodes: readonly Node[], say: (a: string, b: string) => string): Kind {
    const kinds = nodes.map((node) => this.of(node));
    const at = kinds.findIndex((kind) => kind !== "zero");
    const [first, leader] = [kinds[at], nodes[at]];
    if (first === undefined || first === "zero" || !leader) return "zero";
    for (const [index, node] of nodes.entries()) {
      const kind = kinds[index] ?? "zero";
      if (kind === "zero" && first.point)
        this.stop("Write 0 degC or 0 degF; a 0 alone is no temperature.", node);
      if (kind !== "zero" && !sameDimension(first, kind)) {
        this.stop(say(this.quoted(leader, first), this.quoted(node, kind)), whole);
      }
    }
    return first;
  }

  private call(node: CallNode): Kind {
    const row = FUNCTIONS.get(node.name);
    if (!row) return this.stop(`There is no function "${node.name}".`, node);
    const { signature } = row;
    if (signature.rule === "alike") {
      return this.same(
        node,
        node.args,
        (a, b) => `${node.name} needs one kind of quantity: here ${a}, there ${b}.`,
      );
    }
    if (signature.rule === "fixed") return this.fixed(row, signature, node);
    const under = plainOf(node.args[0] ? this.of(node.args[0]) : "zero");
    if (under.point) this.stop("A temperature on a thermometer has no square root.", node);
    return powerOf(under, 0.5);
  }

  private fixed(
    row: FormulaFunction,
    signature: { takes: readonly string[]; gives: string },
    node: CallNode,
  ): Dimension {
    for (const [index, arg] of node.args.entries()) {
      const wanted = dimensionOfUnit(signature.takes[index] ?? "1");
      const kind = this.of(arg);
      if (kind === "zero" && !wanted.point) continue;
      if (kind !== "zero" && sameDimension(wanted, kind)) continue;
      const place = node.args.length > 1 ? ` in place ${index + 1}` : "";
      this.stop(`${row.name} takes ${words(wanted)}${place}; this is ${this.quoted(arg, kind)}.`, arg);
    }
    return dimensionOfUnit(signature.gives);
  }
}

/** The value of a node made of plain numbers alone, or null. */
function constantOf(node: Node): number | null {
  if (node.kind === "literal") return node.hasUnit && !isPlain(node.dimension) ? null : node.value;
  if (node.kind === "unary" && node.sign === "-") {
    const of = constantOf(node.of);
    return of === null ? null : -of;
  }
  if (node.kind !== "binary" || node.sign !== "/") return null;
  const [above, below] = [constantOf(node.left), constantOf(node.right)];
  return above === null || below === null ? null : above / below;
}

/**
 * The dimension of what a formula gives.
 * @param dimensionOf the dimension of a name, or the reason why it cannot be read
 * @returns the dimension; `fitsAny` where the formula is a bare 0; or the first problem with its columns
 */
export function formulaDimension(
  formula: Formula,
  dimensionOf: (name: string) => Dimension | string,
):
  | { readonly ok: true; readonly dimension: Dimension; readonly fitsAny: boolean }
  | { readonly ok: false; readonly problem: FormulaProblem } {
  return orProblem(() => {
    const kind = new Inference(formula.text, dimensionOf).of(formula.root);
    return { dimension: plainOf(kind), fitsAny: kind === "zero" };
  });
}
