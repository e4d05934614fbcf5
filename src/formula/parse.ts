// From tokens in good order to a tree. The parser package sees placeholders and signs only, is used for precedence
// alone, and its list of instructions is taken over by an allow-list; nothing of it is ever evaluated.

import { Parser } from "expr-eval";
import { type Calls, JOINTS } from "./grammar.ts";
import type { Token } from "./tokens.ts";
import { type BinarySign, FormulaTrouble, type Node, type Place } from "./tree.ts";

type Instruction = { readonly type: unknown; readonly value: unknown };
type Callee = Place & { readonly kind: "callee"; readonly name: string };

/** A copy without a prototype, so that no inherited name is found by `in`. */
function bare<T>(entries: Readonly<Record<string, T>>): Record<string, T> {
  return Object.assign(Object.create(null), entries);
}

const OFF = [
  "assignment",
  "fndef",
  "concatenate",
  "in",
  "array",
  "length",
  "random",
  "factorial",
  "remainder",
];
const ON = ["add", "subtract", "multiply", "divide", "power", "comparison", "conditional", "logical"];

function lockedParser(): Parser {
  const operators = bare(
    Object.fromEntries([...OFF.map((name) => [name, false]), ...ON.map((name) => [name, true])]),
  );
  const parser = new Parser({ allowMemberAccess: false, operators });
  const refuse = () => Number.NaN;
  const tables = {
    unaryOps: bare({ "-": refuse, not: refuse }),
    binaryOps: bare({ and: refuse, or: refuse }),
    ternaryOps: bare({ "?": refuse }),
    functions: bare({}),
    consts: bare({}),
  };
  return Object.freeze(Object.assign(parser, tables));
}

const PARSER = lockedParser();
function isBinary(value: unknown): value is BinarySign {
  return JOINTS.has(value);
}

class Walk {
  readonly tokens: readonly Token[];
  readonly calls: Calls;
  readonly whole: Place;

  constructor(tokens: readonly Token[], calls: Calls, whole: Place) {
    this.tokens = tokens;
    this.calls = calls;
    this.whole = whole;
  }

  refuse(): never {
    throw new FormulaTrouble("This cannot be read as a formula.", this.whole);
  }

  tree(instructions: unknown): Node {
    if (!Array.isArray(instructions)) return this.refuse();
    const stack: (Node | Callee | readonly unknown[])[] = [];
    for (const instruction of instructions as readonly Instruction[]) {
      if (instruction.type === "IEXPR" && Array.isArray(instruction.value)) stack.push(instruction.value);
      else stack.push(this.step(instruction, stack));
    }
    const root = this.node(stack.pop());
    return stack.length === 0 ? root : this.refuse();
  }

  private node(entry: Node | Callee | readonly unknown[] | undefined): Node {
    if (entry === undefined || (!Array.isArray(entry) && (entry as Callee).kind === "callee"))
      return this.refuse();
    return Array.isArray(entry) ? this.tree(entry) : (entry as Node);
  }

  private step({ type, value }: Instruction, stack: (Node | Callee | readonly unknown[])[]): Node | Callee {
    if (type === "IVAR") return this.operand(value);
    if (type === "IOP1" && (value === "-" || value === "not")) {
      const of = this.node(stack.pop());
      return Object.freeze({
        kind: "unary",
        sign: value,
        of,
        start: this.signBefore(of.start, value),
        end: of.end,
      });
    }
    if (type === "IOP2" && isBinary(value)) {
      const right = this.node(stack.pop());
      const left = this.node(stack.pop());
      return Object.freeze({ kind: "binary", sign: value, left, right, start: left.start, end: right.end });
    }
    if (type === "IOP3" && value === "?") {
      const no = this.node(stack.pop());
      const yes = this.node(stack.pop());
      const condition = this.node(stack.pop());
      return Object.freeze({ kind: "choice", condition, yes, no, start: condition.start, end: no.end });
    }
    return type === "IFUNCALL" && typeof value === "number" ? this.call(value, stack) : this.refuse();
  }

  private operand(value: unknown): Node | Callee {
    const index = typeof value === "string" && /^v\d+$/.test(value) ? Number(value.slice(1)) : -1;
    const token = this.tokens[index];
    if (token?.kind === "literal") return token;
    if (token?.kind !== "name") return this.refuse();
    return this.calls.has(index) ? { ...token, kind: "callee" } : Object.freeze(token);
  }

  private call(count: number, stack: (Node | Callee | readonly unknown[])[]): Node {
    const args = Array.from({ length: count }, () => this.node(stack.pop())).reverse();
    const callee = stack.pop();
    if (callee === undefined || Array.isArray(callee)) return this.refuse();
    const { kind, name, start } = callee as Callee;
    const called = [...this.calls].find(([index]) => this.tokens[index]?.start === start)?.[1];
    if (kind !== "callee" || !called) return this.refuse();
    return Object.freeze({ kind: "call", name, args: Object.freeze(args), start, end: called.end });
  }

  private signBefore(start: number, sign: string): number {
    const before = this.tokens.filter(
      (token) => token.kind === "sign" && token.sign === sign && token.end <= start,
    );
    return before.at(-1)?.start ?? start;
  }
}

/**
 * The tree of tokens that have passed the grammar.
 * @throws FormulaTrouble where the parser brings anything that is not on the list
 */
export function parseTokens(tokens: readonly Token[], calls: Calls, whole: Place): Node {
  const source = tokens.map((token, index) => (token.kind === "sign" ? token.sign : `v${index}`)).join(" ");
  const walk = new Walk(tokens, calls, whole);
  let parsed: { readonly tokens?: unknown };
  try {
    parsed = PARSER.parse(source) as unknown as { readonly tokens?: unknown };
  } catch {
    return walk.refuse();
  }
  return walk.tree(parsed.tokens);
}
