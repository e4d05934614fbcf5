// What gives out first: the season once more for each bound set free. The one that takes away most short days gives out
// first; where no single one helps, the pair that does; with no short day, what gives out with less rain.

import { valueIn, wordIn } from "../graph/readers.ts";
import { NO_BED } from "../kinds/none-said.ts";
import type { Bound } from "../network/bounds.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { SeasonInput } from "../season/input.ts";
import {
  boundsAtWork,
  type Freeing,
  freed,
  type GivesOut,
  type Relief,
  type ShortDays,
  shortDaysOf,
} from "../season/relief.ts";
import { runSeason } from "../season/run.ts";
import type { Base } from "./ask.ts";

/** Shares of the rain, one after the other, until a day is short. */
const RAINS = [1, 0.75, 0.5];
/** A bound helps enough if it takes away a tenth of the short days, and at least one. */
const ENOUGH_SHARE = 0.1;
const ENOUGH_DAYS = 1;
const ROUNDING = 1e-9;

const keyOf = ({ bounds, rain }: Freeing): string => `${bounds.join("+")}@${rain}`;

/** What is known of runs made so far. */
export function reliefBook() {
  const known = new Map<string, ShortDays>();
  return {
    put: (run: Freeing, short: ShortDays): void => void known.set(keyOf(run), short),
    get: (bounds: readonly Bound[], rain: number) => known.get(keyOf({ bounds, rain })),
  };
}

type Book = ReturnType<typeof reliefBook>;

/** What is still to be run, or the answer. */
export type Step = { readonly ask: readonly Freeing[] } | { readonly answer: GivesOut };

function pairsOf(bounds: readonly Bound[]): readonly (readonly Bound[])[] {
  return bounds.flatMap((one, at) => bounds.slice(at + 1).map((other) => [one, other]));
}

/** The best of some freeings that have all been run; null where none takes away enough. */
function bestOf(
  book: Book,
  base: ShortDays,
  rain: number,
  choices: readonly (readonly Bound[])[],
): readonly Relief[] | null {
  const savedBy = (bounds: readonly Bound[]) => base.days - (book.get(bounds, rain)?.days ?? base.days);
  const savedInWorst = ({ bySeason, worst }: ShortDays, bounds: readonly Bound[]) =>
    (bySeason[worst] ?? 0) - (book.get(bounds, rain)?.bySeason[worst] ?? bySeason[worst] ?? 0);
  const most = Math.max(0, ...choices.map(savedBy));
  if (most < Math.max(ENOUGH_DAYS, base.days * ENOUGH_SHARE) - ROUNDING) return null;
  return choices
    .filter((bounds) => savedBy(bounds) >= most - ROUNDING * base.days)
    .map((bounds) => ({ bounds, saved: savedBy(bounds), savedInWorst: savedInWorst(base, bounds) }));
}

/** The next step of the question, over the bounds that are at work in a place. */
export function reliefStep(book: Book, bounds: readonly Bound[]): Step {
  for (const rain of RAINS) {
    const base = book.get([], rain);
    if (!base) return { ask: [{ bounds: [], rain }] };
    if (base.days === 0) continue;
    for (const [state, choices] of [
      ["first", bounds.map((bound) => [bound])],
      ["pair", pairsOf(bounds)],
    ] as const) {
      const open = choices
        .filter((choice) => !book.get(choice, rain))
        .map((choice) => ({ bounds: choice, rain }));
      if (open.length > 0) return { ask: open };
      const first = bestOf(book, base, rain, choices);
      if (first) return { answer: { state, rain, short: base, first } };
    }
    return { answer: { state: "several", rain, short: base } };
  }
  return { answer: { state: "never" } };
}

/** The season's input and record of a worksheet that is asked; null where it cannot be run. */
function seasonOf(base: Base): { readonly input: SeasonInput; readonly record: DailyRecord } | null {
  const { results } = base.whole;
  const input = valueIn(results.get("season.plan")) as SeasonInput | null;
  const record = base.known.records.get(wordIn(results.get("weather.record_in_use")));
  return input && record ? { input, record } : null;
}

/** Short days of the season with bounds free; why there are none where it cannot be run. */
export function runFreed(base: Base, { bounds, rain }: Freeing): ShortDays | { readonly failed: string } {
  const season = seasonOf(base);
  if (!season) return { failed: "The season cannot be run yet." };
  const scaled = { ...season.input, rainScale: season.input.rainScale * rain };
  const answer = runSeason(freed(scaled, bounds), season.record);
  if ("failed" in answer) return { failed: answer.failed };
  return shortDaysOf(answer.totals) ?? { failed: NO_BED };
}

/** The whole question at once, as the command line asks it. */
export function givesOut(base: Base): GivesOut | { readonly failed: string } {
  const season = seasonOf(base);
  if (!season) return { failed: "The season cannot be run yet." };
  const bounds = boundsAtWork(season.input);
  const book = reliefBook();
  for (;;) {
    const step = reliefStep(book, bounds);
    if ("answer" in step) return step.answer;
    for (const run of step.ask) {
      const short = runFreed(base, run);
      if ("failed" in short) return short;
      book.put(run, short);
    }
  }
}
