// Tries one tank in other sizes, and again when the place has changed; the curve of before stays until the new one is whole.

import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import type { Change } from "../document/changes.ts";
import { isReady, numberIn, wordIn } from "../graph/readers.ts";
import type { SizePoint } from "../scene/size-curve.ts";
import type { Answers } from "../studies/ask.ts";
import { kneeOf } from "../studies/knee.ts";
import { coarseThenFine } from "../studies/try.ts";
import type { SizeStudy, Sizes } from "../ui/charts/sizes.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { Engine } from "./engine.ts";

/** A number being typed or dragged goes on changing; the sizes wait until it rests [ms]. */
const REST = 400;

/** Times today's size: from a quarter to four times in equal ratios, today's exactly among them. */
const MULTIPLES: readonly number[] = Array.from({ length: 17 }, (_, place) => 2 ** (place / 4 - 2));

const NOTHING = { points: [], knee: null };

const WANTED = ["season.share_met", "season.days_short", "season.reliability_volume", "season.spill"];

/** How the season went, as a point of the curve; with no crop the share is of what the draws were due. */
function pointOf(multiple: number, volume: number, answers: Answers): SizePoint {
  const number = (id: string) => numberIn(answers[id]);
  return {
    multiple,
    volume,
    shareMet: number("season.share_met") ?? number("season.reliability_volume"),
    daysShort: number("season.days_short"),
    spill: number("season.spill") ?? 0,
  };
}

/** What a tank card holds, set to a size; where it was measured, the measured value is what counts. */
function resized(engine: Engine, card: string, volume: number): readonly Change[] {
  const measured = engine.view().worksheet.cards.find(({ id }) => id === card)?.measured["capacity"];
  const part = measured ? "measured" : "givens";
  return [{ card, part, row: "capacity", entry: { value: volume, unit: "m3" } }];
}

/** Sizes of one tank at a time. */
export function createSizes(engine: Engine, asker: Asker): Sizes {
  const [study, setStudy] = createSignal<SizeStudy | null>(null);
  const [card, setCard] = createSignal<string | null>(null);
  // The same result object stands for the same plan and record, so that other edits do not begin anything.
  const plan = createMemo(() => engine.view().results.get("season.plan"));
  const record = createMemo(() => engine.view().results.get("weather.record_in_use"));
  let timer: ReturnType<typeof setTimeout> | undefined;

  const say = (id: string, more: Partial<SizeStudy>): void => {
    setStudy({
      card: id,
      curve: NOTHING,
      done: 0,
      of: MULTIPLES.length,
      state: "working",
      reason: "",
      ...more,
    });
  };
  const fail = (id: string, reason: string): void => say(id, { state: "failed", reason });
  const begin = (id: string): void => {
    const { results, worksheet } = engine.view();
    if (plan()?.state === "pending" || record()?.state === "pending") return;
    const held = engine.records.get(wordIn(record()));
    const [each, count] = [numberIn(results.get(`${id}.capacity`)), numberIn(results.get(`${id}.count`))];
    if (!isReady(plan()) || !held || each === null) {
      fail(id, "The season cannot be run yet: its card says why.");
      return;
    }
    const points: SizePoint[] = [];
    const order = coarseThenFine(MULTIPLES.length).map((at) => MULTIPLES[at] as number);
    const report = (): void => {
      const before = study();
      const isOld = before?.state === "old";
      const curve = isOld ? before.curve : { points: [...points], knee: null };
      say(id, { curve, done: points.length, state: isOld ? "old" : "working" });
    };
    const runs = order.map((multiple) => resized(engine, id, each * multiple));
    asker.ask(
      { worksheet, records: [held], runs, wanted: WANTED },
      {
        onAnswers: (at, answers) => {
          const multiple = order[at] as number;
          points.push(pointOf(multiple, each * (count ?? 1) * multiple, answers));
          report();
        },
        onEnd: (failure) => {
          if (failure !== null) fail(id, failure);
          else
            say(id, {
              curve: { points: [...points], knee: kneeOf(points) },
              done: points.length,
              state: "ready",
            });
        },
      },
    );
  };
  const stop = (): void => {
    clearTimeout(timer);
    asker.callOff();
  };
  createEffect(
    on(
      [plan, record],
      () => {
        const id = card();
        if (id === null) return;
        stop();
        setStudy((now) => now && { ...now, done: 0, state: now.state === "failed" ? "working" : "old" });
        timer = setTimeout(() => begin(id), REST);
      },
      { defer: true },
    ),
  );
  onCleanup(stop);
  return {
    study,
    ask: (id) => {
      stop();
      setCard(id);
      say(id, {});
      begin(id);
    },
    close: () => {
      stop();
      setCard(null);
      setStudy(null);
    },
  };
}
