// The page's side of the worker: what goes together, what waits, what is dropped.

import { describe, expect, test } from "vitest";
import type { Request } from "../../src/graph/types.ts";
import { workerClient } from "../../src/worker/client.ts";
import type { FromWorker, Ran, ToWorker } from "../../src/worker/messages.ts";

const request = (model: string, heavy = false): Request => ({
  key: model,
  model,
  cardKind: "season",
  input: {},
  record: null,
  heavy,
});

function standing() {
  const posted: ToWorker[] = [];
  const ran: (readonly Ran[])[] = [];
  let hear: (event: { readonly data: FromWorker }) => void = () => undefined;
  const client = workerClient(
    {
      postMessage: (message) => posted.push(message),
      addEventListener: (_type, listener) => (hear = listener),
    },
    {
      onRan: (answers) => ran.push(answers),
      onMadeUp: () => undefined,
      onProgress: () => undefined,
      onImported: () => undefined,
      onImportFailed: () => undefined,
    },
  );
  const runs = () => posted.flatMap((message) => (message.say === "run" ? [message] : []));
  return {
    ask: (...requests: readonly Request[]) => client.ask(requests, () => undefined),
    asked: () => runs().map(({ requests }) => requests.map(({ key }) => key)),
    finish: () => {
      const { id = 0, requests = [] } = runs().at(-1) ?? {};
      hear({ data: { say: "ran", id, answers: requests.map(({ key }) => ({ key, outputs: {} })) } });
    },
    ran,
  };
}

describe("the one warm worker", () => {
  test("what is quick goes in one message before what is heavy, heavy ones by themselves", () => {
    const { ask, asked, finish, ran } = standing();
    ask(request("run", true), request("roof"), request("week", true), request("bed"));
    expect(asked()).toEqual([["roof", "bed"]]);
    for (let rounds = 0; rounds < 3; rounds++) finish();
    expect(asked()).toEqual([["roof", "bed"], ["run"], ["week"]]);
    expect(ran).toHaveLength(3);
  });

  test("what waits is replaced by what is asked last; what runs is neither stopped nor asked again", () => {
    const { ask, asked, finish } = standing();
    ask(request("run 1", true));
    ask(request("run 2", true));
    ask(request("run 1", true), request("run 3", true));
    expect(asked()).toEqual([["run 1"]]);
    finish();
    expect(asked()).toEqual([["run 1"], ["run 3"]]);
    finish();
    ask();
    expect(asked()).toHaveLength(2);
  });
});
