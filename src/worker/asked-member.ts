// One of the workers that are asked about whole worksheets: what was laid before it, and the run it is at. It is replaced
// when it dies.

import type { Worksheet } from "../document/worksheet.ts";
import type { Answers } from "../studies/ask.ts";
import type { FromAsked, Question, ToAsked } from "./asking-messages.ts";

/** What a worker must be able to do; a real one, or one made in a test. */
export type AskedWorker = {
  postMessage(message: ToAsked): void;
  terminate(): void;
  addEventListener(type: "message", hear: (event: { readonly data: FromAsked }) => void): void;
  addEventListener(type: "error", hear: () => void): void;
};

/** How a run ended: with its answers, with the reason why there are none, or with the death of its worker: null. */
export type RunEnd = { readonly answers: Answers } | { readonly failed: string } | null;

export type AskedMember = {
  readonly isIdle: () => boolean;
  /** Runs one list of changes of a question. */
  readonly run: (question: Question, at: number, onEnd: (end: RunEnd) => void) => void;
};

type Standing = {
  readonly worker: AskedWorker;
  worksheet: Worksheet | null;
  readonly records: Set<string>;
  run: { readonly id: number; readonly onEnd: (end: RunEnd) => void } | null;
};

/** Lays a question's worksheet before a worker, with the records that it was not sent. */
function lay(standing: Standing, { worksheet, records }: Question): void {
  const unsent = records.filter(({ key }) => !standing.records.has(key));
  if (standing.worksheet === worksheet && unsent.length === 0) return;
  for (const { key } of unsent) standing.records.add(key);
  standing.worksheet = worksheet;
  standing.worker.postMessage({ say: "base", worksheet, records: unsent });
}

export function askedMember(makeWorker: () => AskedWorker): AskedMember {
  let last = 0;
  const close = (of: Standing, end: RunEnd): void => {
    const { run } = of;
    of.run = null;
    run?.onEnd(end);
  };
  // Replaced only when there is a run again: a worker whose program cannot be loaded would die over and over.
  let standing: Standing | null = null;
  const enlist = (): Standing => {
    const fresh: Standing = { worker: makeWorker(), worksheet: null, records: new Set(), run: null };
    fresh.worker.addEventListener("message", ({ data }) => {
      if (standing !== fresh || fresh.run?.id !== data.id) return;
      close(fresh, data.say === "failed" ? { failed: data.reason } : { answers: data.answers });
    });
    fresh.worker.addEventListener("error", () => {
      if (standing !== fresh) return;
      fresh.worker.terminate();
      standing = null;
      close(fresh, null);
    });
    return fresh;
  };
  return {
    isIdle: () => !standing?.run,
    run: (question, at, onEnd) => {
      standing ??= enlist();
      lay(standing, question);
      standing.run = { id: ++last, onEnd };
      const run = question.runs[at] ?? [];
      standing.worker.postMessage({ say: "ask", id: last, run, wanted: question.wanted });
    },
  };
}
