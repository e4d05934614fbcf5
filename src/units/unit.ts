// Unit expressions: "gal/min", "MJ/m2/day", "Pa s", "ft²", "gallons per minute", "sq ft".

import { type Dimension, PLAIN, powerOf, productOf } from "./dimension.ts";
import { type Lookup, lookUp, type MayBe, nearest } from "./lookup.ts";
import type { NamedUnit } from "./table.ts";

/** si = (value + offset) * factor. The offset is 0 for all but a temperature point in degC or degF. */
export type Unit = {
  readonly text: string;
  readonly factor: number;
  readonly offset: number;
  readonly dimension: Dimension;
};

export type Part = { readonly unit: NamedUnit; readonly power: number };

export type Parts = readonly Part[] | { readonly message: string; readonly word: string };

type Word = { readonly text: string; readonly joint: "" | " " | "*" | "/" };

const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  "⁻": "-",
  "¹": "1",
  "²": "2",
  "³": "3",
  "⁴": "4",
};
const POWER_WORDS: ReadonlyMap<string, number> = new Map(
  Object.entries({ sq: 2, square: 2, cu: 3, cubic: 3 }),
);
const LONGEST_NAME = 3;
const CACHE_LIMIT = 4000;

/** The text with plain spaces, straight quotes, digits for superscripts, and no dots of abbreviation. */
function tidy(text: string): string {
  return text
    .replace(/[⁻¹²³⁴]/g, (sign) => SUPERSCRIPTS[sign] ?? sign)
    .replace(/[′’‘]/g, "'")
    .replace(/[″“”]/g, '"')
    .replace(/\^/g, "")
    .replace(/([A-Za-z])\.(?=\s|\/|$)/g, "$1")
    .replace(/\s+/g, " ")
    .replace(/ ?\b(?:per) (?!cent)/g, "/")
    .replace(/ ?([/*·⋅×]) ?/g, "$1")
    .trim();
}

function wordsOf(text: string): Word[] {
  const words: Word[] = [];
  let joint: Word["joint"] = "";
  for (const piece of text.split(/([/*·⋅× ])/)) {
    if (piece === "/" || piece === " ") joint = piece;
    else if (/^[*·⋅×]$/.test(piece)) joint = "*";
    else words.push({ text: piece, joint });
  }
  return words;
}

function splitPower(word: string): { readonly name: string; readonly power: number } {
  const match = /^(.*[^\d-])(-?\d)$/.exec(word);
  return match ? { name: match[1] ?? word, power: Number(match[2]) } : { name: word, power: 1 };
}

type Taken = { readonly part: Part; readonly count: number } | { readonly refused: string | null };

function longestName(words: readonly Word[], at: number): { readonly found: Lookup; count: number } | null {
  for (let count = LONGEST_NAME; count > 1; count--) {
    const slice = words.slice(at, at + count);
    if (slice.length < count || slice.some((word, index) => index > 0 && word.joint !== " ")) continue;
    const found = lookUp(slice.map((word) => word.text).join(" "));
    if (found) return { found, count };
  }
  return null;
}

function takePart(words: readonly Word[], at: number): Taken {
  const word = words[at]?.text ?? "";
  const raised = POWER_WORDS.get(word.toLowerCase());
  const next = words[at + 1];
  if (raised !== undefined && next?.joint === " ") {
    const found = lookUp(next.text);
    if (found && "unit" in found) return { part: { unit: found.unit, power: raised }, count: 2 };
  }
  const long = longestName(words, at);
  if (long) {
    if ("refused" in long.found) return long.found;
    return { part: { unit: long.found.unit, power: 1 }, count: long.count };
  }
  const whole = lookUp(word);
  if (whole) return "refused" in whole ? whole : { part: { unit: whole.unit, power: 1 }, count: 1 };
  const { name, power } = splitPower(word);
  const found = power === 0 ? null : lookUp(name);
  if (!found) return { refused: null };
  return "refused" in found ? found : { part: { unit: found.unit, power }, count: 1 };
}

function unknownUnit(word: string, words: readonly Word[], mayBe?: MayBe): string {
  const near = nearest(word, words.length === 1 ? mayBe : undefined);
  return near === null
    ? `I do not know the unit "${word}".`
    : `I do not know "${word}". Did you mean ${near}?`;
}

/**
 * The named units of an expression with their powers, or the reason and the word that cannot be read.
 *
 * @param mayBe which units may have been meant by a single word that is none
 */
export function unitParts(text: string, mayBe?: MayBe): Parts {
  const clean = tidy(text);
  if (clean === "") return [];
  const whole = lookUp(clean);
  if (whole && "unit" in whole) return [{ unit: whole.unit, power: 1 }];
  const words = wordsOf(clean);
  const parts: Part[] = [];
  let divided = false;
  for (let at = 0; at < words.length; ) {
    const word = words[at];
    if (!word) break;
    if (word.joint === " " && divided) {
      return {
        message: `"${clean}" can be read in two ways. Write a / before each unit that divides.`,
        word: word.text,
      };
    }
    const taken = takePart(words, at);
    if ("refused" in taken) {
      return { message: taken.refused ?? unknownUnit(word.text, words, mayBe), word: word.text };
    }
    divided ||= word.joint === "/";
    parts.push(word.joint === "/" ? { ...taken.part, power: -taken.part.power } : taken.part);
    at += taken.count;
  }
  return parts;
}

/** The stored text of named units with their powers: "MJ/m2/day". */
export function textOfParts(parts: readonly Part[]): string {
  const written = ({ unit, power }: Part) =>
    Math.abs(power) === 1 ? unit.name : `${unit.name}${Math.abs(power)}`;
  const above = parts.filter(({ unit, power }) => power > 0 && unit.name !== "1").map(written);
  const below = parts.filter(({ unit, power }) => power < 0 && unit.name !== "1").map(written);
  return [above.join(" ") || "1", ...below].join("/");
}

function unitOf(parts: readonly Part[]): Unit {
  const [only] = parts;
  if (only && parts.length === 1 && only.power === 1) {
    const { name, factor, offset, dimension } = only.unit;
    return Object.freeze({ text: name, factor, offset, dimension });
  }
  let factor = 1;
  let dimension = PLAIN;
  for (const { unit, power } of parts) {
    // Division keeps a quotient such as gal/min to the last bit, where a negative power would not.
    factor = power < 0 ? factor / unit.factor ** -power : factor * unit.factor ** power;
    dimension = productOf(dimension, powerOf(unit.dimension, power));
  }
  return Object.freeze({ text: textOfParts(parts), factor, offset: 0, dimension: Object.freeze(dimension) });
}

const cache = new Map<string, Unit | null>();

/**
 * Reads a unit expression. A temperature scale standing alone is a point; within an expression it is a difference.
 * @param text units joined by space, `*`, `·` or `/`; "" and "1" are the plain unit
 * @returns the unit, its text in the form that is stored; null where the text is no unit
 */
export function parseUnit(text: string): Unit | null {
  const known = cache.get(text);
  if (known !== undefined) return known;
  const parts = unitParts(text);
  const unit = "message" in parts ? null : unitOf(parts);
  if (cache.size >= CACHE_LIMIT) cache.clear();
  cache.set(text, unit);
  return unit;
}

/** Why a text is no unit, in a sentence; null where it is one. */
export function unitProblem(text: string): string | null {
  const parts = unitParts(text);
  return "message" in parts ? parts.message : null;
}

function known(unitText: string): Unit {
  const unit = parseUnit(unitText);
  if (!unit) throw new RangeError(unitProblem(unitText) ?? `I do not know the unit "${unitText}".`);
  return unit;
}

/**
 * A number in coherent SI.
 * @param value [unitText]
 * @returns [SI]
 * @throws RangeError on an unknown unit
 */
export function toSi(value: number, unitText: string): number {
  const { factor, offset } = known(unitText);
  return (value + offset) * factor;
}

/**
 * A number in a unit.
 * @param si [SI]
 * @returns [unitText]
 * @throws RangeError on an unknown unit
 */
export function fromSi(si: number, unitText: string): number {
  const { factor, offset } = known(unitText);
  return si / factor - offset;
}

/**
 * The dimension of a unit expression.
 * @throws RangeError on an unknown unit
 */
export function dimensionOf(unitText: string): Dimension {
  return known(unitText).dimension;
}
