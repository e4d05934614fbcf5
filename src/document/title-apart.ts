// Titles kept apart from the text around them: one that runs from right to left, or that holds signs which turn the
// direction, must not turn numbers and words beside it. Shown only: what is kept and sent is the title as it was typed.

import { mapCards, withCards } from "./entries.ts";
import { frozen } from "./freeze.ts";
import type { Card, Worksheet } from "./worksheet.ts";

const FIRST_STRONG_ISOLATE = "\u2068";
const POP_ISOLATE = "\u2069";

/** Signs that turn the direction of whatever follows, or end such a turn. */
const TURNING = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Letters that run from right to left. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** A title as it stands within other text; the same text where it turns nothing. */
export function apart(title: string): string {
  const plain = title.replace(TURNING, "");
  return RIGHT_TO_LEFT.test(plain) ? `${FIRST_STRONG_ISOLATE}${plain}${POP_ISOLATE}` : plain;
}

/** A title as it is typed, without the signs that keep it apart. */
export function bare(title: string): string {
  return title.replace(TURNING, "");
}

// Frozen plain data in, the same answer out: remembering by identity changes nothing but the work done.
const cardsSeen = new WeakMap<Card, Card>();
const worksheetsSeen = new WeakMap<Worksheet, Worksheet>();

function cardApart(card: Card): Card {
  const seen = cardsSeen.get(card);
  if (seen) return seen;
  const title = apart(card.title);
  const shown = title === card.title ? card : frozen({ ...card, title });
  cardsSeen.set(card, shown);
  return shown;
}

/** The worksheet as it is shown, every title and name in it kept apart; the same object where none turns anything. */
export function titlesApart(worksheet: Worksheet): Worksheet {
  const seen = worksheetsSeen.get(worksheet);
  if (seen) return seen;
  const { title, datum, made_by } = worksheet;
  const heads = { title: apart(title), datum: apart(datum), made_by: apart(made_by) };
  const isSame = heads.title === title && heads.datum === datum && heads.made_by === made_by;
  const cards = withCards(worksheet, mapCards(worksheet.cards, cardApart));
  const shown = isSame ? cards : frozen({ ...cards, ...heads });
  worksheetsSeen.set(worksheet, shown);
  return shown;
}
