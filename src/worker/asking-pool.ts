// The page's side of questions about a whole worksheet: a few workers share a question's runs, the next question calls it
// off, and a worker that dies is replaced and its run asked again.

import type { Worksheet } from "../document/worksheet.ts";
import type { Answers } from "../studies/ask.ts";
import { type AskedMember, type AskedWorker, askedMember, type RunEnd } from "./asked-member.ts";
import type { Question } from "./asking-messages.ts";

/** Hears of one question; nothing more comes after `onEnd`, or once it was called off. */
export type QuestionEvents = {
  /** Answers of the run at a place of `runs`. */
  readonly onAnswers: (at: number, answers: Answers) => void;
  /** At the end: null, or why there is no answer. */
  readonly onEnd: (failure: string | null) => void;
};

/** Somebody who asks one question at a time. */
export type Asker = {
  /** Asks a question, the one before called off. */
  readonly ask: (question: Question, events: QuestionEvents) => void;
  readonly callOff: () => void;
};

export type AskingPool = { readonly asker: () => Asker };

/** Workers that a run may cost before it is given up. */
const MOST_DEATHS = 3;
const DIED = "Working this out broke off again and again.";
const KEPT = 400;

/** Answers by their full inputs: worksheets are frozen, so that the same object is the same sheet. */
function answerShelf() {
  const bySheet = new WeakMap<Worksheet, Map<string, Answers>>();
  const keyOf = ({ records, wanted, runs }: Question, at: number) =>
    JSON.stringify([records.map(({ key }) => key), wanted, runs[at]]);
  return {
    find: (question: Question, at: number) => bySheet.get(question.worksheet)?.get(keyOf(question, at)),
    keep: (question: Question, at: number, answers: Answers): void => {
      const kept = bySheet.get(question.worksheet) ?? new Map<string, Answers>();
      bySheet.set(question.worksheet, kept);
      kept.set(keyOf(question, at), answers);
      for (const old of kept.keys()) {
        if (kept.size <= KEPT) break;
        kept.delete(old);
      }
    },
  };
}

/** The runs of one question: which are open, which were answered, and the end. */
function asking(question: Question, events: QuestionEvents, shelf: ReturnType<typeof answerShelf>) {
  const open: number[] = [];
  const deaths = new Map<number, number>();
  let left = question.runs.length;
  let live = true;
  const end = (failure: string | null): void => {
    if (!live) return;
    live = false;
    events.onEnd(failure);
  };
  const take = (at: number, answers: Answers): void => {
    shelf.keep(question, at, answers);
    if (!live) return;
    left -= 1;
    events.onAnswers(at, answers);
    if (left === 0) end(null);
  };
  const buried = (at: number): void => {
    deaths.set(at, (deaths.get(at) ?? 0) + 1);
    if ((deaths.get(at) ?? 0) >= MOST_DEATHS) end(DIED);
    else open.unshift(at);
  };
  return {
    question,
    begin: (): void => {
      for (let at = 0; at < question.runs.length; at++) {
        const known = shelf.find(question, at);
        if (known) take(at, known);
        else open.push(at);
      }
      if (left === 0) end(null);
    },
    isOpen: (): boolean => live && open.length > 0,
    next: (): number | undefined => (live ? open.shift() : undefined),
    ended: (at: number, run: RunEnd): void => {
      if (!run) buried(at);
      else if ("failed" in run) end(run.failed);
      else take(at, run.answers);
    },
    callOff: (): void => {
      live = false;
    },
  };
}

type Asking = ReturnType<typeof asking>;

/**
 * So many workers, made when they are first needed, shared by whoever asks. Each asker has one question at a time, its
 * next calls it off; of several askers the one who asked last is served first.
 */
export function askingPool(makeWorker: () => AskedWorker, size: number): AskingPool {
  const members: AskedMember[] = [];
  const shelf = answerShelf();
  let open: readonly Asking[] = [];

  const idle = (): AskedMember | null => {
    const free = members.find((member) => member.isIdle());
    if (free || members.length >= size) return free ?? null;
    const fresh = askedMember(makeWorker);
    members.push(fresh);
    return fresh;
  };
  const feed = (): void => {
    for (;;) {
      const asked = open.find((one) => one.isOpen());
      const member = asked ? idle() : null;
      const at = member ? asked?.next() : undefined;
      if (!asked || !member || at === undefined) return;
      member.run(asked.question, at, (end) => {
        asked.ended(at, end);
        feed();
      });
    }
  };
  const dismiss = (asked: Asking | null): void => {
    asked?.callOff();
    open = open.filter((one) => one !== asked);
  };
  return {
    asker: () => {
      let current: Asking | null = null;
      const callOff = (): void => {
        dismiss(current);
        current = null;
      };
      return {
        callOff,
        ask: (question, events) => {
          callOff();
          const asked = asking(question, events, shelf);
          current = asked;
          open = [asked, ...open];
          asked.begin();
          feed();
        },
      };
    },
  };
}
