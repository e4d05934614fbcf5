// A worker that is asked about one worksheet after another: it keeps what it has worked out of each under its full inputs.

import type { Value } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import type { Freeing } from "../season/relief.ts";
import { adviceOf } from "../studies/advice.ts";
import { type Answers, ask, type Base, baseOf, rebased } from "../studies/ask.ts";
import { runFreed } from "../studies/gives-out.ts";
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

/** The year's other moments, the same way. */
function momentsAnswers({ whole, known }: Base, today: number): Answers {
  const value = yearMoments(whole, [...known.records.values()], today);
  if ("failed" in value) throw new Error(value.failed);
  return { moments: { state: "ready", value: value as Value, origin: "computed" } };
}

/** What to do with today's water, the same way. */
function adviceAnswers({ whole, known }: Base): Answers {
  const value = adviceOf(whole, [...known.records.values()]);
  if ("failed" in value) throw new Error(value.failed);
  return { advice: { state: "ready", value, origin: "computed" } };
}

function answersOf(of: Base, run: Run, wanted: readonly string[]): Answers {
  if ("bounds" in run) return freedAnswers(of, run);
  if ("moments" in run) return momentsAnswers(of, run.moments);
  return "asks" in run ? adviceAnswers(of) : ask(of, run, wanted);
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
