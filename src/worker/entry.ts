// The worker: keeps the records it was sent, runs heavy models, and reads rain files.

import type { Request } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { readRainFile } from "../rainfall/import-csv.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { runHeavy } from "../studies/heavy.ts";
import { forgetOldest, isMadeUpKey, madeUpRecord } from "../studies/made-up-records.ts";
import type { FromWorker, Ran, ToWorker } from "./messages.ts";

/** Made-up records that are kept: the one in use, and those that undo may want. */
const MADE_UP_KEPT = 4;

const records = new Map<string, DailyRecord>();
/** Imports under way, each with the means to call it off. */
const underWay = new Map<number, AbortController>();

const answer = (message: FromWorker): void => postMessage(message);

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

async function bringIn(message: Extract<ToWorker, { say: "import" }>): Promise<void> {
  const control = new AbortController();
  underWay.set(message.id, control);
  try {
    const result = await readRainFile(message.file, {
      title: message.name,
      choices: message.choices,
      signal: control.signal,
      onProgress: (share) => answer({ say: "progress", id: message.id, share }),
    });
    if (!control.signal.aborted) answer({ say: "imported", id: message.id, result });
  } catch (error) {
    if (!control.signal.aborted) answer({ say: "failed", id: message.id, reason: reasonOf(error) });
  } finally {
    underWay.delete(message.id);
  }
}

/** The record of a key; one that is made up is made here, and shown to the page once. */
function recordOf(key: string | null): DailyRecord | null {
  if (key === null) return null;
  const known = records.get(key);
  if (known) return known;
  if (!isMadeUpKey(key)) return null;
  const record = madeUpRecord(key);
  records.set(key, record);
  forgetOldest(records, MADE_UP_KEPT, isMadeUpKey);
  answer({ say: "made_up", record });
  return record;
}

function ranFor(request: Request): Ran {
  try {
    return { key: request.key, outputs: runHeavy(CARD_KINDS, request, recordOf(request.record)) };
  } catch (error) {
    return { key: request.key, failed: reasonOf(error) };
  }
}

addEventListener("message", ({ data }: { readonly data: ToWorker }) => {
  switch (data.say) {
    case "record":
      records.set(data.record.key, data.record);
      return;
    case "cancel":
      underWay.get(data.id)?.abort();
      return;
    case "import":
      void bringIn(data);
      return;
    default:
      answer({ say: "ran", id: data.id, answers: data.requests.map(ranFor) });
  }
});
