// The page's side of the one warm worker: one run at a time, of the waiting ones only the newest, records sent once.

import type { Outputs, Request } from "../graph/types.ts";
import type { Choices, ImportResult } from "../rainfall/import-result.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { FromWorker, ToWorker } from "./messages.ts";

/** What a worker must be able to do; a real one, or one made in a test. */
export type WorkerLike = {
  postMessage(message: ToWorker): void;
  addEventListener(type: "message", hear: (event: { readonly data: FromWorker }) => void): void;
};

export type ClientEvents = {
  readonly onAnswer: (key: string, outputs: Outputs) => void;
  readonly onFailure: (key: string, reason: string) => void;
  readonly onProgress: (share: number) => void;
  readonly onImported: (result: ImportResult) => void;
  readonly onImportFailed: (reason: string) => void;
};

export type WorkerClient = {
  /** Asks for an answer; a waiting request that is no longer the newest is dropped, a running one never is. */
  readonly ask: (request: Request, record: DailyRecord | null) => void;
  readonly importRain: (file: Blob, name: string, choices: Choices) => void;
  /** Stops the import that is under way; nothing is heard of it any more. */
  readonly cancelImport: () => void;
};

type Waiting = { readonly request: Request; readonly record: DailyRecord | null };

/** Wraps a worker. */
export function workerClient(worker: WorkerLike, events: ClientEvents): WorkerClient {
  const sent = new Set<string>();
  let running: { readonly id: number; readonly key: string } | null = null;
  let waiting: Waiting | null = null;
  let importing = 0;
  let last = 0;
  const run = ({ request, record }: Waiting): void => {
    if (record && !sent.has(record.key)) worker.postMessage({ say: "record", record });
    if (record) sent.add(record.key);
    running = { id: ++last, key: request.key };
    worker.postMessage({ say: "run", id: last, request });
  };
  const next = (): void => {
    running = null;
    const newest = waiting;
    waiting = null;
    if (newest) run(newest);
  };
  const stop = (): void => {
    if (importing) worker.postMessage({ say: "cancel", id: importing });
    importing = 0;
  };
  const failed = (id: number, reason: string): void => {
    if (id === importing) events.onImportFailed(reason);
    else if (running?.id === id) {
      events.onFailure(running.key, reason);
      next();
    }
  };
  worker.addEventListener("message", ({ data }) => {
    if (data.say === "progress" && data.id === importing) events.onProgress(data.share);
    if (data.say === "imported" && data.id === importing) events.onImported(data.result);
    if (data.say === "answer") {
      events.onAnswer(data.key, data.outputs);
      next();
    }
    if (data.say === "failed") failed(data.id, data.reason);
  });
  return {
    ask: (request, record) => {
      if (!running) run({ request, record });
      else waiting = running.key === request.key ? null : { request, record };
    },
    cancelImport: stop,
    importRain: (file, name, choices) => {
      stop();
      importing = ++last;
      worker.postMessage({ say: "import", id: importing, file, name, choices });
    },
  };
}
