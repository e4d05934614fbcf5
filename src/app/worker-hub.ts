// The one warm worker, which outlives the worksheets: whichever is open now hears its answers.

import { firstPaint } from "../ui/after-paint.ts";
import { type AskingPool, askingPool } from "../worker/asking-pool.ts";
import { type ClientEvents, type WorkerClient, workerClient } from "../worker/client.ts";
import { startedAfter } from "../worker/started-after.ts";
import { startAskedWorker, startSeasonWorker } from "./start-worker.ts";

export type WorkerHub = {
  readonly client: WorkerClient;
  /** Workers of their own that are asked about whole worksheets: the warm one stays free for the next season. */
  readonly asking: AskingPool;
  /** From now on these hear what the worker says. */
  readonly listen: (events: ClientEvents) => void;
};

const DEAF: ClientEvents = {
  onRan: () => undefined,
  onMadeUp: () => undefined,
  onProgress: () => undefined,
  onImported: () => undefined,
  onImportFailed: () => undefined,
};

/** As many as the device has cores to spare, four at most. */
const spareCores = (): number => Math.max(1, Math.min(4, (navigator.hardwareConcurrency || 2) - 1));

export function makeWorkerHub(): WorkerHub {
  let events = DEAF;
  // Its program is as large as the page's: side by side on a small device each would make the other wait.
  const client = workerClient(startedAfter(firstPaint, startSeasonWorker), {
    onRan: (answers) => events.onRan(answers),
    onMadeUp: (record) => events.onMadeUp(record),
    onProgress: (share) => events.onProgress(share),
    onImported: (result) => events.onImported(result),
    onImportFailed: (reason) => events.onImportFailed(reason),
  });
  const asking = askingPool(startAskedWorker, spareCores());
  return {
    client,
    asking,
    listen: (next) => {
      events = next;
    },
  };
}
