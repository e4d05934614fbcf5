// The worker: keeps the records it was sent, runs heavy models, and reads rain files.

import { CARD_KINDS } from "../kinds/index.ts";
import { readRainFile } from "../rainfall/import-csv.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { runHeavy } from "../studies/heavy.ts";
import type { FromWorker, ToWorker } from "./messages.ts";

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
