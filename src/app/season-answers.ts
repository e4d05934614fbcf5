// What the pages of the season ask of the whole worksheet, by the workers, while they stand; loaded when first asked for.

import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { valueIn } from "../graph/readers.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { KIND_WORDS } from "../kinds/words.ts";
import type { Advice, NoAdvice } from "../season/advice.ts";
import type { WeekGiven } from "../season/week-plan.ts";
import type { Stick } from "../studies/stick.ts";
import { toldMoments } from "../studies/told-moments.ts";
import type { YearMoments } from "../studies/year-moments.ts";
import { adviceTold, noAdviceSaid } from "../telling/advice.ts";
import type { Show } from "../telling/bed-day.ts";
import { stickTold } from "../telling/stick.ts";
import type { SeasonAnswers, Standing } from "../ui/field/season-answers.ts";
import { parseIsoDate } from "../units/calendar.ts";
import { showQuantity } from "../units/show.ts";
import type { Run } from "../worker/asking-messages.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { recordsInUse } from "./engine.ts";
import type { Session } from "./session.ts";
import type { InHandTools } from "./turned.ts";

/** A thumb that notes goes on noting [ms]. */
const REST = 250;

/** One run asked anew whenever the sheet changes or a new day comes, until whoever asks is gone. */
function standing<Answer>(
  { engine, day }: Session,
  asker: Asker,
  name: string,
  run: () => Run,
): Standing<Answer> {
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
          setFailure("");
          setAnswer(() => valueIn(answers[name]) as Answer);
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
    on([sheet, day], () => {
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
  const show: Show = (si, measure) => showQuantity(si, measure, { ...options(), rounded: true });
  const titleOf = (id: string): string =>
    engine.view().worksheet.cards.find((card) => card.id === id)?.title ?? id;
  return {
    moments: () => {
      const asked = standing<YearMoments>(session, asker(), "moments", () => ({
        moments: parseIsoDate(session.day()) ?? 0,
      }));
      const told = createMemo(() => {
        const moments = asked.answer();
        return moments && toldMoments(engine.view(), moments, { kinds: CARD_KINDS, words: KIND_WORDS }, show);
      });
      return { ...asked, answer: told };
    },
    advice: () => {
      const asked = standing<Advice | NoAdvice>(session, asker(), "advice", () => ({ asks: "advice" }));
      const told = createMemo(() => {
        const advice = asked.answer();
        if (!advice || !("choices" in advice)) return null;
        const given = valueIn(engine.view().results.get("season.week_given")) as WeekGiven | null;
        return adviceTold(advice, titleOf, show, Object.keys(given?.forecast ?? {}).length > 0);
      });
      const failure = (): string => {
        const advice = asked.answer();
        return advice && !("choices" in advice) ? noAdviceSaid(advice) : asked.failure();
      };
      return { ...asked, answer: told, failure };
    },
    stick: (tank) => {
      const asked = standing<Stick | NoAdvice>(session, asker(), "stick", () => ({ asks: "stick" }));
      const told = createMemo(() => {
        const stick = asked.answer();
        return stick && "marks" in stick ? stickTold(stick, tank, titleOf) : null;
      });
      return { ...asked, answer: told };
    },
  };
}
