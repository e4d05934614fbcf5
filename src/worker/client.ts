// The page's side of the one warm worker: one run at a time, of the waiting ones only the newest, records sent once.

import type { Request } from "../graph/types.ts";
import type { Choices, ImportResult } from "../rainfall/import-result.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { FromWorker, Ran, ToWorker } from "./messages.ts";

/** What a worker must be able to do; a real one, or one made in a test. */
export type WorkerLike = {
  postMessage(message: ToWorker): void;
  addEventListener(type: "message", hear: (event: { readonly data: FromWorker }) => void): void;
};

export type ClientEvents = {
  readonly onRan: (answers: readonly Ran[]) => void;
  readonly onMadeUp: (record: DailyRecord) => void;
  readonly onProgress: (share: number) => void;
  readonly onImported: (result: ImportResult) => void;
  readonly onImportFailed: (reason: string) => void;
};

export type WorkerClient = {
  /**
   * All that is to be answered now: what waited before and is not among it is dropped, a run under way never is. What is
   * quick goes together before what is heavy, and one heavy model goes at a time.
   */
  readonly ask: (requests: readonly Request[], recordOf: (key: string) => DailyRecord | undefined) => void;
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

type Asked = Parameters<WorkerClient["ask"]>;

/** What of that which waits goes next. */
function nextOf(waiting: readonly Request[]): readonly Request[] {
  const quick = waiting.filter(({ heavy }) => !heavy);
  return quick.length > 0 ? quick : waiting.slice(0, 1);
}

/** Runs of models: one message of them at a time, and of what waits only what was asked last. */
function modelRuns(line: Line, events: ClientEvents) {
  let running: { readonly id: number; readonly keys: ReadonlySet<string> } | null = null;
  let [waiting, recordOf]: Asked = [[], () => undefined];
  const next = (): void => {
    const requests = nextOf(waiting);
    if (running || requests.length === 0) return;
    waiting = waiting.filter((request) => !requests.includes(request));
    for (const { record } of requests) {
      const known = record === null ? undefined : recordOf(record);
      if (known) line.sendRecord(known);
    }
    running = { id: line.nextId(), keys: new Set(requests.map(({ key }) => key)) };
    line.post({ say: "run", id: running.id, requests });
  };
  return {
    ask: (...[requests, records]: Asked): void => {
      recordOf = records;
      waiting = requests.filter(({ key }) => !running?.keys.has(key));
      next();
    },
    hear: (message: FromWorker): void => {
      if (message.say !== "ran" || running?.id !== message.id) return;
      running = null;
      events.onRan(message.answers);
      next();
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
  const runs = modelRuns(line, events);
  const stop = (): void => {
    if (importing) worker.postMessage({ say: "cancel", id: importing });
    importing = 0;
  };
  worker.addEventListener("message", ({ data }) => {
    if (data.say === "progress" && data.id === importing) events.onProgress(data.share);
    if (data.say === "imported" && data.id === importing) events.onImported(data.result);
    if (data.say === "failed" && data.id === importing) events.onImportFailed(data.reason);
    if (data.say === "made_up") {
      sent.add(data.record.key);
      events.onMadeUp(data.record);
    }
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
