// Sums, differences, products and quotients of typed amounts, keeping the unit that was typed.

import { isPlain, sameDimension } from "./dimension.ts";
import { kindWords } from "./suits.ts";
import { type Part, parseUnit, textOfParts, type Unit, unitParts } from "./unit.ts";

export type Amount = {
  readonly value: number;
  readonly unit: Unit;
  /** A number with no unit written. */
  readonly bare: boolean;
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

/** A result without the last bits that arithmetic leaves: 0.6, not 0.6000000000000001. */
export function tidied(value: number): number {
  return Number(value.toPrecision(14));
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
  return { ...a, value: tidied(a.value + sign * inUnitOf(b, a.unit)), end: b.end };
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

const plainUnit = (unit: Unit) => isPlain(unit.dimension);

function plainValue(amount: Amount): number {
  return amount.value * amount.unit.factor;
}

/** a * b, or a / b where sign is -1. */
export function product(a: Amount, b: Amount, sign: 1 | -1): Amount {
  for (const amount of [a, b]) {
    if (amount.unit.dimension.point)
      fail("A reading of a thermometer cannot be multiplied or divided.", a, b);
  }
  if (sign === -1 && b.value === 0) throw new ReadProblem("This divides by zero.", b.start, b.end);
  const place = { start: a.start, end: b.end, bare: a.bare && b.bare };
  const raise = (value: number) => (sign === 1 ? value : 1 / value);
  if (b.bare) {
    return { ...place, value: tidied(sign === 1 ? a.value * b.value : a.value / b.value), unit: a.unit };
  }
  if (a.bare && sign === 1) return { ...place, value: tidied(a.value * b.value), unit: b.unit };
  if (plainUnit(b.unit)) return { ...place, value: tidied(a.value * raise(plainValue(b))), unit: a.unit };
  if (plainUnit(a.unit) && sign === 1)
    return { ...place, value: tidied(plainValue(a) * b.value), unit: b.unit };
  const unit = parseUnit(textOfParts(mergedParts(a.unit, b.unit, sign))) ?? a.unit;
  const si = a.value * a.unit.factor * raise(b.value * b.unit.factor);
  return { ...place, value: tidied(si / unit.factor), unit };
}

/** Whether a unit is one that a person would write, not a leftover such as `ft2 in`. */
export function isCleanUnit(unit: Unit): boolean {
  const parts = unitParts(unit.text);
  if ("message" in parts) return false;
  const kinds = parts.map((part) => part.unit.dimension);
  return kinds.every((kind, index) => kinds.findIndex((other) => sameDimension(kind, other)) === index);
}
