// The one lexical pass over a formula. It never stops at what it cannot read: that becomes a token of its own, so that
// names can still be found in a text that is wrong elsewhere.

import { PLAIN } from "../units/dimension.ts";
import { frostAt, literalAt } from "./literal.ts";
import { type FormulaProblem, FormulaTrouble, type Literal, type NameNode, type Place } from "./tree.ts";

export type SignToken = Place & { readonly kind: "sign"; readonly sign: string };
export type BadToken = Place & { readonly kind: "bad"; readonly problem: FormulaProblem };
export type Token = Literal | NameNode | SignToken | BadToken;

const NAME_PATTERN = /^[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)?$/;
const WORD = /[\p{L}_][\p{L}\p{Nd}_]*(?:\.[\p{L}\p{Nd}_]+)*/uy;
const SPACE = /[\s\u00a0]+/y;
const TWO = new Set(["<=", ">=", "==", "!="]);
const ONE = new Set(["+", "-", "*", "/", "^", "<", ">", "(", ")", ",", "?", ":"]);
const WORDS = new Set(["and", "or", "not"]);
/** Signs as the working shows them, so that a shown relation can be typed back. */
const TYPESET: ReadonlyMap<string, string> = new Map([
  ["×", "*"],
  ["÷", "/"],
  ["−", "-"],
  ["≤", "<="],
  ["≥", ">="],
  ["≠", "!="],
]);
const POWERS: ReadonlyMap<string, number> = new Map([
  ["²", 2],
  ["³", 3],
]);

const REASONS: ReadonlyMap<string, string> = new Map([
  ["=", "A single = is not used here. Write == to ask whether two things are equal."],
  ['"', "Text in quotes cannot stand in a formula."],
  ["'", "Text in quotes cannot stand in a formula."],
  ["`", "Text in quotes cannot stand in a formula."],
  [";", "A formula is one relation; leave out the semicolon."],
  ["[", "Lists and square brackets cannot stand in a formula. Use round brackets."],
  ["]", "Lists and square brackets cannot stand in a formula. Use round brackets."],
  ["{", "Use round brackets in a formula."],
  ["}", "Use round brackets in a formula."],
  ["!", "Write != for unequal and not for the opposite; ! alone is not used here."],
  ["|", "Write or between two conditions."],
  ["&", "Write and between two conditions."],
  ["%", "A % belongs directly after a number, as in 90 %."],
  [".", "A dot belongs inside a number or between a card and its quantity, without spaces."],
]);

function bad(message: string, start: number, end: number): BadToken {
  return { kind: "bad", start, end, problem: { message, start, end } };
}

function wordToken(word: string, start: number): Token {
  const end = start + word.length;
  if (WORDS.has(word)) return { kind: "sign", sign: word, start, end };
  if (!NAME_PATTERN.test(word)) {
    return bad(
      `"${word}" is not a name. A name has small letters, digits and _, with one dot between a card and its quantity.`,
      start,
      end,
    );
  }
  // A name that every object answers to would let a careless reader find something that no one entered.
  if (word.split(".").some((part) => part in Object.prototype)) {
    return bad(`"${word}" cannot be used as a name in a formula.`, start, end);
  }
  return { kind: "name", name: word, start, end };
}

function signToken(text: string, at: number): Token {
  const two = text.slice(at, at + 2);
  if (TWO.has(two)) return { kind: "sign", sign: two, start: at, end: at + 2 };
  const one = String.fromCodePoint(text.codePointAt(at) ?? 0);
  const end = at + one.length;
  const sign = TYPESET.get(one) ?? (ONE.has(one) ? one : null);
  if (sign !== null) return { kind: "sign", sign, start: at, end };
  return bad(REASONS.get(one) ?? `The sign "${one}" is not used in formulas.`, at, end);
}

function readToken(text: string, at: number, currency: string, before: Token | undefined): Token {
  try {
    const afterDivision = before?.kind === "sign" && (before.sign === "/" || before.sign === "^");
    const leads = before === undefined || (before.kind === "sign" && before.sign !== ")");
    const frost = leads ? frostAt(text, at, currency) : null;
    const literal = frost ?? literalAt(text, at, currency, afterDivision);
    if (literal) return literal;
  } catch (trouble) {
    if (!(trouble instanceof FormulaTrouble)) throw trouble;
    const { problem } = trouble;
    return { kind: "bad", start: at, end: Math.max(problem.end, at + 1), problem };
  }
  WORD.lastIndex = at;
  const word = WORD.exec(text);
  return word ? wordToken(word[0], at) : signToken(text, at);
}

function superscript(text: string, at: number): Token[] | null {
  const power = POWERS.get(text.charAt(at));
  if (power === undefined) return null;
  const place = { start: at, end: at + 1 };
  return [
    { kind: "sign", sign: "^", ...place },
    {
      kind: "literal",
      value: power,
      dimension: PLAIN,
      shown: String(power),
      bareZero: false,
      hasUnit: false,
      ...place,
    },
  ];
}

/**
 * Every token of a text, in order, without gaps but spaces.
 * @param currency the worksheet's money sign or code
 */
export function scanTokens(text: string, currency: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  while (at < text.length) {
    SPACE.lastIndex = at;
    const space = SPACE.exec(text);
    if (space) {
      at += space[0].length;
      continue;
    }
    const raised = superscript(text, at);
    if (raised) {
      tokens.push(...raised);
      at += 1;
      continue;
    }
    const token = readToken(text, at, currency, tokens.at(-1));
    tokens.push(token);
    at = token.end;
  }
  return tokens;
}
