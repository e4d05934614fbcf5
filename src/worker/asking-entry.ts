// A worker that is asked about one worksheet after another: it keeps what it has worked out of each under its full inputs.

import { CARD_KINDS } from "../kinds/index.ts";
import { ask, type Base, baseOf, rebased } from "../studies/ask.ts";
import type { FromAsked, ToAsked } from "./asking-messages.ts";

let base: Base | null = null;

const say = (message: FromAsked): void => postMessage(message);

function newBase({ worksheet, records }: Extract<ToAsked, { say: "base" }>): Base {
  if (!base) return baseOf(worksheet, CARD_KINDS, records);
  for (const record of records) base.known.records.set(record.key, record);
  return rebased(base, worksheet);
}

addEventListener("message", ({ data }: { readonly data: ToAsked }) => {
  if (data.say === "base") {
    base = newBase(data);
    return;
  }
  const { id } = data;
  try {
    if (!base) throw new Error("No worksheet was laid before this worker.");
    say({ say: "answers", id, answers: ask(base, data.changes, data.wanted) });
  } catch (error) {
    say({ say: "failed", id, reason: error instanceof Error ? error.message : String(error) });
  }
});
