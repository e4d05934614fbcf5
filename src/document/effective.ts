// The worksheet that counts: every card with the option in use laid over its own givens.

import { mapCards, withCards } from "./entries.ts";
import { frozen } from "./freeze.ts";
import type { Card, Worksheet } from "./worksheet.ts";

// Frozen plain data in, the same answer out: remembering by identity changes nothing but the work done.
const cardsSeen = new WeakMap<Card, Card>();
const worksheetsSeen = new WeakMap<Worksheet, Worksheet>();

function optionLaidOver(card: Card): Card {
  const { active, options } = card;
  if (active == null || options === undefined || !Object.hasOwn(options, active)) return card;
  const { options: _options, active: _active, ...bare } = card;
  return frozen({ ...bare, givens: { ...card.givens, ...options[active] } });
}

/** A card as it counts; the same object where no option is in use, and the same answer for the same card. */
export function effectiveCard(card: Card): Card {
  const seen = cardsSeen.get(card);
  if (seen) return seen;
  const effective = optionLaidOver(card);
  cardsSeen.set(card, effective);
  return effective;
}

/** The worksheet as it counts; the same object where no option is in use. */
export function effective(worksheet: Worksheet): Worksheet {
  const seen = worksheetsSeen.get(worksheet);
  if (seen) return seen;
  const result = frozen(withCards(worksheet, mapCards(worksheet.cards, effectiveCard)));
  worksheetsSeen.set(worksheet, result);
  return result;
}
