// A worker that is asked about one worksheet after another: it keeps what it has worked out of each under its full inputs.

import { CARD_KINDS } from "../kinds/index.ts";
import type { Freeing } from "../season/relief.ts";
import { adviceOf } from "../studies/advice.ts";
import { type Answers, ask, type Base, baseOf, rebased } from "../studies/ask.ts";
import { type LastsAsked, lastsOf } from "../studies/from-today.ts";
import { runFreed } from "../studies/gives-out.ts";
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

/** How long it lasts, as an answer under a name that no quantity has. */
function lastsAnswers({ whole, known }: Base, run: LastsAsked): Answers {
  const lasts = lastsOf(whole, [...known.records.values()], run);
  if ("failed" in lasts) throw new Error(lasts.failed);
  return { lasts: { state: "ready", value: lasts, origin: "computed" } };
}

/** What to do with today's water, the same way. */
function adviceAnswers({ whole, known }: Base): Answers {
  const value = adviceOf(whole, [...known.records.values()]);
  if ("failed" in value) throw new Error(value.failed);
  return { advice: { state: "ready", value, origin: "computed" } };
}

function answersOf(of: Base, run: Run, wanted: readonly string[]): Answers {
  if ("bounds" in run) return freedAnswers(of, run);
  if ("lasts" in run) return lastsAnswers(of, run);
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
