// The page's side of a study: one at a time, its parts as they come, called off when another is asked for.

import type { DailyRecord } from "../rainfall/record.ts";
import type { SizePoint, SizeQuestion } from "../studies/tank-sizes.ts";
import type { FromWorker, ToWorker } from "./messages.ts";

/** Hears of one study; nothing more comes after `onEnd`, or once it was called off. */
export type StudyEvents = {
  readonly onPart: (part: SizePoint) => void;
  /** At the end: null, or why there is no answer. */
  readonly onEnd: (failure: string | null) => void;
};

export type StudyClient = {
  /** Begins a study, the one before it called off. */
  readonly study: (question: SizeQuestion, record: DailyRecord, events: StudyEvents) => void;
  readonly cancelStudy: () => void;
};

/** What studies need of the line to the worker. */
export type StudyLine = {
  readonly post: (message: ToWorker) => void;
  /** Sends a record that was not sent before. */
  readonly sendRecord: (record: DailyRecord) => void;
  /** A number that no message bears yet. */
  readonly nextId: () => number;
};

/** Studies over a line, and the ear for what the worker says of them. */
export function studyClient(line: StudyLine): StudyClient & { readonly hear: (message: FromWorker) => void } {
  let current: { readonly id: number; readonly events: StudyEvents } | null = null;
  const cancelStudy = (): void => {
    if (current) line.post({ say: "cancel", id: current.id });
    current = null;
  };
  const end = (failure: string | null): void => {
    const { onEnd } = current?.events ?? {};
    current = null;
    onEnd?.(failure);
  };
  return {
    cancelStudy,
    study: (question, record, events) => {
      cancelStudy();
      line.sendRecord(record);
      current = { id: line.nextId(), events };
      line.post({ say: "study", id: current.id, question, record: record.key });
    },
    hear: (message) => {
      if (!current || !("id" in message) || message.id !== current.id) return;
      if (message.say === "study_part") current.events.onPart(message.part);
      if (message.say === "study_end") end(message.end?.failed ?? null);
      if (message.say === "failed") end(message.reason);
    },
  };
}
