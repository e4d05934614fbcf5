// What was answered of the questions that a rain file puts, and the likeliest answers that stand until then.

import type { Choices, Question } from "../rainfall/import-result.ts";
import { withChoice } from "./rain-words.ts";

export function createChoices() {
  let chosen: Choices = {};
  /** The likeliest answer to each question that has one: chosen beforehand, and taken only with the record. */
  let likely: Choices = {};
  /** Whether the likeliest answers made a file that cannot be read: then nothing is chosen beforehand. */
  let isPlain = false;
  let asked: readonly Question[] = [];
  /** The choices before the last, to go back to where the file cannot be read as was said. */
  let before: Choices = {};
  const all = (): Choices => (isPlain ? chosen : { ...likely, ...chosen });
  return {
    all,
    /** Without those that were only the likeliest. */
    chosen: (): Choices => chosen,
    choose: (question: string, value: string): void => {
      before = chosen;
      chosen = withChoice(chosen, question, value);
    },
    back: (): void => {
      chosen = before;
    },
    clear: (): void => {
      chosen = {};
      likely = {};
      isPlain = false;
      before = {};
      asked = [];
    },
    /** Takes the likeliest answers up; whether any is new. */
    presume: (questions: readonly Question[]): boolean => {
      const open = questions.filter(({ id, likely: value }) => value !== null && !(id in all()));
      if (isPlain || open.length === 0) return false;
      for (const { id, likely: value } of open) likely = withChoice(likely, id, value ?? "");
      return true;
    },
    /** Lets the likeliest answers go where nothing else was said; whether that changes anything. */
    readPlainly: (): boolean => {
      if (isPlain || Object.keys(likely).length === 0 || Object.keys(chosen).length > 0) return false;
      isPlain = true;
      return true;
    },
    /** Everything asked so far, these questions too. */
    askedWith: (questions: readonly Question[]): readonly Question[] => {
      asked = [...asked, ...questions.filter((one) => !asked.some((other) => other.id === one.id))];
      return asked;
    },
  };
}
