// The page on paper: what only paper shows is fetched apart, and must be here before anything is printed.

/** The part of the page that only paper shows. */
export const fetchPrintedPage = async () => (await import("./PrintedPage.tsx")).PrintedPage;

/** Prints once everything is here that is printed; without it where it cannot be fetched. */
export async function print(): Promise<void> {
  await fetchPrintedPage().catch(() => undefined);
  window.print();
}
