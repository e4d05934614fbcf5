// What gives out first, asked anew in the background once the season of the open worksheet is in and nothing is turned.

import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { numberIn, valueIn, wordIn } from "../graph/readers.ts";
import type { Driver } from "../network/bounds.ts";
import type { SeasonInput } from "../season/input.ts";
import { boundsAtWork, type GivesOut } from "../season/relief.ts";
import { reliefBook, reliefStep } from "../studies/gives-out.ts";
import { givesOutSaid } from "../telling/gives-out.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { Engine } from "./engine.ts";

/** A number being turned goes on changing; this many runs wait until it rests [ms]. */
const REST = 900;
/** A page that was just opened has more urgent work [ms]. */
const FIRST_REST = 2500;

/** The sentence, or null while it is not known. */
export function createGivesOut(engine: Engine, asker: Asker) {
  const [answer, setAnswer] = createSignal<GivesOut | null>(null);
  const plan = createMemo(() => engine.view().results.get("season.plan"));
  const record = createMemo(() => engine.view().results.get("weather.record_in_use"));
  const short = createMemo(() => numberIn(engine.view().results.get("season.days_short")));
  let timer: ReturnType<typeof setTimeout> | undefined;
  let rest = FIRST_REST;

  const begin = (): void => {
    const held = engine.records.get(wordIn(record()));
    const input = valueIn(plan()) as SeasonInput | null;
    if (!input || !held) return;
    const bounds = boundsAtWork(input);
    const book = reliefBook();
    const { worksheet } = engine.view();
    const go = (): void => {
      const step = reliefStep(book, bounds);
      if ("answer" in step) {
        setAnswer(step.answer);
        return;
      }
      asker.ask(
        { worksheet, records: [held], runs: step.ask, wanted: [] },
        {
          onAnswers: (at, answers) => {
            const [days, seasons] = [numberIn(answers["freed.days"]), numberIn(answers["freed.seasons"])];
            const run = step.ask[at];
            if (run && days !== null && seasons !== null) book.put(run, { days, seasons });
          },
          onEnd: (failure) => {
            if (failure === null) go();
          },
        },
      );
    };
    go();
  };
  createEffect(
    on([plan, record, short], () => {
      clearTimeout(timer);
      asker.callOff();
      setAnswer(null);
      if (short() === null) return;
      timer = setTimeout(begin, rest);
      rest = REST;
    }),
  );
  onCleanup(() => {
    clearTimeout(timer);
    asker.callOff();
  });
  return createMemo(() => {
    const known = answer();
    const driver = (wordIn(engine.view().results.get("season.binding_driver")) || "either") as Driver;
    return known ? givesOutSaid(known, driver) : null;
  });
}
