// One cell of a record to a number. The common cell takes the short way: a 50 MB file has millions of them.

/** Stands for a trace: some rain, too little to measure. */
export const TRACE = Number.NEGATIVE_INFINITY;
/** Stands for text that is no amount. */
export const UNREADABLE = Number.POSITIVE_INFINITY;

const MISSING_WORDS = new Set([
  "",
  "m",
  "na",
  "n/a",
  "nan",
  "null",
  "none",
  "nil",
  "missing",
  "-",
  "--",
  "---",
  "----",
  "?",
  ".",
  "nd",
  "*",
]);
const TRACE_WORDS = new Set(["t", "tr", "tr.", "trace"]);
const PLAIN_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;
const COMMA_NUMBER = /^[+-]?\d*,\d+$/;
/** Nothing with a mark of a trace, or less than some amount. */
const MARKED_TRACE = /^(?:0*[.,]?0*\s*t|<\s*\d*[.,]?\d+)$/i;
const THOUSANDS = /^[+-]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
const DOTTED_THOUSANDS = /^[+-]?\d{1,3}(?:\.\d{3})+,\d+$/;

/** Numbers whose thousands are set apart; "1,234" alone only where decimals stand after a point. */
function readThousands(text: string, decimalComma: boolean): number {
  if (THOUSANDS.test(text) && (text.includes(".") || !decimalComma)) return Number(text.replaceAll(",", ""));
  if (decimalComma && DOTTED_THOUSANDS.test(text)) return Number(text.replaceAll(".", "").replace(",", "."));
  return UNREADABLE;
}

function readSlowly(cell: string, decimalComma: boolean): number {
  const text = cell.trim();
  if (PLAIN_NUMBER.test(text)) return Number(text);
  if (decimalComma && COMMA_NUMBER.test(text)) return Number(text.replace(",", "."));
  const word = text.toLowerCase();
  if (MISSING_WORDS.has(word)) return Number.NaN;
  return TRACE_WORDS.has(word) || MARKED_TRACE.test(word) ? TRACE : readThousands(text, decimalComma);
}

/**
 * The number in a cell: NaN where it says missing, TRACE for a trace, UNREADABLE for anything else.
 * A decimal comma is understood only where the file's columns are not divided by commas.
 */
export function readNumber(cell: string | undefined, decimalComma: boolean): number {
  if (cell === undefined) return Number.NaN;
  const first = cell.charCodeAt(0);
  // A digit first and nothing but digits or a point second: no sign, no hexadecimal, no blank taken for 0.
  if (first >= 48 && first <= 57 && (cell.length === 1 || cell.charCodeAt(1) <= 57)) {
    const value = +cell;
    if (value < 1e15) return value;
  }
  return readSlowly(cell, decimalComma);
}
