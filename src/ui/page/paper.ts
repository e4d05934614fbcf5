// The page on paper: what only paper shows is fetched apart, and must be here before anything is printed.

/** The part of the page that only paper shows. */
export const fetchPrintedPage = async () => (await import("./PrintedPage.tsx")).PrintedPage;

/** How long answers are waited for before what there is goes on paper [ms], and how often it is looked. */
const PATIENCE = 20_000;
const LOOK = 100;

function once(isSo: () => boolean): Promise<void> {
  const until = Date.now() + PATIENCE;
  return new Promise((done) => {
    const look = setInterval(() => {
      if (!isSo() && Date.now() < until) return;
      clearInterval(look);
      done();
    }, LOOK);
  });
}

/** Prints once the answers are here. */
export async function printWhen(isWorkedOut: () => boolean): Promise<void> {
  if (!isWorkedOut()) await once(isWorkedOut);
  window.print();
}

/** Prints once everything is here that is printed, the answers too; without it where it cannot be fetched. */
export async function print(isWorkedOut: () => boolean): Promise<void> {
  await fetchPrintedPage().catch(() => undefined);
  await printWhen(isWorkedOut);
}
