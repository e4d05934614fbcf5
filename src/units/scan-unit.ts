// Where a unit written after a number ends: "gal/min" in "5 gal/min - 2", "gal" in "10 gal/2".

import { isCurrencyWord, isSameCurrency } from "./currency.ts";
import type { MayBe } from "./lookup.ts";
import { parseUnit, type Unit, unitParts } from "./unit.ts";

export type ScannedUnit =
  | { readonly unit: Unit; readonly end: number }
  | { readonly message: string; readonly start: number; readonly end: number };

type Piece = { readonly start: number; readonly end: number };

const QUOTES = /''|["'′″’”“]/y;
const WORD =
  /(?:%|1(?=\/[A-Za-z])|[$€£¥₹]|°(?![A-Za-z])|[A-Za-z\u00b5\u03bc°\u03a9\u2126ℓ℃℉Δ][A-Za-z\u00b5\u03bc°\u03a9\u2126Δ0-9]*(?:\^-?\d|[⁻¹²³⁴]+)?(?:\.(?!\d))?)/y;
const JOINT =
  /[ \u00a0]*[/*·⋅×][ \u00a0]*(?=[A-Za-z\u00b5\u03bc°\u03a9\u2126%$€£¥₹])|[ \u00a0]+(?=[A-Za-z\u00b5\u03bc°\u03a9\u2126Δ%])|-(?=[A-Za-z])/y;
/** The x of "20x30". */
const TIMES_WORD = /^[xX]\d*$/;

function matchAt(pattern: RegExp, text: string, at: number): string | null {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] ?? null;
}

/** Whether no word goes on there: "kr" is not the head of "krone". */
const endsAt = (text: string, at: number): boolean => !/^\p{L}{2}/u.test(text.slice(at - 1, at + 1));

function wordAt(text: string, at: number, currency: string): string | null {
  if (currency !== "" && text.startsWith(currency, at) && endsAt(text, at + currency.length)) return currency;
  const word = matchAt(WORD, text, at);
  return word === null || TIMES_WORD.test(word) ? null : word;
}

function piecesFrom(text: string, start: number, currency: string): Piece[] {
  const pieces: Piece[] = [];
  let at = start;
  const quote = matchAt(QUOTES, text, start);
  if (quote !== null) {
    pieces.push({ start, end: start + quote.length });
    const joint = matchAt(JOINT, text, start + quote.length);
    if (!joint?.includes("/")) return pieces;
    at += quote.length + joint.length;
  }
  for (;;) {
    const word = wordAt(text, at, currency);
    if (word === null) return pieces;
    pieces.push({ start: at, end: at + word.length });
    const joint = matchAt(JOINT, text, at + word.length);
    if (joint === null) return pieces;
    at += word.length + joint.length;
  }
}

/** The unit text with the worksheet's money sign or code turned into "money"; a foreign one is given back as a problem. */
function withMoney(text: string, pieces: readonly Piece[], currency: string): string | Piece {
  let out = "";
  let at = pieces[0]?.start ?? 0;
  for (const piece of pieces) {
    const word = text.slice(piece.start, piece.end);
    const isMoney = word === currency || isCurrencyWord(word);
    if (isMoney && !isSameCurrency(word, currency)) return piece;
    out += text.slice(at, piece.start) + (isMoney ? "money" : word);
    at = piece.end;
  }
  return out;
}

function refusal(text: string, pieces: readonly Piece[], currency: string, mayBe?: MayBe): ScannedUnit {
  const written = withMoney(text, pieces, currency);
  const start = pieces[0]?.start ?? 0;
  const end = pieces.at(-1)?.end ?? start;
  if (typeof written !== "string") return foreignMoney(text, written, currency);
  const parts = unitParts(written, mayBe);
  const problem = "message" in parts ? parts : { message: "I cannot read this unit.", word: "" };
  const marked = pieces.find((piece) => text.slice(piece.start, piece.end).startsWith(problem.word));
  return { message: problem.message, ...(problem.word !== "" && marked ? marked : { start, end }) };
}

/** The refusal of money in another currency. */
export function foreignMoney(text: string, place: Piece, currency: string): ScannedUnit {
  const word = text.slice(place.start, place.end);
  return { message: `This worksheet counts money in ${currency}, not in ${word}.`, ...place };
}

/**
 * The longest unit that starts at a place.
 * @param currency the worksheet's sign or code, "" where there is none
 * @param mayBe which units may be meant: no other is offered in the place of a word that is none
 * @returns the unit and where it ends; a message and its place where letters stand there that are no unit; null where
 * nothing like a unit starts
 */
export function scanUnit(text: string, start: number, currency = "", mayBe?: MayBe): ScannedUnit | null {
  const pieces = piecesFrom(text, start, currency);
  for (let count = pieces.length; count > 0; count--) {
    const taken = pieces.slice(0, count);
    const written = withMoney(text, taken, currency);
    const unit = typeof written === "string" ? parseUnit(written) : null;
    const end = taken.at(-1)?.end;
    if (unit && end !== undefined) return { unit, end };
  }
  return pieces.length === 0 ? null : refusal(text, pieces, currency, mayBe);
}
