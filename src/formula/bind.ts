// A formula as nested closures over a Float64Array. No code is made from text, so the strictest page policy allows it.

import { FUNCTIONS } from "./functions.ts";
import type { ArithmeticSign, BinaryNode, BinarySign, CallNode, Formula, Node } from "./tree.ts";

export type Evaluator = (values: Float64Array) => number;

/** A leaf is kept apart from other closures, so that the commonest shapes need no inner call. */
type Part =
  | { readonly is: "slot"; readonly slot: number }
  | { readonly is: "constant"; readonly value: number }
  | { readonly is: "work"; readonly run: Evaluator };

type Shapes = {
  readonly slotSlot: (a: number, b: number) => Evaluator;
  readonly slotConstant: (a: number, b: number) => Evaluator;
  readonly constantSlot: (a: number, b: number) => Evaluator;
  readonly workSlot: (a: Evaluator, b: number) => Evaluator;
  readonly workConstant: (a: Evaluator, b: number) => Evaluator;
  readonly workWork: (a: Evaluator, b: Evaluator) => Evaluator;
};

// The slots come from the caller's own table and are in range; the casts spare a check in the innermost loop.
const ADD: Shapes = {
  slotSlot: (a, b) => (v) => (v[a] as number) + (v[b] as number),
  slotConstant: (a, b) => (v) => (v[a] as number) + b,
  constantSlot: (a, b) => (v) => a + (v[b] as number),
  workSlot: (a, b) => (v) => a(v) + (v[b] as number),
  workConstant: (a, b) => (v) => a(v) + b,
  workWork: (a, b) => (v) => a(v) + b(v),
};
const SUBTRACT: Shapes = {
  slotSlot: (a, b) => (v) => (v[a] as number) - (v[b] as number),
  slotConstant: (a, b) => (v) => (v[a] as number) - b,
  constantSlot: (a, b) => (v) => a - (v[b] as number),
  workSlot: (a, b) => (v) => a(v) - (v[b] as number),
  workConstant: (a, b) => (v) => a(v) - b,
  workWork: (a, b) => (v) => a(v) - b(v),
};
const MULTIPLY: Shapes = {
  slotSlot: (a, b) => (v) => (v[a] as number) * (v[b] as number),
  slotConstant: (a, b) => (v) => (v[a] as number) * b,
  constantSlot: (a, b) => (v) => a * (v[b] as number),
  workSlot: (a, b) => (v) => a(v) * (v[b] as number),
  workConstant: (a, b) => (v) => a(v) * b,
  workWork: (a, b) => (v) => a(v) * b(v),
};
const DIVIDE: Shapes = {
  slotSlot: (a, b) => (v) => (v[a] as number) / (v[b] as number),
  slotConstant: (a, b) => (v) => (v[a] as number) / b,
  constantSlot: (a, b) => (v) => a / (v[b] as number),
  workSlot: (a, b) => (v) => a(v) / (v[b] as number),
  workConstant: (a, b) => (v) => a(v) / b,
  workWork: (a, b) => (v) => a(v) / b(v),
};
const SHAPES: Readonly<Record<Exclude<ArithmeticSign, "^">, Shapes>> = {
  "+": ADD,
  "-": SUBTRACT,
  "*": MULTIPLY,
  "/": DIVIDE,
};

const OTHERS: Readonly<
  Record<Exclude<BinarySign, keyof typeof SHAPES>, (a: Evaluator, b: Evaluator) => Evaluator>
> = {
  "^": (a, b) => (v) => a(v) ** b(v),
  "<": (a, b) => (v) => (a(v) < b(v) ? 1 : 0),
  "<=": (a, b) => (v) => (a(v) <= b(v) ? 1 : 0),
  ">": (a, b) => (v) => (a(v) > b(v) ? 1 : 0),
  ">=": (a, b) => (v) => (a(v) >= b(v) ? 1 : 0),
  "==": (a, b) => (v) => (a(v) === b(v) ? 1 : 0),
  "!=": (a, b) => (v) => (a(v) !== b(v) ? 1 : 0),
  and: (a, b) => (v) => (a(v) !== 0 && b(v) !== 0 ? 1 : 0),
  or: (a, b) => (v) => (a(v) !== 0 || b(v) !== 0 ? 1 : 0),
};

const NOTHING = new Float64Array(0);

function evaluatorOf(part: Part): Evaluator {
  if (part.is === "work") return part.run;
  if (part.is === "constant") {
    const { value } = part;
    return () => value;
  }
  const { slot } = part;
  return (values) => values[slot] as number;
}

function work(run: Evaluator): Part {
  return { is: "work", run };
}

function arithmetic(shapes: Shapes, left: Part, right: Part): Evaluator {
  if (left.is === "slot" && right.is === "slot") return shapes.slotSlot(left.slot, right.slot);
  if (left.is === "slot" && right.is === "constant") return shapes.slotConstant(left.slot, right.value);
  if (left.is === "constant" && right.is === "slot") return shapes.constantSlot(left.value, right.slot);
  if (right.is === "slot") return shapes.workSlot(evaluatorOf(left), right.slot);
  if (right.is === "constant") return shapes.workConstant(evaluatorOf(left), right.value);
  return shapes.workWork(evaluatorOf(left), right.run);
}

class Binder {
  readonly slotOf: (name: string) => number;

  constructor(slotOf: (name: string) => number) {
    this.slotOf = slotOf;
  }

  part(node: Node): Part {
    switch (node.kind) {
      case "literal":
        return { is: "constant", value: node.value };
      case "name":
        return { is: "slot", slot: this.slotOf(node.name) };
      case "unary": {
        const of = this.evaluator(node.of);
        return work(node.sign === "-" ? (v) => -of(v) : (v) => (of(v) === 0 ? 1 : 0));
      }
      case "binary":
        return this.binary(node);
      case "choice": {
        const [condition, yes, no] = [node.condition, node.yes, node.no].map((each) => this.evaluator(each));
        if (!condition || !yes || !no) throw new TypeError("A choice has three parts.");
        return work((v) => (condition(v) !== 0 ? yes(v) : no(v)));
      }
      default:
        return work(this.call(node));
    }
  }

  evaluator(node: Node): Evaluator {
    return evaluatorOf(this.part(node));
  }

  private binary({ sign, left, right }: BinaryNode): Part {
    const [a, b] = [this.part(left), this.part(right)];
    const run =
      sign === "+" || sign === "-" || sign === "*" || sign === "/"
        ? arithmetic(SHAPES[sign], a, b)
        : OTHERS[sign](evaluatorOf(a), evaluatorOf(b));
    return a.is === "constant" && b.is === "constant" ? { is: "constant", value: run(NOTHING) } : work(run);
  }

  private call(node: CallNode): Evaluator {
    const run = FUNCTIONS.get(node.name)?.run;
    if (!run) throw new TypeError(`There is no function "${node.name}".`);
    const args = node.args.map((arg) => this.evaluator(arg));
    const [a, b, c] = args;
    if (a && args.length === 1) return (v) => run(a(v));
    if (a && b && args.length === 2) return (v) => run(a(v), b(v));
    if (a && b && c && args.length === 3) return (v) => run(a(v), b(v), c(v));
    return (v) => run(...args.map((arg) => arg(v)));
  }
}

/**
 * A formula as a function of an array of SI numbers.
 * @param slotOf the index in the array at which a name's number stands
 * @returns a function giving the value in SI, 1 or 0 for a condition; it may give a non-finite number, and a physics
 * function inside may throw its DomainError
 */
export function bindFormula(formula: Formula, slotOf: (name: string) => number): Evaluator {
  return new Binder(slotOf).evaluator(formula.root);
}
