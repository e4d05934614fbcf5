// The pages of the season, each under its name in the address.

const FIELD_PAGES = ["bed", "today", "lasts", "pour", "notes", "year"] as const;

export type FieldPageName = (typeof FIELD_PAGES)[number];

/** The page that an address's hash opens; null: none of these. */
export const fieldPageIn = (hash: string): FieldPageName | null =>
  FIELD_PAGES.find((name) => hash === `#${name}`) ?? null;

/** What every page is given: a way to another, and whether there is such a page. */
export type FieldPageProps = {
  readonly go: (page: FieldPageName) => void;
  /** Back to the sheet. */
  readonly leave: () => void;
};
