// A card's new id carried into formula text, all else kept byte for byte.

import { scanTokens } from "./tokens.ts";

/**
 * Formula text in which `old.quantity` has become `new.quantity`. Longer words and units are left alone.
 * @param text also one that is wrong elsewhere; then only what can still be read as a name is changed
 */
export function renameInFormula(text: string, oldCardId: string, newCardId: string): string {
  let renamed = "";
  let at = 0;
  for (const token of scanTokens(text, "")) {
    if (token.kind !== "name" || !token.name.startsWith(`${oldCardId}.`)) continue;
    renamed += text.slice(at, token.start) + newCardId;
    at = token.start + oldCardId.length;
  }
  return renamed + text.slice(at);
}
