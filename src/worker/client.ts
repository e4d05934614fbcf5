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

/** What runs need of the line to the worker. */
type Line = {
  readonly post: (message: ToWorker) => void;
  /** Sends a record that was not sent before. */
  readonly sendRecord: (record: DailyRecord) => void;
  /** A number that no message bears yet. */
  readonly nextId: () => number;
};

type Waiting = { readonly request: Request; readonly record: DailyRecord | null };

/** Runs of heavy models: one at a time, and of those that wait only the newest. */
function seasonRuns(line: Line, events: ClientEvents) {
  let running: { readonly id: number; readonly key: string } | null = null;
  let waiting: Waiting | null = null;
  const run = ({ request, record }: Waiting): void => {
    if (record) line.sendRecord(record);
    running = { id: line.nextId(), key: request.key };
    line.post({ say: "run", id: running.id, request });
  };
  const next = (): void => {
    running = null;
    const newest = waiting;
    waiting = null;
    if (newest) run(newest);
  };
  return {
    ask: (request: Request, record: DailyRecord | null): void => {
      if (!running) run({ request, record });
      else waiting = running.key === request.key ? null : { request, record };
    },
    hear: (message: FromWorker): void => {
      if (message.say === "answer") {
        events.onAnswer(message.key, message.outputs);
        next();
      } else if (message.say === "failed" && running?.id === message.id) {
        events.onFailure(running.key, message.reason);
        next();
      }
    },
  };
}

/** Wraps a worker. */
export function workerClient(worker: WorkerLike, events: ClientEvents): WorkerClient {
  const sent = new Set<string>();
  let importing = 0;
  let last = 0;
  const line: Line = {
    post: (message) => worker.postMessage(message),
    sendRecord: (record) => {
      if (!sent.has(record.key)) worker.postMessage({ say: "record", record });
      sent.add(record.key);
    },
    nextId: () => ++last,
  };
  const runs = seasonRuns(line, events);
  const stop = (): void => {
    if (importing) worker.postMessage({ say: "cancel", id: importing });
    importing = 0;
  };
  worker.addEventListener("message", ({ data }) => {
    if (data.say === "progress" && data.id === importing) events.onProgress(data.share);
    if (data.say === "imported" && data.id === importing) events.onImported(data.result);
    if (data.say === "failed" && data.id === importing) events.onImportFailed(data.reason);
    runs.hear(data);
  });
  return {
    ask: runs.ask,
    cancelImport: stop,
    importRain: (file, name, choices) => {
      stop();
      importing = ++last;
      worker.postMessage({ say: "import", id: importing, file, name, choices });
    },
  };
}
