// The worker: keeps the records it was sent, runs heavy models, reads rain files, and studies in slices.

import { CARD_KINDS } from "../kinds/index.ts";
import { readRainFile } from "../rainfall/import-csv.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { runHeavy } from "../studies/heavy.ts";
import { tankSizes } from "../studies/tank-sizes.ts";
import type { FromWorker, ToWorker } from "./messages.ts";
import { inSlices } from "./slices.ts";

const records = new Map<string, DailyRecord>();
/** Imports and studies under way, each with the means to call it off. */
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

/** A macrotask, so that a season or a calling off that came meanwhile goes first. */
const rest = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

async function study({ id, question, record }: Extract<ToWorker, { say: "study" }>): Promise<void> {
  const held = records.get(record);
  if (!held) return answer({ say: "failed", id, reason: "The rain record is not here." });
  const control = new AbortController();
  underWay.set(id, control);
  try {
    const done = await inSlices(tankSizes(question, held), {
      signal: control.signal,
      onPart: (part) => answer({ say: "study_part", id, part }),
      rest,
    });
    if (done) answer({ say: "study_end", id, end: done.end });
  } catch (error) {
    answer({ say: "failed", id, reason: reasonOf(error) });
  } finally {
    underWay.delete(id);
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
    case "study":
      void study(data);
      return;
    default:
      try {
        const record = data.request.record === null ? null : (records.get(data.request.record) ?? null);
        answer({
          say: "answer",
          id: data.id,
          key: data.request.key,
          outputs: runHeavy(CARD_KINDS, data.request, record),
        });
      } catch (error) {
        answer({ say: "failed", id: data.id, reason: reasonOf(error) });
      }
  }
});
