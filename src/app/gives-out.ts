// What gives out first, asked anew in the background once the season of the open worksheet is in and nothing is turned.

import { type Accessor, batch, createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { numberIn, valueIn, wordIn } from "../graph/readers.ts";
import type { Results } from "../graph/results.ts";
import type { Result } from "../graph/types.ts";
import type { Bound } from "../network/bounds.ts";
import type { SeasonInput } from "../season/input.ts";
import { boundsAtWork, type GivesOut, type ShortDays } from "../season/relief.ts";
import { reliefBook, reliefStep } from "../studies/gives-out.ts";
import { givesOutFirst, givesOutSaid } from "../telling/gives-out.ts";
import { asDriver } from "../telling/words/bounds.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { Engine } from "./engine.ts";

/** A number being turned goes on changing; this many runs wait until it rests [ms]. */
const REST = 900;
/** A page that was just opened has more urgent work [ms]. */
const FIRST_REST = 2500;

type Season = { readonly plan: Result | undefined; readonly record: Result | undefined };

/** Asks what gives out of a season, one step after the other. */
function askedOf(
  engine: Engine,
  asker: Asker,
  { plan, record }: Season,
  onFound: (answer: GivesOut) => void,
): void {
  const held = engine.records.get(wordIn(record));
  const input = valueIn(plan) as SeasonInput | null;
  if (!input || !held) return;
  const bounds = boundsAtWork(input);
  const book = reliefBook();
  const { worksheet } = engine.view();
  const go = (): void => {
    const step = reliefStep(book, bounds);
    if ("answer" in step) {
      onFound(step.answer);
      return;
    }
    asker.ask(
      { worksheet, records: [held], runs: step.ask, wanted: [] },
      {
        onAnswers: (at, answers) => {
          const short = valueIn(answers["freed"]) as ShortDays | null;
          const run = step.ask[at];
          if (run && short) book.put(run, short);
        },
        onEnd: (failure) => {
          if (failure === null) go();
        },
      },
    );
  };
  go();
}

/** The sentences; of the short one the last stays, marked old, until the next is known. */
export function createGivesOut(
  engine: Engine,
  asker: Asker,
  baseline: Accessor<Pick<Results, "get"> | null>,
) {
  const [answer, setAnswer] = createSignal<GivesOut | null>(null);
  const [last, setLast] = createSignal<GivesOut | null>(null);
  const plan = createMemo(() => engine.view().results.get("season.plan"));
  const record = createMemo(() => engine.view().results.get("weather.record_in_use"));
  const short = createMemo(() => numberIn(engine.view().results.get("season.days_short")));
  let timer: ReturnType<typeof setTimeout> | undefined;
  let rest = FIRST_REST;
  /** What was found of each season, to say what it was. */
  const found = new WeakMap<object, { readonly record: Result | undefined; readonly answer: GivesOut }>();

  const begin = (): void => {
    const season = { plan: plan(), record: record() };
    askedOf(engine, asker, season, (answer) =>
      batch(() => {
        if (season.plan) found.set(season.plan, { record: season.record, answer });
        setAnswer(answer);
        setLast(answer);
      }),
    );
  };
  /** What gave out of the season that answers are set against; null where it was never found. */
  const before = (): GivesOut | null => {
    const then = baseline()?.get("season.plan");
    const known = then && found.get(then);
    return known && known.record === baseline()?.get("weather.record_in_use") ? known.answer : null;
  };
  createEffect(
    on([plan, record, short], () => {
      clearTimeout(timer);
      asker.callOff();
      setAnswer(null);
      if (short() === null) {
        // Where the season is being run anew the last answer stays; where it cannot be run there is none.
        if (engine.view().results.get("season.days_short")?.state !== "pending") setLast(null);
        return;
      }
      timer = setTimeout(begin, rest);
      rest = REST;
    }),
  );
  onCleanup(() => {
    clearTimeout(timer);
    asker.callOff();
  });
  const driver = createMemo(() => asDriver(wordIn(engine.view().results.get("season.binding_driver"))));
  return {
    givesOut: createMemo(() => {
      const known = answer();
      return known ? givesOutSaid(known, driver()) : null;
    }),
    /** What gives out first; of several alike, or of two together, all. */
    bounds: (): readonly Bound[] => {
      const known = last();
      return known && "first" in known ? known.first.flatMap(({ bounds }) => bounds) : [];
    },
    givesOutFirst: createMemo(() => {
      const known = last();
      if (!known) return null;
      const old = answer() === null;
      return { sentence: givesOutFirst(known, driver(), old ? null : before()), old };
    }),
  };
}

export type GivingOut = ReturnType<typeof createGivesOut>;
