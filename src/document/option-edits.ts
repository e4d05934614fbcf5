// Options of a card: named sets of givens to compare, of which one may be in use.

import { activeOption } from "./edits.ts";
import { effectiveCard } from "./effective.ts";
import { mapCard } from "./entries.ts";
import { frozen } from "./freeze.ts";
import { LIMITS } from "./limits.ts";
import { FORBIDDEN_NAMES } from "./plain.ts";
import { sameData } from "./same.ts";
import type { Card, Worksheet } from "./worksheet.ts";

function saved(card: Card, name: string): Card {
  const givens = effectiveCard(card).givens;
  const full =
    Object.keys(card.options ?? {}).length >= LIMITS.options && !Object.hasOwn(card.options ?? {}, name);
  const usable = name.trim() !== "" && name.length <= LIMITS.title && !FORBIDDEN_NAMES.has(name);
  if (full || !usable) return card;
  const next: Card = { ...card, options: { ...card.options, [name]: givens }, active: name };
  return sameData(next, card) ? card : next;
}

/** Keeps the givens that count now under a name and puts that option in use; the same worksheet where there is no room. */
export function saveOption(worksheet: Worksheet, cardId: string, name: string): Worksheet {
  return frozen(mapCard(worksheet, cardId, (card) => saved(card, name)));
}

/** Puts an option in use, or by null the card's own givens; an unknown name changes nothing. */
export function applyOption(worksheet: Worksheet, cardId: string, name: string | null): Worksheet {
  return frozen(
    mapCard(worksheet, cardId, (card) => {
      const known = name === null || Object.hasOwn(card.options ?? {}, name);
      return !known || (card.active ?? null) === name ? card : { ...card, active: name };
    }),
  );
}

function dropped(card: Card, name: string): Card {
  if (!card.options || !Object.hasOwn(card.options, name)) return card;
  const { [name]: _gone, ...options } = card.options;
  const active = activeOption(card) === name ? null : (card.active ?? null);
  const { options: _options, active: _active, ...bare } = card;
  return Object.keys(options).length === 0 ? bare : { ...bare, options, active };
}

/** Forgets an option; where it was in use, the card's own givens count again. */
export function dropOption(worksheet: Worksheet, cardId: string, name: string): Worksheet {
  return frozen(mapCard(worksheet, cardId, (card) => dropped(card, name)));
}
