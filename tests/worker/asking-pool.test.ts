// Questions over a pool of workers: shared runs, called off by the next one, kept, and asked again where a worker dies.

import { expect, test } from "vitest";
import type { Change } from "../../src/document/changes.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import type { Answers } from "../../src/studies/ask.ts";
import type { AskedWorker } from "../../src/worker/asked-member.ts";
import type { FromAsked, Question, ToAsked } from "../../src/worker/asking-messages.ts";
import { askingPool } from "../../src/worker/asking-pool.ts";
import { recordOf } from "../season/made.ts";

type Fake = {
  readonly posted: ToAsked[];
  readonly answer: (answers: Answers) => void;
  readonly refuse: (reason: string) => void;
  readonly die: () => void;
  ended: boolean;
};

/** Workers that answer when they are told to. */
function fakes() {
  const made: Fake[] = [];
  const make = (): AskedWorker => {
    let hear: (event: { readonly data: FromAsked }) => void = () => undefined;
    let fail: () => void = () => undefined;
    const posted: ToAsked[] = [];
    const lastId = () => posted.reduce((id, message) => (message.say === "ask" ? message.id : id), 0);
    const fake: Fake = {
      posted,
      answer: (answers) => hear({ data: { say: "answers", id: lastId(), answers } }),
      refuse: (reason) => hear({ data: { say: "failed", id: lastId(), reason } }),
      die: () => fail(),
      ended: false,
    };
    made.push(fake);
    return {
      postMessage: (message) => posted.push(message),
      terminate: () => {
        fake.ended = true;
      },
      addEventListener: (type: string, listener: never) => {
        if (type === "message") hear = listener;
        else fail = listener;
      },
    };
  };
  return { made, make };
}

const sheet = { cards: [] } as unknown as Worksheet;
const record = recordOf([1, 2], 0, { key: "rain" });
const change = (value: number): Change => ({
  card: "tank",
  part: "givens",
  row: "capacity",
  entry: { value, unit: "L" },
});
const question = (...values: readonly number[]): Question => ({
  worksheet: sheet,
  records: [record],
  runs: values.map((value) => [change(value)]),
  wanted: ["season.days_short"],
});
const answers = (value: number): Answers => ({
  "season.days_short": { state: "ready", value, origin: "computed" },
});

function listener() {
  const heard: unknown[] = [];
  return {
    heard,
    events: {
      onAnswers: (at: number) => heard.push(at),
      onEnd: (failure: string | null) => heard.push(failure ?? "end"),
    },
  };
}

const asks = (fake: Fake | undefined) => fake?.posted.filter(({ say }) => say === "ask").length;

test("two workers share a question's runs, each laid the sheet and its record once, and it ends when all are in", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 2).asker();
  const { heard, events } = listener();
  pool.ask(question(1, 2, 3), events);
  expect(made).toHaveLength(2);
  made[1]?.answer(answers(2));
  made[0]?.answer(answers(1));
  made[1]?.answer(answers(3));
  expect(heard).toEqual([1, 0, 2, "end"]);
  expect(made[1]?.posted.map(({ say }) => say)).toEqual(["base", "ask", "ask"]);
  expect(made[0]?.posted[0]).toMatchObject({ say: "base", records: [record] });
});

test("workers are made only when there is a run for them", () => {
  const { made, make } = fakes();
  askingPool(make, 4).asker().ask(question(1), listener().events);
  expect(made).toHaveLength(1);
});

test("the next question calls the one before off: nothing more is heard of it, its waiting runs are never begun", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1).asker();
  const [first, second] = [listener(), listener()];
  pool.ask(question(1, 2, 3), first.events);
  pool.ask(question(7), second.events);
  made[0]?.answer(answers(1));
  expect(asks(made[0])).toBe(2);
  made[0]?.answer(answers(7));
  expect(first.heard).toEqual([]);
  expect(second.heard).toEqual([0, "end"]);
});

test("G9: an answer is kept under its full input, even one that came after its question was called off", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1).asker();
  pool.ask(question(1, 2), listener().events);
  pool.callOff();
  made[0]?.answer(answers(1));
  const again = listener();
  pool.ask(question(1), again.events);
  expect(again.heard).toEqual([0, "end"]);
  const other = listener();
  pool.ask({ ...question(1), worksheet: { ...sheet } }, other.events);
  expect(other.heard).toEqual([]);
  expect(asks(made[0])).toBe(2);
});

test("a worker that dies is replaced and its run asked again, with the sheet laid anew", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1).asker();
  const { heard, events } = listener();
  pool.ask(question(1), events);
  made[0]?.die();
  expect(made[0]?.ended).toBe(true);
  expect(made[1]?.posted.map(({ say }) => say)).toEqual(["base", "ask"]);
  made[0]?.answer(answers(9));
  expect(heard).toEqual([]);
  made[1]?.answer(answers(1));
  expect(heard).toEqual([0, "end"]);
});

test("a run that kills three workers ends the question with a reason, and the next question is answered", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1).asker();
  const { heard, events } = listener();
  pool.ask(question(1, 2), events);
  for (const at of [0, 1, 2]) made[at]?.die();
  expect(heard).toEqual(["Working this out broke off again and again."]);
  const next = listener();
  pool.ask(question(5), next.events);
  made[3]?.answer(answers(5));
  expect(next.heard).toEqual([0, "end"]);
});

test("a worker that dies while it has nothing to do is replaced only by the next run: one that cannot load does not die for ever", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1).asker();
  pool.ask(question(1), listener().events);
  made[0]?.answer(answers(1));
  made[0]?.die();
  expect(made[0]?.ended).toBe(true);
  expect(made).toHaveLength(1);
  const next = listener();
  pool.ask(question(2), next.events);
  expect(made[1]?.posted.map(({ say }) => say)).toEqual(["base", "ask"]);
  made[1]?.answer(answers(2));
  expect(next.heard).toEqual([0, "end"]);
});

test("a question that kills its workers leaves none standing", () => {
  const { made, make } = fakes();
  askingPool(make, 1).asker().ask(question(1), listener().events);
  for (const at of [0, 1, 2]) made[at]?.die();
  expect(made.map(({ ended }) => ended)).toEqual([true, true, true]);
});

test("a question asked from within the end of another is answered, from the shelf too", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 2).asker();
  const second = listener();
  const again = listener();
  const thirdAsked = { onAnswers: second.events.onAnswers, onEnd: () => pool.ask(question(1), again.events) };
  pool.ask(question(1), { onAnswers: () => undefined, onEnd: () => pool.ask(question(2), thirdAsked) });
  made[0]?.answer(answers(1));
  expect(asks(made[0])).toBe(2);
  made[0]?.answer(answers(2));
  expect(second.heard).toEqual([0]);
  expect(again.heard).toEqual([0, "end"]);
  expect(asks(made[0])).toBe(2);
});

test("a question asked from within an answer that was on the shelf calls its own off at once", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1).asker();
  pool.ask(question(1), listener().events);
  made[0]?.answer(answers(1));
  const [first, second] = [listener(), listener()];
  pool.ask(question(1, 2, 3), {
    ...first.events,
    onAnswers: () => pool.ask(question(9), second.events),
  });
  made[0]?.answer(answers(9));
  expect(first.heard).toEqual([]);
  expect(second.heard).toEqual([0, "end"]);
  expect(asks(made[0])).toBe(2);
});

test("what a worker says it could not work out ends the question with its reason", () => {
  const { made, make } = fakes();
  const { heard, events } = listener();
  askingPool(make, 1).asker().ask(question(1, 2), events);
  made[0]?.refuse("The rain record is not here.");
  expect(heard).toEqual(["The rain record is not here."]);
});

test("a question without runs ends at once", () => {
  const { heard, events } = listener();
  askingPool(fakes().make, 1).asker().ask(question(), events);
  expect(heard).toEqual(["end"]);
});

test("of two askers the one who asked last is served first, and neither calls the other off", () => {
  const { made, make } = fakes();
  const pool = askingPool(make, 1);
  const [slow, quick] = [listener(), listener()];
  pool.asker().ask(question(1, 2), slow.events);
  pool.asker().ask(question(7), quick.events);
  made[0]?.answer(answers(1));
  made[0]?.answer(answers(7));
  expect(quick.heard).toEqual([0, "end"]);
  made[0]?.answer(answers(2));
  expect(slow.heard).toEqual([0, 1, "end"]);
});
