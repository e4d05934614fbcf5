// The one warm worker, which outlives the worksheets: whichever is open now hears its answers.

import { type ClientEvents, type WorkerClient, workerClient } from "../worker/client.ts";

export type WorkerHub = {
  readonly client: WorkerClient;
  /** From now on these hear what the worker says. */
  readonly listen: (events: ClientEvents) => void;
};

const DEAF: ClientEvents = {
  onAnswer: () => undefined,
  onFailure: () => undefined,
  onProgress: () => undefined,
  onImported: () => undefined,
  onImportFailed: () => undefined,
};

export function makeWorkerHub(): WorkerHub {
  let events = DEAF;
  const worker = new Worker(new URL("../worker/entry.ts", import.meta.url), { type: "module" });
  const client = workerClient(worker, {
    onAnswer: (key, outputs) => events.onAnswer(key, outputs),
    onFailure: (key, reason) => events.onFailure(key, reason),
    onProgress: (share) => events.onProgress(share),
    onImported: (result) => events.onImported(result),
    onImportFailed: (reason) => events.onImportFailed(reason),
  });
  return {
    client,
    listen: (next) => {
      events = next;
    },
  };
}
