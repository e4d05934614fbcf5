// A worker that is spoken to before it is started.

import { expect, test } from "vitest";
import type { FromWorker, ToWorker } from "../../src/worker/messages.ts";
import { startedAfter } from "../../src/worker/started-after.ts";

const progress = (share: number): FromWorker => ({ say: "progress", id: 1, share });

function standing() {
  const posted: ToWorker[] = [];
  const hears: ((event: { readonly data: FromWorker }) => void)[] = [];
  let starts = 0;
  let release: () => void = () => undefined;
  const when = new Promise<void>((resolve) => {
    release = resolve;
  });
  const worker = startedAfter(when, () => {
    starts += 1;
    return {
      postMessage: (message) => posted.push(message),
      addEventListener: (_type, listener) => hears.push(listener),
    };
  });
  const begin = async () => {
    release();
    await when;
  };
  return { worker, posted, hears, starts: () => starts, begin };
}

test("nothing is started before its time, and then it is told all in its order, once", async () => {
  const { worker, posted, starts, begin } = standing();
  worker.postMessage({ say: "cancel", id: 1 });
  worker.postMessage({ say: "cancel", id: 2 });
  expect([starts(), posted.length]).toEqual([0, 0]);
  await begin();
  worker.postMessage({ say: "cancel", id: 3 });
  expect(starts()).toBe(1);
  expect(posted).toEqual([1, 2, 3].map((id) => ({ say: "cancel", id })));
});

test("who listened before and who listens after both hear it", async () => {
  const { worker, hears, begin } = standing();
  const heard: string[] = [];
  worker.addEventListener("message", ({ data }) => heard.push(`early ${data.say}`));
  await begin();
  worker.addEventListener("message", ({ data }) => heard.push(`late ${data.say}`));
  for (const hear of hears) hear({ data: progress(1) });
  expect(heard).toEqual(["early progress", "late progress"]);
});
