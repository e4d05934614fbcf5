// What reads kept and sent worksheets with care, fetched when there is one to be read: the first worksheet needs none of it.

type Reading = typeof import("../document/check.ts");

/** null where it cannot be fetched. */
export const fetchReading = (): Promise<Reading | null> => import("../document/check.ts").catch(() => null);

export const NOT_FETCHED =
  "A part of this page could not be fetched, so what you kept was left as it is and not opened. Open the page again when there is a network.";
