// Which givens of which card kinds are links to other cards, and which hold formula text of the user's.

import type { GivenRoles } from "../document/entries.ts";
import type { CardKinds } from "./types.ts";

/** The roles that edits of whole cards and plans ask after, read off the kinds' rows. */
export function rolesOf(kinds: CardKinds): GivenRoles {
  const some = (kind: string, test: (row: NonNullable<CardKinds[string]>["rows"][number]) => boolean) =>
    kinds[kind]?.rows.some(test) ?? false;
  return {
    isLink: (kind, given) => some(kind, (row) => row.row === "link" && row.name === given),
    isFormula: (kind, given) => some(kind, (row) => row.row === "user_formula" && row.formula === given),
  };
}
