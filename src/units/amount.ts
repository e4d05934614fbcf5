// Sums, differences, products and quotients of typed amounts, keeping the unit that was typed.

import { isPlain, sameDimension } from "./dimension.ts";
import { kindWords } from "./suits.ts";
import { type Part, parseUnit, textOfParts, type Unit, unitParts } from "./unit.ts";

export type Amount = {
  readonly value: number;
  readonly unit: Unit;
  /** A number with no unit written. */
  readonly bare: boolean;
  /** Its unit came out of a product or quotient of two units, so nobody typed it. */
  readonly composed?: true;
  readonly start: number;
  readonly end: number;
};

/** Why a text cannot be read, with the place; caught in one place by the reader. */
export class ReadProblem extends Error {
  readonly start: number;
  readonly end: number;

  constructor(message: string, start: number, end: number) {
    super(message);
    this.start = start;
    this.end = end;
  }
}

/** A sum stays in a unit in which it ends within so many decimals. */
const KEPT_DECIMALS = 4;

/** A result without the last bits that arithmetic leaves: 0.6, not 0.6000000000000001. */
export function tidied(value: number): number {
  return Number(value.toPrecision(15));
}

function fail(message: string, a: Amount, b: Amount): never {
  throw new ReadProblem(message, Math.min(a.start, b.start), Math.max(a.end, b.end));
}

function checkAddable(a: Amount, b: Amount): void {
  if (a.bare !== b.bare) {
    const naked = a.bare ? a : b;
    throw new ReadProblem("This number has no unit, but the other one has.", naked.start, naked.end);
  }
  const same = a.unit.dimension.powers.every((power, index) => power === b.unit.dimension.powers[index]);
  if (!same) {
    const kinds = `${kindWords(a.unit.dimension)} and ${kindWords(b.unit.dimension)}`;
    fail(`These do not add up: ${kinds}.`, a, b);
  }
}

function inUnitOf(amount: Amount, unit: Unit): number {
  return amount.unit.text === unit.text ? amount.value : (amount.value * amount.unit.factor) / unit.factor;
}

/** a + sign * b in the unit of a, or of b where only there it is a short number: 6.25 ft, but 76 in. */
export function added(a: Amount, b: Amount, sign: 1 | -1): Amount {
  const place = { start: a.start, end: b.end };
  const inFirst = a.value + sign * inUnitOf(b, a.unit);
  if (a.unit.text === b.unit.text || isShort(inFirst)) return { ...a, ...place, value: tidied(inFirst) };
  const inSecond = inUnitOf(a, b.unit) + sign * b.value;
  return isShort(inSecond)
    ? { ...b, ...place, value: tidied(inSecond) }
    : { ...a, ...place, value: tidied(inFirst) };
}

function isShort(value: number): boolean {
  return Math.abs(value - Number(value.toFixed(KEPT_DECIMALS))) <= Math.abs(value) * 1e-13;
}

/** The unit of a difference of two readings of a thermometer. */
function differenceUnit(unit: Unit): Unit {
  return parseUnit(`delta ${unit.text}`) ?? unit;
}

function subtractPoints(a: Amount, b: Amount): Amount {
  const unit = differenceUnit(a.unit);
  const si = (a.value + a.unit.offset) * a.unit.factor - (b.value + b.unit.offset) * b.unit.factor;
  return { ...a, value: tidied(si / unit.factor), unit, end: b.end };
}

/** a + sign * b in the unit of a. */
export function sum(a: Amount, b: Amount, sign: 1 | -1): Amount {
  checkAddable(a, b);
  if (b.unit.dimension.point) {
    if (!a.unit.dimension.point || sign === 1) fail("Two readings of a thermometer do not add up.", a, b);
    return subtractPoints(a, b);
  }
  if (a.unit.dimension.point) {
    return { ...a, value: tidied(a.value + sign * inUnitOf(b, a.unit)), end: b.end };
  }
  return added(a, b, sign);
}

function mergedParts(a: Unit, b: Unit, sign: 1 | -1): Part[] {
  const powers = new Map<Part["unit"], number>();
  for (const [unit, direction] of [
    [a, 1],
    [b, sign],
  ] as const) {
    const parts = unitParts(unit.text);
    if ("message" in parts) continue;
    for (const part of parts) {
      powers.set(part.unit, (powers.get(part.unit) ?? 0) + direction * part.power);
    }
  }
  return [...powers].map(([unit, power]) => ({ unit, power })).filter(({ power }) => power !== 0);
}

function plainValue(amount: Amount): number {
  return amount.value * amount.unit.factor;
}

function checkProduct(a: Amount, b: Amount, sign: 1 | -1): void {
  if (a.unit.dimension.point || b.unit.dimension.point) {
    fail("A reading of a thermometer cannot be multiplied or divided.", a, b);
  }
  if (sign === -1 && b.value === 0) throw new ReadProblem("This divides by zero.", b.start, b.end);
  if (sign === -1 && a.bare && !isPlain(b.unit.dimension)) {
    fail("Dividing by a unit is unclear here. Put the division in brackets: (12/4) gal.", a, b);
  }
}

/** a * b, or a / b where sign is -1. */
export function product(a: Amount, b: Amount, sign: 1 | -1): Amount {
  checkProduct(a, b, sign);
  const place = { start: a.start, end: b.end, bare: a.bare && b.bare };
  const combined = (left: number, right: number) => tidied(sign === 1 ? left * right : left / right);
  if (b.bare) return { ...a, ...place, value: combined(a.value, b.value) };
  if (a.bare && sign === 1) return { ...b, ...place, value: combined(a.value, b.value) };
  if (isPlain(b.unit.dimension)) return { ...a, ...place, value: combined(a.value, plainValue(b)) };
  if (isPlain(a.unit.dimension) && sign === 1) {
    return { ...b, ...place, value: combined(plainValue(a), b.value) };
  }
  const unit = parseUnit(textOfParts(mergedParts(a.unit, b.unit, sign))) ?? a.unit;
  const size = combined(a.unit.factor, b.unit.factor) / unit.factor;
  // Where no unit was changed into another the size is 1 but for rounding, and the typed digits stay as they are.
  const value = combined(a.value, b.value) * (Math.abs(size - 1) < 1e-12 ? 1 : size);
  return { ...place, value: tidied(value), unit, composed: true };
}

/** Whether a unit is one that a person would write, not a leftover such as `ft2 in` or `Ah V`. */
export function isCleanUnit(unit: Unit): boolean {
  const parts = unitParts(unit.text);
  if ("message" in parts) return false;
  if (parts.filter(({ power }) => power > 0).length > 1) return false;
  const kinds = parts.map((part) => part.unit.dimension);
  return kinds.every((kind, index) => kinds.findIndex((other) => sameDimension(kind, other)) === index);
}
