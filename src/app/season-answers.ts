// What the pages of the season ask of the whole worksheet, by the workers, while they stand; loaded when first asked for.

import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { valueIn } from "../graph/readers.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { KIND_WORDS } from "../kinds/words.ts";
import { toldMoments } from "../studies/told-moments.ts";
import type { YearMoments } from "../studies/year-moments.ts";
import type { SeasonAnswers, Standing } from "../ui/field/season-answers.ts";
import { parseIsoDate } from "../units/calendar.ts";
import { showQuantity } from "../units/show.ts";
import type { Run } from "../worker/asking-messages.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { today } from "./clock.ts";
import { type Engine, recordsInUse } from "./engine.ts";
import type { InHandTools } from "./turned.ts";

/** A thumb that notes goes on noting [ms]. */
const REST = 250;

/** One run asked anew whenever the sheet changes, until whoever asks is gone. */
function standing<Answer>(engine: Engine, asker: Asker, name: string, run: () => Run): Standing<Answer> {
  const [answer, setAnswer] = createSignal<Answer | null>(null);
  const [working, setWorking] = createSignal(true);
  const [failure, setFailure] = createSignal("");
  let timer: ReturnType<typeof setTimeout> | undefined;
  const begin = (): void => {
    const { worksheet } = engine.view();
    asker.ask(
      { worksheet, records: recordsInUse(engine), runs: [run()], wanted: [] },
      {
        onAnswers: (_, answers) => {
          const value = valueIn(answers[name]) as Answer | { readonly failed: string } | null;
          const failed = value && typeof value === "object" && "failed" in value ? value.failed : "";
          setFailure(String(failed));
          if (failed === "") setAnswer(() => value as Answer);
        },
        onEnd: (failed) => {
          setWorking(false);
          if (failed !== null) setFailure(failed);
        },
      },
    );
  };
  const sheet = createMemo(() => engine.view().worksheet);
  createEffect(
    on(sheet, () => {
      clearTimeout(timer);
      asker.callOff();
      setWorking(true);
      timer = setTimeout(begin, answer() ? REST : 0);
    }),
  );
  onCleanup(() => {
    clearTimeout(timer);
    asker.callOff();
  });
  return { answer, working, failure };
}

export function createSeasonAnswers({ session, options }: InHandTools, asker: () => Asker): SeasonAnswers {
  const { engine } = session;
  return {
    moments: () => {
      const asked = standing<YearMoments>(engine, asker(), "moments", () => ({
        moments: parseIsoDate(today()) ?? 0,
      }));
      const told = createMemo(() => {
        const moments = asked.answer();
        const show = (si: number, measure: Parameters<typeof showQuantity>[1]) =>
          showQuantity(si, measure, { ...options(), rounded: true });
        return moments && toldMoments(engine.view(), moments, { kinds: CARD_KINDS, words: KIND_WORDS }, show);
      });
      return { ...asked, answer: told };
    },
  };
}
