// A worksheet inside the page in one file: data in a script element that no browser runs.

/** The element that holds it, as the page's build writes it (cli/one-file.mjs). */
export const HOLDER = "worksheet";

const OPENS = `<script type="application/json" id="${HOLDER}">`;
const ENDS = "</script>";

/** JSON says `<` in another way, too: nothing in the text ends the element or begins a comment in it. */
const safeInElement = (json: string): string => json.replaceAll("<", "\\u003c");

/**
 * The page with a worksheet in it, in the place of the one that was there.
 *
 * @param page text of the page in one file
 * @param fileText the worksheet as a file holds it, with its records
 * @returns null where this is no page that could hold one
 */
export function withWorksheet(page: string, fileText: string): string | null {
  // The first place: the program, which holds these very letters, comes after it.
  const from = page.indexOf(OPENS);
  const to = from < 0 ? -1 : page.indexOf(ENDS, from);
  if (to < 0) return null;
  return `${page.slice(0, from + OPENS.length)}${safeInElement(fileText)}${page.slice(to)}`;
}
