// Whether tokens stand in an order that makes a formula, with the place marked where they do not. The parser behind
// never says where it stumbled; after this check it does not stumble.

import { argumentBounds, type FormulaFunction, FUNCTIONS } from "./functions.ts";
import type { SignToken, Token } from "./tokens.ts";
import { FormulaTrouble, type Literal, type NameNode, type Place } from "./tree.ts";

export const LONGEST = 500;
const DEEPEST = 40;

/** A function name among the tokens, by its index there, with the end of its closing bracket. */
export type Calls = ReadonlyMap<number, { readonly row: FormulaFunction; readonly end: number }>;

type Frame = {
  readonly kind: "group" | "call" | "choice";
  readonly place: Place;
  readonly index: number;
  readonly row: FormulaFunction | null;
  commas: number;
};

/** Operators between two values. */
export const JOINTS: ReadonlySet<unknown> = new Set([
  "+",
  "-",
  "*",
  "/",
  "^",
  "<",
  "<=",
  ">",
  ">=",
  "==",
  "!=",
  "and",
  "or",
]);

/** A token as a sentence about it has it. */
function asWord(token: Token): string {
  if (token.kind === "sign") return token.sign;
  if (token.kind === "name") return token.name;
  return token.kind === "literal" ? token.shown : "this";
}

class Checker {
  readonly tokens: readonly Token[];
  readonly frames: Frame[] = [];
  readonly calls = new Map<number, { row: FormulaFunction; end: number }>();
  wantsValue = true;
  prefixes = 0;

  constructor(tokens: readonly Token[]) {
    this.tokens = tokens;
  }

  run(): Calls {
    for (const [index, token] of this.tokens.entries()) {
      if (token.kind === "bad") throw new FormulaTrouble(token.problem.message, token.problem);
      if (this.wantsValue) this.value(token, index);
      else this.joint(token);
      this.checkDepth(token);
    }
    this.finish();
    return this.calls;
  }

  private checkDepth(place: Place): void {
    if (this.frames.length + this.prefixes > DEEPEST) {
      throw new FormulaTrouble(`This formula goes more than ${DEEPEST} brackets or signs deep.`, place);
    }
  }

  private value(token: Literal | NameNode | SignToken, index: number): void {
    if (token.kind === "literal") this.done();
    else if (token.kind === "name") this.name(token, index);
    else if (token.sign === "-" || token.sign === "not") this.prefixes += 1;
    else if (token.sign === "(") this.open(token, index);
    else this.missing(token, index);
  }

  private done(): void {
    this.wantsValue = false;
    this.prefixes = 0;
  }

  private name(token: NameNode, index: number): void {
    const next = this.tokens[index + 1];
    if (next?.kind !== "sign" || next.sign !== "(") {
      this.done();
      return;
    }
    if (!FUNCTIONS.has(token.name)) {
      const known = token.name.includes(".")
        ? "A quantity of a card cannot be called"
        : "There is no function";
      throw new FormulaTrouble(
        `${known} "${token.name}". Leave out the bracket, or write a sign before it.`,
        token,
      );
    }
  }

  private open(token: SignToken, index: number): void {
    const before = this.tokens[index - 1];
    const row = before?.kind === "name" ? FUNCTIONS.get(before.name) : undefined;
    this.frames.push({
      kind: row ? "call" : "group",
      place: row && before ? { start: before.start, end: token.end } : token,
      index: row ? index - 1 : index,
      row: row ?? null,
      commas: 0,
    });
    this.prefixes = 0;
  }

  private missing(token: SignToken, index: number): never {
    const frame = this.frames.at(-1);
    const before = this.tokens[index - 1];
    if (token.sign === ")" && frame?.row && frame.place.end === before?.end)
      this.wrongCount(frame, 0, token.end);
    if (!before) throw new FormulaTrouble(`Nothing stands before this ${token.sign}.`, token);
    throw new FormulaTrouble(`A number or a name is missing before this ${token.sign}.`, token);
  }

  private joint(token: Literal | NameNode | SignToken): void {
    if (token.kind !== "sign" || token.sign === "(" || token.sign === "not") {
      throw new FormulaTrouble(`A sign such as + or * is missing before ${asWord(token)}.`, token);
    }
    if (JOINTS.has(token.sign)) this.wantsValue = true;
    else if (token.sign === ")") this.close(token);
    else if (token.sign === ",") this.comma(token);
    else if (token.sign === "?") {
      this.frames.push({ kind: "choice", place: token, index: -1, row: null, commas: 0 });
      this.wantsValue = true;
    } else this.otherwise(token);
  }

  private otherwise(token: SignToken): void {
    if (this.frames.at(-1)?.kind !== "choice") {
      throw new FormulaTrouble("This : has no ? before it.", token);
    }
    this.frames.pop();
    this.wantsValue = true;
  }

  private comma(token: SignToken): void {
    const frame = this.frames.at(-1);
    if (frame?.kind === "choice") this.half(frame);
    if (frame?.kind !== "call") {
      throw new FormulaTrouble(
        "No commas inside numbers here; a comma only parts what a function takes.",
        token,
      );
    }
    frame.commas += 1;
    this.wantsValue = true;
  }

  private close(token: SignToken): void {
    const frame = this.frames.pop();
    if (!frame) throw new FormulaTrouble(`The bracket ) at place ${token.end} was never opened.`, token);
    if (frame.kind === "choice") this.half(frame);
    if (!frame.row) return;
    const { least, most } = argumentBounds(frame.row.signature);
    const count = frame.commas + 1;
    if (count < least || count > most) this.wrongCount(frame, count, token.end);
    this.calls.set(frame.index, { row: frame.row, end: token.end });
  }

  private half(frame: Frame): never {
    throw new FormulaTrouble("This ? has no : with what holds otherwise.", frame.place);
  }

  private wrongCount(frame: Frame, count: number, end: number): never {
    const { least, most } = argumentBounds(frame.row?.signature ?? { rule: "root" });
    const wanted = least === most ? `${least}` : `${least} to ${most}`;
    const message = `${frame.row?.name} takes ${wanted} ${most === 1 ? "number" : "numbers"}; here ${count === 1 ? "stands 1" : `stand ${count}`}.`;
    throw new FormulaTrouble(message, { start: frame.place.start, end });
  }

  private finish(): void {
    const last = this.tokens.at(-1);
    if (!last) throw new FormulaTrouble("There is no formula here.", { start: 0, end: 0 });
    if (this.wantsValue)
      throw new FormulaTrouble(`A number or a name is missing after ${asWord(last)}.`, last);
    const open = this.frames.at(-1);
    if (open?.kind === "choice") this.half(open);
    if (open)
      throw new FormulaTrouble(`The bracket ( at place ${open.place.end} is never closed.`, open.place);
  }
}

/**
 * Checks the order of the tokens.
 * @returns the functions called, by the index of their name among the tokens
 * @throws FormulaTrouble with the place marked
 */
export function checkGrammar(tokens: readonly Token[]): Calls {
  return new Checker(tokens).run();
}
