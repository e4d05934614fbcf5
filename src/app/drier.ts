// A record of few years as it is, and with a quarter and with half less rain: asked anew when the place or the rain changes.

import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import type { Change } from "../document/changes.ts";
import { isReady, numberIn, shownIn, wordIn } from "../graph/readers.ts";
import type { Result } from "../graph/types.ts";
import { AS_IT_IS, DRIER, isFew } from "../rainfall/import-facts.ts";
import type { Answers } from "../studies/ask.ts";
import type { DrierYears } from "../ui/dialogs/rain-import.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { Engine } from "./engine.ts";

/** A number being typed goes on changing; the drier years wait until it rests [ms]. */
const REST = 600;
/** Of the season that leads the answers, the worst: a usual season of less rain beside it would read as if it were better. */
const WANTED = [
  "weather.mean_yearly_rain",
  "season.worst_season_days_short",
  "season.worst_season_share_met",
];

const scaled = (scale: number): readonly Change[] => [
  { card: "weather", part: "givens", row: "rain_scale", entry: { value: scale, unit: "" } },
];

function shownYear(
  name: string,
  answer: (id: string) => Result | undefined,
  options: ShowOptions,
): DrierYears[number] {
  const [rain, days, share] = WANTED.map((id) => {
    const value = shownIn(answer(id));
    return typeof value === "number" ? value : null;
  });
  return {
    name,
    rain: rain == null ? "" : showQuantity(rain, "rain", options),
    daysShort: days == null ? "" : showQuantity(days, "count", options),
    shareMet: share == null ? "" : showQuantity(share, "share", options),
  };
}

/** Drier versions of the record in use, empty while it is none of few years. */
export function createDrier(engine: Engine, asker: Asker, options: () => ShowOptions) {
  const [answers, setAnswers] = createSignal<ReadonlyMap<number, Answers>>(new Map());
  // The same result object stands for the same plan and record, so that other edits do not begin anything.
  const plan = createMemo(() => engine.view().results.get("season.plan"));
  const record = createMemo(() => engine.view().results.get("weather.record_in_use"));
  const held = () => engine.records.get(wordIn(record()));
  const isAsked = (): boolean => {
    const years = numberIn(engine.view().results.get("weather.whole_years"));
    const own = held();
    return isReady(plan()) && own !== undefined && !own.madeUp && years !== null && isFew(years);
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const begin = (): void => {
    const own = held();
    if (!own || !isAsked()) return;
    const { worksheet, results } = engine.view();
    const now = numberIn(results.get("weather.rain_scale")) ?? 1;
    const found = new Map<number, Answers>();
    const runs = DRIER.map(({ share }) => scaled(now * share));
    asker.ask(
      { worksheet, records: [own], runs, wanted: WANTED },
      {
        onAnswers: (at, answered) => found.set(at, answered),
        onEnd: (failure) => {
          if (failure === null) setAnswers(found);
        },
      },
    );
  };
  createEffect(
    on([plan, record], () => {
      clearTimeout(timer);
      asker.callOff();
      setAnswers(new Map());
      if (isAsked()) timer = setTimeout(begin, REST);
    }),
  );
  onCleanup(() => {
    clearTimeout(timer);
    asker.callOff();
  });
  return createMemo<DrierYears>(() => {
    const drier = DRIER.flatMap(({ name }, at) => {
      const found = answers().get(at);
      return found ? [shownYear(name, (id) => found[id], options())] : [];
    });
    // Less rain says nothing by itself: what stands now stands before it, to compare with.
    const { results } = engine.view();
    return drier.length > 0 ? [shownYear(AS_IT_IS, (id) => results.get(id), options()), ...drier] : [];
  });
}
