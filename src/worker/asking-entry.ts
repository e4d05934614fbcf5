// A worker that is asked about one worksheet after another: it keeps what it has worked out of each under its full inputs.

import type { Value } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import type { Freeing } from "../season/relief.ts";
import { adviceOf } from "../studies/advice.ts";
import { type Answers, ask, type Base, baseOf, rebased } from "../studies/ask.ts";
import { lastsOf } from "../studies/from-today.ts";
import { runFreed } from "../studies/gives-out.ts";
import { stickOf } from "../studies/stick.ts";
import { yearMoments } from "../studies/year-moments.ts";
import type { FromAsked, Run, ToAsked } from "./asking-messages.ts";

let base: Base | null = null;

const say = (message: FromAsked): void => postMessage(message);

function newBase({ worksheet, records }: Extract<ToAsked, { say: "base" }>): Base {
  if (!base) return baseOf(worksheet, CARD_KINDS, records);
  for (const record of records) base.known.records.set(record.key, record);
  return rebased(base, worksheet);
}

/** Short days with bounds free, as an answer under a name that no quantity has. */
function freedAnswers(of: Base, run: Freeing): Answers {
  const short = runFreed(of, run);
  if ("failed" in short) throw new Error(short.failed);
  return { freed: { state: "ready", value: short, origin: "computed" } };
}

/** The one answer of a question that is no quantity, under its name. */
function answered(name: string, value: object): Answers {
  if ("failed" in value) throw new Error(String(value.failed));
  return { [name]: { state: "ready", value: value as Value, origin: "computed" } };
}

function answersOf(of: Base, run: Run, wanted: readonly string[]): Answers {
  const { whole, known } = of;
  const records = [...known.records.values()];
  if ("bounds" in run) return freedAnswers(of, run);
  if ("lasts" in run) return answered("lasts", lastsOf(whole, records, run));
  if ("moments" in run) return answered("moments", yearMoments(whole, records, run.moments));
  if (!("asks" in run)) return ask(of, run, wanted);
  const { asks } = run;
  return answered(asks, asks === "advice" ? adviceOf(whole, records) : stickOf(whole, records));
}

addEventListener("message", ({ data }: { readonly data: ToAsked }) => {
  if (data.say === "base") {
    base = newBase(data);
    return;
  }
  const { id } = data;
  try {
    if (!base) throw new Error("No worksheet was laid before this worker.");
    const { run, wanted } = data;
    say({ say: "answers", id, answers: answersOf(base, run, wanted) });
  } catch (error) {
    say({ say: "failed", id, reason: error instanceof Error ? error.message : String(error) });
  }
});
