// A number as typed in a formula, with the unit that stands directly after it: "20 gal", "1 1/2 in", "90 %", "$35".

import { PLAIN, quotientOf } from "../units/dimension.ts";
import { scanUnit } from "../units/scan-unit.ts";
import { parseUnit, type Unit } from "../units/unit.ts";
import { FormulaTrouble, type Literal } from "./tree.ts";

const DECIMAL = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const MIXED = /(\d+)[ \u00a0]+(\d+)\/(\d+)(?![\d.])/y;
const FRACTION = /(\d+)\/(\d+)(?![\d.])/y;
const SPACE = /[ \u00a0\t]*/y;
/** Where a unit cannot go on: a spaced division, a product, a power, the next word of the language. */
const UNIT_STOP = /[ \u00a0]+\/|\/[ \u00a0]|[*×^÷]|[ \u00a0]+(?:and|or|not)(?![A-Za-z0-9_])/g;
const UNIT_ROOM = 60;

type Figures = { readonly value: number; readonly end: number; readonly isFraction: boolean };

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function parted(match: RegExpExecArray, start: number, whole: number, above: number, below: number): Figures {
  const end = start + match[0].length;
  if (below === 0) throw new FormulaTrouble("A fraction cannot have 0 below the line.", { start, end });
  return { value: whole + above / below, end, isFraction: true };
}

function figuresAt(text: string, start: number, currency: string): Figures | null {
  const mixed = matchAt(MIXED, text, start);
  if (mixed) return parted(mixed, start, Number(mixed[1]), Number(mixed[2]), Number(mixed[3]));
  const fraction = matchAt(FRACTION, text, start);
  if (fraction) {
    // Only a unit makes one number of it: 3/4 in is a size, 3/4 alone is a division with the same answer.
    const end = start + fraction[0].length;
    if (unitAt(text, end, currency))
      return parted(fraction, start, 0, Number(fraction[1]), Number(fraction[2]));
  }
  const decimal = matchAt(DECIMAL, text, start);
  if (!decimal) return null;
  return { value: Number(decimal[0]), end: start + decimal[0].length, isFraction: false };
}

function unitAt(
  text: string,
  after: number,
  currency: string,
): { readonly unit: Unit; readonly end: number } | null {
  const start = after + (matchAt(SPACE, text, after)?.[0].length ?? 0);
  UNIT_STOP.lastIndex = after;
  const stop = UNIT_STOP.exec(text)?.index ?? text.length;
  if (stop <= start) return null;
  const found = scanUnit(text.slice(0, Math.min(stop, start + UNIT_ROOM)), start, currency);
  if (found === null) return null;
  if ("message" in found) throw new FormulaTrouble(found.message, found);
  if (text[found.end] === "^") {
    throw new FormulaTrouble(
      "A power after a unit can be read in two ways. Write m2 for square metres, or (5 m)^2 to square the length.",
      { start, end: found.end + 1 },
    );
  }
  return found;
}

function made(
  text: string,
  start: number,
  end: number,
  figures: Figures,
  unit: Unit | null,
  shown: string,
): Literal {
  const value = unit ? (figures.value + unit.offset) * unit.factor : figures.value;
  if (!Number.isFinite(value)) throw new FormulaTrouble("This number is too large.", { start, end });
  if (unit?.dimension.point && value < 0) {
    throw new FormulaTrouble("That is colder than absolute zero.", { start, end });
  }
  return Object.freeze({
    kind: "literal",
    start,
    end,
    value,
    dimension: unit ? unit.dimension : PLAIN,
    shown: shown === "" ? text.slice(start, end) : shown,
    bareZero: unit === null && value === 0,
    hasUnit: unit !== null,
  });
}

function moneyAt(text: string, start: number, signLength: number): Literal | null {
  const figures = figuresAt(text, start + signLength, "");
  const money = parseUnit("money");
  if (!figures || !money) return null;
  const each = text[figures.end] === "/" ? unitAt(text, figures.end + 1, "") : null;
  const unit = each
    ? {
        ...money,
        factor: money.factor / each.unit.factor,
        dimension: Object.freeze(quotientOf(money.dimension, each.unit.dimension)),
      }
    : money;
  return made(text, start, each?.end ?? figures.end, figures, unit, "");
}

/**
 * A thermometer's number with its own minus, or null. The minus must belong to it: a frost of -5 degC is a point, while
 * 5 degC has no opposite.
 * @param start the place of the minus, which has no value before it
 * @throws FormulaTrouble on a number or unit that cannot be read, or below absolute zero
 */
export function frostAt(text: string, start: number, currency: string): Literal | null {
  const figures = /[-−]/.test(text.charAt(start)) ? figuresAt(text, start + 1, currency) : null;
  const found = figures && unitAt(text, figures.end, currency);
  if (!figures || !found?.unit.dimension.point) return null;
  return made(text, start, found.end, { ...figures, value: -figures.value }, found.unit, "");
}

/**
 * The literal that starts at a place, or null where none does.
 * @param currency the worksheet's sign or code, read before a number and after it
 * @param afterDivision whether a division sign stands directly before it
 * @throws FormulaTrouble on a number or unit that cannot be read
 */
export function literalAt(
  text: string,
  start: number,
  currency: string,
  afterDivision: boolean,
): Literal | null {
  if (currency !== "" && text.startsWith(currency, start)) return moneyAt(text, start, currency.length);
  const figures = figuresAt(text, start, currency);
  if (!figures) return null;
  const found = unitAt(text, figures.end, currency);
  const end = found?.end ?? figures.end;
  if (afterDivision && figures.isFraction) {
    throw new FormulaTrouble("Put brackets around this fraction, or it can be read in two ways.", {
      start,
      end,
    });
  }
  const unit = found && found.unit.text !== "1" ? found.unit : null;
  const unitText = found ? text.slice(figures.end, found.end).trim() : "";
  const shown = /^[A-Za-z%°µμΩΔ$€£¥₹]/.test(unitText) ? `${text.slice(start, figures.end)} ${unitText}` : "";
  return made(text, start, end, figures, unit, shown);
}
