// An asker as somebody who waits for all answers at once uses it.

import type { Answers } from "../studies/ask.ts";
import type { Question } from "../worker/asking-messages.ts";
import type { Asker } from "../worker/asking-pool.ts";

/**
 * Asks and waits for all answers, in the order of the runs; never ends where the question is called off by the next one.
 *
 * @param onDone how many are in
 */
export function askAll(
  asker: Asker,
  question: Question,
  onDone: (count: number) => void = () => undefined,
): Promise<readonly (Answers | undefined)[]> {
  return new Promise((resolve, reject) => {
    const all: (Answers | undefined)[] = question.runs.map(() => undefined);
    let count = 0;
    asker.ask(question, {
      onAnswers: (at, answers) => {
        all[at] = answers;
        count += 1;
        onDone(count);
      },
      onEnd: (failure) => (failure === null ? resolve(all) : reject(new Error(failure))),
    });
  });
}
