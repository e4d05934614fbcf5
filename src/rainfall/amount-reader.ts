// The amount in a row: which numbers are codes, traces or too little, in which unit its cell says to be.
import { rainUnitOf } from "./header-words.ts";
import type { Head, Intake } from "./intake.ts";
import { readNumber, TRACE, UNREADABLE } from "./read-cell.ts";
import { MARK_MINUS_ONE, MARK_TRACE } from "./readings.ts";

/** Where the amount of a row stands, and what its format says of it. */
export type AmountPlan = {
  readonly rain: number;
  /** Where each row says its own unit. */
  readonly unitColumn: number | null;
  /** What the format says -1 means; left open, the user is asked. */
  readonly minusOne: "trace" | "missing" | null;
  /** Numbers that stand for missing in this format beside the ones known everywhere. */
  readonly codes: readonly number[];
  /** Looks at flags: may turn the amount into another, a trace or a missing value. */
  readonly judge: ((row: readonly string[], amount: number) => number) | null;
};

/** Negative numbers that records use for a missing value. */
const NEGATIVE_CODES = new Set([-9999, -999, -99, -99.9, -999.9, -99.99, -9999.9, -999.99, -8888, -6999]);
/** Numbers too large for a day's rain that records use for a missing value. */
const POSITIVE_CODES = new Set([999.9, 9999, 999.99, 9999.9, 99999, 99_999.9, 32_767]);
const LEAST_POSITIVE_CODE = 99;
/** A weighing gauge wavers about nought by less than this, in whatever unit; common practice, no source. */
const WAVERS_BY = 0.5;
const WITH_UNIT = /^(.*[\d.,])\s*(mm|millimet(?:re|er)s?|cm|in|ins|inch|inches|")\.?$/i;
const COMMA_DECIMAL = /^[+-]?(?:\d*,(?:\d{1,2}|\d{4,})|0*,\d+)$/;
const DOT_DECIMAL = /^[+-]?\d*\.\d+$/;

/** Whether the decimals of a file stand after a comma: told by its cells, else by what divides its columns. */
export function hasDecimalComma(head: Head): boolean {
  let hasDot = false;
  for (const row of head.rows) {
    for (const cell of row) {
      const text = cell.trim();
      if (COMMA_DECIMAL.test(text)) return true;
      hasDot ||= DOT_DECIMAL.test(text);
    }
  }
  return !hasDot && head.delimiter !== ",";
}

/** -1 is a trace, a missing value, or asked. */
function minusOneAmount(intake: Intake, minusOne: "trace" | "missing" | null): number {
  intake.minusOnes++;
  if (minusOne === "missing") return Number.NaN;
  intake.readings.mark.set(intake.readings.count, minusOne ? MARK_TRACE : MARK_MINUS_ONE);
  return 0;
}

/** Tells special numbers from amounts, and counts them. */
export function amountChecker(
  intake: Intake,
  codes: ReadonlySet<number>,
  minusOne: "trace" | "missing" | null,
): (value: number, line: number) => number {
  return (value, line) => {
    if (value === TRACE) {
      intake.readings.mark.set(intake.readings.count, MARK_TRACE);
      return 0;
    }
    if (codes.has(value) || NEGATIVE_CODES.has(value) || POSITIVE_CODES.has(value)) {
      intake.codes.add(String(value));
      return Number.NaN;
    }
    if (value >= 0) return value;
    if (value === -1) return minusOneAmount(intake, minusOne);
    if (value > -WAVERS_BY) {
      intake.wavering++;
      return 0;
    }
    intake.reject(`${value} is no amount of rain.`, line);
    return UNREADABLE;
  };
}

/** The amount of each row, in the file's own unit. */
export function amountReader(plan: AmountPlan, head: Head): (row: readonly string[], line: number) => number {
  const { intake } = head;
  const decimalComma = hasDecimalComma(head);
  const codes = new Set([...plan.codes, ...(head.choices.missing_codes ?? [])]);
  const check = amountChecker(intake, codes, plan.minusOne);
  const smallCodes = [...codes].some((code) => code >= 0 && code < LEAST_POSITIVE_CODE);
  const { rain, judge, unitColumn } = plan;
  // Where the user says the unit, a file that names two is still refused: one answer cannot be right for both.
  const takeUnit = (text: string, line: number): void => intake.cellUnit(rainUnitOf(text), line);

  function special(row: readonly string[], value: number, line: number): number {
    if (value !== UNREADABLE) return Number.isNaN(value) ? value : check(value, line);
    const text = (row[rain] ?? "").trim();
    const withUnit = WITH_UNIT.exec(text);
    const bare = withUnit ? readNumber(withUnit[1], decimalComma) : UNREADABLE;
    if (bare === UNREADABLE) {
      intake.reject(`"${text.slice(0, 40)}" is no amount of rain.`, line);
      return UNREADABLE;
    }
    takeUnit(withUnit?.[2] ?? "", line);
    return Number.isNaN(bare) ? bare : check(bare, line);
  }

  return (row, line) => {
    const value = readNumber(row[rain], decimalComma);
    const plain = value >= 0 && value < LEAST_POSITIVE_CODE && !smallCodes;
    const amount = plain ? value : special(row, value, line);
    if (unitColumn !== null && row[unitColumn]?.trim()) takeUnit(row[unitColumn] ?? "", line);
    if (!intake.withDecimals && amount % 1 > 0) intake.withDecimals = true;
    return judge && amount !== UNREADABLE ? judge(row, amount) : amount;
  };
}
