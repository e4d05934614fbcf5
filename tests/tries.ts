// What is tried, and how often: all of it with LONG=1, which `.ci/run` sets; in `npm test`, so that it is run before every
// change, the first of the same row.

/** For what has no row: whoever asks says beside it what `npm test` takes instead. */
export const isLong = Boolean(process.env["LONG"]);

/** All tries with LONG=1, else as many as are said, or a quarter. */
export const tries = (all: number, usual: number = Math.ceil(all / 4)): number => (isLong ? all : usual);
