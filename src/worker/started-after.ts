// A worker that is started later than it is spoken to: what is said meanwhile waits for it.

import type { WorkerLike } from "./client.ts";
import type { ToWorker } from "./messages.ts";

type Hear = Parameters<WorkerLike["addEventListener"]>[1];

/** @param when the worker is started once it resolves, and told all that was said until then in its order */
export function startedAfter(when: Promise<unknown>, start: () => WorkerLike): WorkerLike {
  let worker: WorkerLike | null = null;
  const said: ToWorker[] = [];
  const hearing: Hear[] = [];
  void when.then(() => {
    worker = start();
    for (const hear of hearing) worker.addEventListener("message", hear);
    for (const message of said.splice(0)) worker.postMessage(message);
  });
  return {
    postMessage: (message) => (worker ? worker.postMessage(message) : void said.push(message)),
    addEventListener: (type, hear) => {
      if (worker) worker.addEventListener(type, hear);
      else hearing.push(hear);
    },
  };
}
