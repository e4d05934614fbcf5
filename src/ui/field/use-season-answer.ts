// One answer that a page of the season asks for, from the moment its means are here.

import { createMemo, createResource } from "solid-js";
import { useSheet } from "../sheet.ts";
import type { SeasonAnswers, Standing } from "./season-answers.ts";

const WAITING = { answer: () => null, working: () => true, failure: () => "" };

/** Asks as long as the component that calls it stands. */
export function useSeasonAnswer<Answer>(ask: (answers: SeasonAnswers) => Standing<Answer>): Standing<Answer> {
  const sheet = useSheet();
  const [means] = createResource(() => sheet.seasonAnswers());
  const standing = createMemo((): Standing<Answer> => {
    const answers = means();
    return answers ? ask(answers) : WAITING;
  });
  return {
    answer: () => standing().answer(),
    working: () => standing().working(),
    failure: () => (means.error ? "What works this out could not be fetched." : standing().failure()),
  };
}
