// Where workers come from. The page in one file has its own way (start-worker-in-one-file.ts), which its build puts here.

/** Runs heavy models, keeps records and reads rain files. */
export const startSeasonWorker = (): Worker =>
  new Worker(new URL("../worker/entry.ts", import.meta.url), { type: "module" });

/** Is asked about whole worksheets. */
export const startAskedWorker = (): Worker =>
  new Worker(new URL("../worker/asking-entry.ts", import.meta.url), { type: "module" });
