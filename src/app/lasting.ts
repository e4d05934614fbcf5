// How long the water lasts from today, asked of the workers while somebody looks at it: a few past years first, then all.
// Loaded when it is first asked for.

import { batch, createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { isReady, valueIn, wordIn } from "../graph/readers.ts";
import { type Forecast, forecastText, readForecastText } from "../season/forecast.ts";
import type { SeasonInput } from "../season/input.ts";
import { type FromToday, joinedOdds } from "../season/odds.ts";
import type { LastsAsked } from "../studies/from-today.ts";
import { isMadeUpKey } from "../studies/made-up-records.ts";
import type { Lasting } from "../ui/field/lasting.ts";
import { parseIsoDate } from "../units/calendar.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { recordsInUse } from "./engine.ts";
import type { Session } from "./session.ts";

/** In so many parts the past years are run: the first is told at once. */
const PARTS = 4;

/** What is asked of a season: of made-up weather all at once, as it gives no odds to be told in parts. */
function askedOf(plan: SeasonInput, isMadeUp: boolean): readonly LastsAsked[] {
  const all: LastsAsked = { lasts: { from: 0, every: 1 } };
  const parts = isMadeUp ? 1 : PARTS;
  const first = [...plan.beds].sort((a, b) => a.priority - b.priority)[0];
  return [
    ...Array.from({ length: parts }, (_, from): LastsAsked => ({ lasts: { from, every: parts } })),
    ...(first && plan.beds.length > 1 ? [{ ...all, only: first.id }] : []),
  ];
}

/** What was answered so far, and when all of it is in. */
function createFound() {
  const [now, setNow] = createSignal<FromToday | null>(null);
  const [settled, setSettled] = createSignal<FromToday | null>(null);
  const [alone, setAlone] = createSignal<{ readonly bed: string; readonly from: FromToday } | null>(null);
  const [working, setWorking] = createSignal(false);
  const forget = (): void => {
    setNow(null);
    setSettled(null);
    setAlone(null);
    setWorking(false);
  };
  /** Begins to wait for the answers of runs; the one of a bed alone is not waited for. */
  const awaiting = (runs: readonly LastsAsked[]) => {
    let found: FromToday | null = null;
    let left = runs.filter(({ only }) => only === undefined).length;
    const take = (from: FromToday): void => {
      found = found ? joinedOdds(found, from) : from;
      left -= 1;
      const all = found;
      batch(() => {
        setNow(all);
        if (left > 0) return;
        setSettled(all);
        setWorking(false);
      });
    };
    setWorking(true);
    return (at: number, from: FromToday | null): void => {
      const bed = runs[at]?.only;
      if (from && bed !== undefined) setAlone({ bed, from });
      else if (from) take(from);
    };
  };
  return { told: { now, settled, alone, working }, forget, awaiting, setWorking };
}

/** Asks anew whenever the season, the weather or what is known of today changes, as long as somebody looks. */
function createAsking({ engine }: Session, asker: Asker) {
  const [looked, setLooked] = createSignal(0);
  const [failure, setFailure] = createSignal("");
  const { told, forget, awaiting, setWorking } = createFound();
  const of = (id: string) => createMemo(() => engine.view().results.get(id));
  const [plan, given, record] = [of("season.plan"), of("season.week_given"), of("weather.record_in_use")];
  const isAsked = (): boolean => isReady(plan()) && isReady(given()) && isReady(record());
  const begin = (): void => {
    const input = valueIn(plan()) as SeasonInput;
    const key = wordIn(record());
    const runs = askedOf(input, isMadeUpKey(key) || engine.records.get(key)?.madeUp === true);
    const { worksheet } = engine.view();
    const take = awaiting(runs);
    asker.ask(
      { worksheet, records: recordsInUse(engine), runs, wanted: [] },
      {
        onAnswers: (at, answers) => take(at, valueIn(answers["lasts"]) as FromToday | null),
        onEnd: (reason) => {
          setWorking(false);
          if (reason === null) return;
          // What was told of the sheet as it was is true no more.
          forget();
          setFailure(reason);
        },
      },
    );
  };
  createEffect(
    on([() => looked() > 0, plan, given, record], ([isLooked]) => {
      asker.callOff();
      setFailure("");
      if (!isLooked) return setWorking(false);
      if (isAsked()) begin();
      else if (plan()?.state !== "pending") forget();
    }),
  );
  onCleanup(() => asker.callOff());
  return {
    ...told,
    failure,
    look: (): (() => void) => {
      setLooked((count) => count + 1);
      return () => setLooked((count) => count - 1);
    },
  };
}

export function createLasting(session: Session, asker: Asker): Lasting {
  const { forecast, engine } = session;
  const day = createMemo(
    () => parseIsoDate(wordIn(engine.view().results.get("site.today"))) ?? parseIsoDate(session.day()) ?? 0,
  );
  const expected = createMemo((): Forecast => readForecastText(forecast.text(), day()));
  const asking = createAsking(session, asker);
  // What was expected of days that have passed is dropped from the device.
  createEffect(() => {
    const left = forecastText(expected());
    if (forecast.text() !== left) forecast.set(left);
  });
  return {
    ...asking,
    today: day,
    expected,
    expect: (date, what) => {
      const { [date]: _before, ...others } = expected();
      forecast.set(forecastText(what ? { ...others, [date]: what } : others));
    },
  };
}
