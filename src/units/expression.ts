// Reads typed arithmetic over amounts: "2*55 gal", "(3+4) ft", "10 ft - 2 in", "6 ft 3 in".

import { type Amount, added, product, ReadProblem, sum } from "./amount.ts";
import { isCurrencyWord, isSameCurrency } from "./currency.ts";
import { isPlain, PLAIN, sameDimension } from "./dimension.ts";
import { MEASURES, type Measure, type MeasureName } from "./measures.ts";
import { foreignMoney, scanUnit } from "./scan-unit.ts";
import { scanNumber } from "./signs.ts";
import { parseUnit, type Unit } from "./unit.ts";

export type Context = {
  readonly locale: string;
  readonly currency: string;
  readonly measure: MeasureName | undefined;
  /** What a bare number is read in. */
  readonly bareUnit?: string;
  readonly notes: Set<string>;
};

type Cursor = { readonly text: string; readonly context: Context; at: number; depth: number };

const MOST_NESTED = 12;
/** The hyphen of "55-gal" or "1/4-in". */
const HYPHENED = /^[\d½¼¾]-[A-Za-z]/;
const PLAIN_UNIT: Unit = { text: "1", factor: 1, offset: 0, dimension: PLAIN };
function skipSpaces(cursor: Cursor): void {
  while (/\s/.test(cursor.text[cursor.at] ?? "")) cursor.at++;
}

/** The sign that comes next, past spaces; minus, times and divide in all their shapes. */
function nextSign(cursor: Cursor): string {
  skipSpaces(cursor);
  const sign = cursor.text[cursor.at] ?? "";
  if (/[-−–]/.test(sign)) return "-";
  if (/[*×·⋅]/.test(sign)) return "*";
  if (/[xX]/.test(sign) && /^[xX]\s*[\d(.]/.test(cursor.text.slice(cursor.at))) return "*";
  return sign === "÷" ? "/" : sign;
}

function stuck(cursor: Cursor): never {
  skipSpaces(cursor);
  const { text, at } = cursor;
  const rest = text.slice(at).trimEnd();
  if (rest === "") throw new ReadProblem("Something is missing at the end.", Math.max(0, at - 1), at);
  const unit = scanUnit(text, at, cursor.context.currency);
  if (unit && "unit" in unit) {
    throw new ReadProblem(`A number is missing before "${text.slice(at, unit.end)}".`, at, unit.end);
  }
  const followsSign = /[/*]\s*$/.test(text.slice(0, at));
  if (unit && followsSign) throw new ReadProblem(unit.message, unit.start, unit.end);
  throw new ReadProblem(`I cannot read "${rest}" here.`, at, at + rest.length);
}

/** A thermometer's letter where a temperature is asked, since nobody means coulombs there. */
function scaleLetter(cursor: Cursor): { readonly unit: Unit; readonly end: number } | null {
  if (cursor.context.measure !== "temperature") return null;
  const match = /^([CcFf])(?![A-Za-z])/.exec(cursor.text.slice(cursor.at));
  const unit = match ? parseUnit(`deg${match[1]?.toUpperCase()}`) : null;
  return unit && { unit, end: cursor.at + 1 };
}

/** Units that make what is asked for, alone or one times the other; a share is written of anything. */
function mayMean(measure: MeasureName): ((unit: Pick<Unit, "dimension">) => boolean) | undefined {
  const { si, pressureAsHead }: Measure = MEASURES[measure];
  const asked = parseUnit(si)?.dimension;
  if (!asked || isPlain(asked)) return undefined;
  const others = [si === "m2" || si === "m3" ? "m" : null, pressureAsHead ? "Pa" : null];
  const may = [asked, ...others.flatMap((unit) => (unit ? (parseUnit(unit)?.dimension ?? []) : []))];
  return ({ dimension }) => may.some((one) => sameDimension(one, dimension));
}

function readUnit(cursor: Cursor): Unit | null {
  const before = cursor.at;
  if (HYPHENED.test(cursor.text.slice(Math.max(0, before - 1), before + 2))) cursor.at++;
  skipSpaces(cursor);
  const { currency, measure } = cursor.context;
  const scanned =
    scaleLetter(cursor) ?? scanUnit(cursor.text, cursor.at, currency, measure && mayMean(measure));
  if (!scanned) {
    cursor.at = before;
    return null;
  }
  if ("message" in scanned) throw new ReadProblem(scanned.message, scanned.start, scanned.end);
  cursor.at = scanned.end;
  return scanned.unit;
}

function readNumber(cursor: Cursor): number | null {
  const scanned = scanNumber(cursor.text, cursor.at, cursor.context.locale);
  if (!scanned) return null;
  if ("message" in scanned) throw new ReadProblem(scanned.message, scanned.start, scanned.end);
  if (scanned.note !== undefined) cursor.context.notes.add(scanned.note);
  cursor.at = scanned.end;
  return scanned.value;
}

/** The length of a money sign or code before a number, 0 where there is none. */
function moneyBefore(cursor: Cursor): number {
  const { text, at, context } = cursor;
  const own = context.currency !== "" && text.startsWith(context.currency, at);
  const word = own ? context.currency : (/^(?:[$€£¥₹]|[A-Z]{3}(?=[\s\d]))/.exec(text.slice(at))?.[0] ?? "");
  if (word === "" || !(own || isCurrencyWord(word))) return 0;
  if (!isSameCurrency(word, context.currency)) {
    const problem = foreignMoney(text, { start: at, end: at + word.length }, context.currency);
    if ("message" in problem) throw new ReadProblem(problem.message, problem.start, problem.end);
  }
  return word.length;
}

/** "$35", "$0.01/gal", "USD 35". */
function readMoney(cursor: Cursor, length: number): Amount {
  const start = cursor.at;
  cursor.at += length;
  skipSpaces(cursor);
  const value = readNumber(cursor);
  if (value === null) stuck(cursor);
  const quotient = /^\s*(?:\/|per\b)\s*(?=[A-Za-z])/.exec(cursor.text.slice(cursor.at))?.[0];
  const money = parseUnit("money") ?? PLAIN_UNIT;
  if (quotient === undefined) return { value, unit: money, bare: false, start, end: cursor.at };
  cursor.at += quotient.length;
  const below = readUnit(cursor);
  const unit = below && parseUnit(`money/${below.text}`);
  if (!unit) stuck(cursor);
  return { value, unit, bare: false, start, end: cursor.at };
}

/** The next smaller part of "6 ft 3 in" or "7 h 40 min", or null where the amount ends. */
function nextPart(cursor: Cursor, first: Amount): Amount | null {
  skipSpaces(cursor);
  const start = cursor.at;
  const value = readNumber(cursor);
  if (value === null) return null;
  const end = cursor.at;
  const unit = readUnit(cursor);
  if (!unit) throw new ReadProblem("Add a unit after this number.", start, end);
  const fits = sameDimension(unit.dimension, first.unit.dimension) && unit.factor < first.unit.factor;
  if (!fits || unit.dimension.point) {
    throw new ReadProblem(`${unit.text} cannot follow ${first.unit.text} like this.`, start, cursor.at);
  }
  return { value, unit, bare: false, start, end: cursor.at };
}

function readAmount(cursor: Cursor): Amount {
  const start = cursor.at;
  const money = moneyBefore(cursor);
  if (money > 0) return readMoney(cursor, money);
  const value = readNumber(cursor);
  if (value === null) stuck(cursor);
  const unit = readUnit(cursor);
  let whole: Amount = { value, unit: unit ?? PLAIN_UNIT, bare: unit === null, start, end: cursor.at };
  if (whole.bare) return whole;
  for (let part = nextPart(cursor, whole); part; part = nextPart(cursor, whole))
    whole = added(whole, part, 1);
  return whole;
}

function readBracket(cursor: Cursor): Amount {
  const start = cursor.at++;
  if (++cursor.depth > MOST_NESTED) throw new ReadProblem("Too many brackets.", start, start + 1);
  const inner = readSum(cursor);
  if (nextSign(cursor) !== ")") {
    throw new ReadProblem("This bracket is not closed.", start, start + 1);
  }
  cursor.at++;
  cursor.depth--;
  const unit = inner.bare ? readUnit(cursor) : null;
  const place = { start, end: cursor.at };
  return unit ? { ...inner, unit, bare: false, ...place } : { ...inner, ...place };
}

function readFactor(cursor: Cursor): Amount {
  const sign = nextSign(cursor);
  if (sign === "(") return readBracket(cursor);
  if (sign !== "-" && sign !== "+") return readAmount(cursor);
  const start = cursor.at++;
  if (/[-+−–]/.test(nextSign(cursor))) stuck(cursor);
  const inner = readFactor(cursor);
  return { ...inner, value: sign === "-" ? -inner.value : inner.value, start };
}

function readProduct(cursor: Cursor): Amount {
  let left = readFactor(cursor);
  for (let sign = nextSign(cursor); sign === "*" || sign === "/"; sign = nextSign(cursor)) {
    cursor.at++;
    left = product(left, readFactor(cursor), sign === "*" ? 1 : -1);
  }
  return left;
}

/** One unit does for both of "100+150 gal", where a bare number would be read in it anyway. */
function alike(a: Amount, b: Amount, { bareUnit }: Context): readonly [Amount, Amount] {
  if (a.bare === b.bare) return [a, b];
  const { unit } = a.bare ? b : a;
  if (unit.dimension.point || bareUnit === undefined || parseUnit(bareUnit)?.text !== unit.text)
    return [a, b];
  return [
    { ...a, unit, bare: false },
    { ...b, unit, bare: false },
  ];
}

function readSum(cursor: Cursor): Amount {
  let left = readProduct(cursor);
  for (let sign = nextSign(cursor); sign === "+" || sign === "-"; sign = nextSign(cursor)) {
    cursor.at++;
    left = sum(...alike(left, readProduct(cursor), cursor.context), sign === "+" ? 1 : -1);
  }
  return left;
}

/**
 * The amount that a whole text means.
 * @throws ReadProblem where some of it cannot be read
 */
export function readExpression(text: string, context: Context): Amount {
  const cursor: Cursor = { text, context, at: 0, depth: 0 };
  const amount = readSum(cursor);
  skipSpaces(cursor);
  if (cursor.at < text.length) stuck(cursor);
  return amount;
}
