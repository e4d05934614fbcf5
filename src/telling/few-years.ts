// How the driest year is spoken of where a record holds only few: one year is neither dry nor wet.

import { isWholeShare, roundedCount } from "../units/rounding.ts";

/** Whole years from which a record is long enough to speak of its driest without more words; common practice, no source. */
const FEW_YEARS = 5;

/**
 * The opening of a sentence about the driest year, before its number.
 *
 * @param wholeYears whole seasons of the record; null where nothing tells
 */
function driestYearWords(wholeYears: number | null, madeUp: boolean): string {
  if (madeUp) return "In the driest made-up year, ";
  if (wholeYears === null || wholeYears >= FEW_YEARS) return "In the driest year on record, ";
  return wholeYears === 2
    ? "In the drier of only two years, "
    : `In the driest of only ${wholeYears} years, `;
}

type Tone = "trouble" | "water" | "growth";
type Told = string | { readonly quantity: string; readonly tone: Tone; readonly after?: string };

const days = (quantity: string, count: number | null): Told => ({
  quantity,
  tone: "trouble",
  after: roundedCount(count ?? 0) === 1 ? " day" : " days",
});

const toneOf = (share: number | null): Tone => (isWholeShare(share ?? 0) ? "growth" : "trouble");

const noBed = (leftOut: number): string =>
  leftOut > 0 ? "none of the beds that could be worked out" : "no bed";

/** What the driest of several years says of the beds: days short in it, and in a usual one. */
export function inDriestYear(of: {
  readonly years: number | null;
  readonly short: number | null;
  readonly share: number | null;
  readonly usual: number;
  readonly leftOut: number;
  /** Made-up weather is no record. */
  readonly madeUp: boolean;
}): readonly Told[] {
  const year: Told = { quantity: "weather.driest_year", tone: "water" };
  const opening = driestYearWords(of.years, of.madeUp);
  if (of.short === 0 && of.usual > 0) return [opening, year, ", no bed went short, but in others some did."];
  if (of.short === 0) return [opening, year, `, ${noBed(of.leftOut)} went short.`];
  return [
    opening,
    year,
    ", beds went short on ",
    days("season.driest_year_days_short", of.short),
    " and got ",
    { quantity: "season.driest_year_share_met", tone: toneOf(of.share) },
    " of what they would have used.",
  ];
}

/**
 * What a record of one whole year says of the beds: itself, and never as the driest.
 *
 * @param of days on which beds went short, null where that cannot be told, their share, and how many parts are left out
 */
export function inOneYear(of: {
  readonly short: number | null;
  readonly share: number | null;
  readonly leftOut: number;
}): readonly Told[] {
  const { short } = of;
  if (short === null) return [];
  const which = noBed(of.leftOut);
  if (short === 0) return [`In this one year ${which} went short; drier ones will come.`];
  return [
    "In this one year beds went short on ",
    days("season.days_short", short),
    " and got ",
    { quantity: "season.share_met", tone: toneOf(of.share) },
    " of what they would have used; drier ones will come.",
  ];
}
