// What a copy is called: still within the limit that a title must keep to be opened again.

import { LIMITS } from "./limits.ts";

const MARK = " (copy)";

/** The title of a copy, cut where it would be too long. */
export function copyTitle(title: string): string {
  return `${title.slice(0, LIMITS.title - MARK.length)}${MARK}`;
}
