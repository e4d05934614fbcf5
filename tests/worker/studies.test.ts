// Studies beside seasons: in slices, called off at once, one at a time, never in a season's way.

import { expect, test } from "vitest";
import type { Request } from "../../src/graph/types.ts";
import { tankSizes } from "../../src/studies/tank-sizes.ts";
import { type WorkerClient, workerClient } from "../../src/worker/client.ts";
import type { FromWorker, ToWorker } from "../../src/worker/messages.ts";
import { inSlices } from "../../src/worker/slices.ts";
import { draw, inputOf, LITRE, recordOf, roof, seattle, tank } from "../season/made.ts";

const plan = inputOf({ roofs: [roof()], tanks: [tank(3)], draws: [draw(300 * LITRE)] });
const question = { plan, tank: "tank", multiples: [0.25, 0.5, 1, 2, 4] };

test("a study that is called off runs no further size", async () => {
  const control = new AbortController();
  const heard: number[] = [];
  const done = await inSlices(tankSizes(question, seattle()), {
    signal: control.signal,
    onPart: ({ multiple }) => {
      heard.push(multiple);
      if (heard.length === 2) control.abort();
    },
    rest: () => Promise.resolve(),
  });
  expect(done).toBeNull();
  expect(heard).toEqual([1, 4]);
});

test("a study that is left alone ends with every size heard, and rests after each", async () => {
  const heard: number[] = [];
  let rests = 0;
  const done = await inSlices(tankSizes(question, seattle()), {
    signal: new AbortController().signal,
    onPart: ({ multiple }) => heard.push(multiple),
    rest: async () => {
      rests++;
    },
  });
  expect(done).toEqual({ end: null });
  expect([...heard].sort()).toEqual([0.25, 0.5, 1, 2, 4]);
  expect(rests).toBe(5);
});

type Bench = {
  readonly client: WorkerClient;
  readonly posted: ToWorker[];
  readonly say: (message: FromWorker) => void;
  readonly answered: string[];
};

function bench(): Bench {
  const posted: ToWorker[] = [];
  const answered: string[] = [];
  let say: (message: FromWorker) => void = () => undefined;
  const worker = {
    postMessage: (message: ToWorker) => posted.push(message),
    addEventListener: (_: "message", hear: (event: { readonly data: FromWorker }) => void) => {
      say = (data) => hear({ data });
    },
  };
  const ignore = () => undefined;
  const client = workerClient(worker, {
    onAnswer: (key) => answered.push(key),
    onFailure: ignore,
    onProgress: ignore,
    onImported: ignore,
    onImportFailed: ignore,
  });
  return { client, posted, say: (message) => say(message), answered };
}

const point = { multiple: 1, volume: 3, shareMet: 0.5, daysShort: 9, spill: 1 };
const record = recordOf([1, 2], 0, { key: "rain" });
const request: Request = { key: "season", model: "season.run", input: {}, record: "rain" };

test("the record goes to the worker once, before the study that reads it", () => {
  const { client, posted } = bench();
  client.study(question, record, { onPart: () => undefined, onEnd: () => undefined });
  client.ask(request, record);
  expect(posted.map(({ say }) => say)).toEqual(["record", "study", "run"]);
});

test("parts are heard as they come, and the end once", () => {
  const { client, posted, say } = bench();
  const parts: number[] = [];
  const ends: (string | null)[] = [];
  client.study(question, record, {
    onPart: ({ multiple }) => parts.push(multiple),
    onEnd: (failure) => ends.push(failure),
  });
  const id = idOf(posted, "study");
  say({ say: "study_part", id, part: point });
  say({ say: "study_part", id, part: { ...point, multiple: 2 } });
  say({ say: "study_end", id, end: null });
  say({ say: "study_part", id, part: { ...point, multiple: 4 } });
  expect(parts).toEqual([1, 2]);
  expect(ends).toEqual([null]);
});

test("asking again calls the study before off, and nothing more is heard of it", () => {
  const { client, posted, say } = bench();
  const first: number[] = [];
  const second: number[] = [];
  client.study(question, record, { onPart: () => first.push(1), onEnd: () => first.push(0) });
  const old = idOf(posted, "study");
  client.study(question, record, { onPart: () => second.push(1), onEnd: () => second.push(0) });
  expect(posted).toContainEqual({ say: "cancel", id: old });
  say({ say: "study_part", id: old, part: point });
  say({ say: "study_end", id: old, end: null });
  expect([first, second]).toEqual([[], []]);
  client.cancelStudy();
  say({ say: "study_part", id: idOf(posted, "study"), part: point });
  expect(second).toEqual([]);
});

test("a season is asked for and answered while a study goes on", () => {
  const { client, posted, say, answered } = bench();
  const parts: number[] = [];
  client.study(question, record, { onPart: () => parts.push(1), onEnd: () => undefined });
  const id = idOf(posted, "study");
  client.ask(request, record);
  say({ say: "study_part", id, part: point });
  say({ say: "answer", id: idOf(posted, "run"), key: "season", outputs: {} });
  say({ say: "study_part", id, part: point });
  expect(answered).toEqual(["season"]);
  expect(parts).toEqual([1, 1]);
});

test("the reason is heard where a study fails", () => {
  const { client, posted, say } = bench();
  const ends: (string | null)[] = [];
  const events = { onPart: () => undefined, onEnd: (failure: string | null) => ends.push(failure) };
  client.study(question, record, events);
  say({ say: "study_end", id: idOf(posted, "study"), end: { failed: "No whole season." } });
  client.study(question, record, events);
  say({ say: "failed", id: idOf(posted, "study"), reason: "The rain record is not here." });
  expect(ends).toEqual(["No whole season.", "The rain record is not here."]);
});

/** Id of the last message of its kind. */
function idOf(posted: readonly ToWorker[], say: "study" | "run"): number {
  const last = posted.filter((message) => message.say === say).at(-1);
  return last && "id" in last ? last.id : Number.NaN;
}
