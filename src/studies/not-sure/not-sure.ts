// Not sure: the whole worksheet worked out at many places between the ends of what is not sure; between which ends the
// answers then lie, which doubt that comes from most, and what measuring it would leave.

import type { Change } from "../../document/changes.ts";
import type { Worksheet } from "../../document/worksheet.ts";
import { ancestorsOf } from "../../graph/ancestors.ts";
import { numberIn } from "../../graph/readers.ts";
import type { QuantityId } from "../../graph/types.ts";
import { quantileOf } from "../../season/quantile.ts";
import type { Answers } from "../ask.ts";
import { changesAt, type Doubts, doubtsOf, sheetToDoubt, type Worked } from "./doubts.ts";
import { type Fit, fitAt, fitOf, shareOf } from "./fit.ts";
import { latinHypercube } from "./latin-hypercube.ts";

/** Runs of the whole worksheet, and where somebody waits for a closer answer. */
export const RUNS = 128;
export const MOST_RUNS = 1024;
/** Of ten runs the least and the greatest are left out. */
const TAIL = 0.1;
/** Any one: the same question has the same answer. */
const SEED = 1979;
/** An answer that is none in more runs than this has no span. */
const MOST_MISSED = 0.5;
/** Shares below this are noise of so few runs. */
const LEAST_SHARE = 0.01;

/** Runs that answer what is not sure. */
export type NotSure = {
  readonly doubts: Doubts;
  /** Of the wanted answers those that some doubt reaches. */
  readonly reached: readonly QuantityId[];
  /** The worksheet that the runs are changes of. */
  readonly sheet: Worksheet;
  readonly runs: readonly (readonly Change[])[];
  /** An axis a doubt, a place a run. */
  readonly places: readonly Float64Array[];
};

function isReached({ whole: { graph } }: Worked, { taken }: Doubts, id: QuantityId): boolean {
  const reads = ancestorsOf(graph, [id]);
  return taken.some(({ numbers }) => numbers.some((number) => reads[graph.index.get(number.id) ?? -1] === 1));
}

/** The runs that tell how far the wanted answers are not sure; none where everything is. */
export function notSure(base: Worked, wanted: readonly QuantityId[], count: number, seed = SEED): NotSure {
  const doubts = doubtsOf(base, wanted);
  const runs = doubts.taken.length === 0 ? 0 : count;
  const places = latinHypercube(doubts.taken.length, runs, seed);
  const changes = Array.from({ length: runs }, (_, run) =>
    doubts.taken.flatMap((doubt, axis) => changesAt(doubt, places[axis]?.[run] ?? 0)),
  );
  const reached = wanted.filter((id) => isReached(base, doubts, id));
  return { doubts, reached, sheet: sheetToDoubt(base.worksheet, doubts), runs: changes, places };
}

/** What of an answer's spread comes from one doubt alone. */
export type From = {
  /** Place among those that were taken. */
  readonly doubt: number;
  readonly share: number;
  /** How far apart the ends would be were it measured to a tenth of its span [SI]. */
  readonly leaves: number;
};

/** One answer that is not sure [SI]. */
export type Spanned = {
  /** Eight of ten runs lie between them; whole where the answer always is. */
  readonly low: number;
  readonly high: number;
  /** Runs in which it had a value. */
  readonly runs: number;
  /** Doubts that its spread comes from, by their places, the largest share first. */
  readonly mostFrom: readonly From[];
};

type Sample = { readonly places: readonly Float64Array[]; readonly answers: Float64Array };

/** An answer of a run: null where it was none, nothing where that run is not in yet. */
type RunAnswer = number | null | undefined;

function sampleOf(places: readonly Float64Array[], answers: readonly RunAnswer[]): Sample {
  const kept = answers.flatMap((answer, run) => (typeof answer === "number" ? [run] : []));
  return {
    places: places.map((axis) => Float64Array.from(kept, (run) => axis[run] as number)),
    answers: Float64Array.from(kept, (run) => answers[run] as number),
  };
}

const widthOf = (answers: Float64Array): number => {
  const rising = answers.slice().sort();
  return quantileOf(rising, 1 - TAIL) - quantileOf(rising, TAIL);
};

/** A tenth of the span of a doubt, wherever in it the truth turns out to lie. */
const MEASURED_TO = 0.1;
const TRUTHS = [0.1, 0.3, 0.5, 0.7, 0.9];

/** How wide an answer would be with one doubt measured: what its fit says of that doubt taken away, and put back about one place. */
function widthMeasured({ places, answers }: Sample, fit: Fit, doubt: number): number {
  const widths = TRUTHS.map((truth) => {
    const moved = answers.map((answer, run) => {
      const at = places.map((axis) => axis[run] as number);
      const narrow = truth + MEASURED_TO * ((at[doubt] ?? 0) - 0.5);
      const there = at.map((place, axis) => (axis === doubt ? narrow : place));
      return answer - fitAt(fit, at) + fitAt(fit, there);
    });
    return widthOf(moved);
  });
  return widths.reduce((sum, width) => sum + width, 0) / widths.length;
}

/** The ends alone of an answer, told while runs are still coming in. */
export type Ends = Pick<Spanned, "low" | "high" | "runs">;

function endsOf({ answers }: Sample): Ends {
  const rising = answers.slice().sort();
  const [least, most] = [quantileOf(rising, TAIL), quantileOf(rising, 1 - TAIL)];
  const isWhole = rising.every(Number.isInteger);
  const runs = rising.length;
  return isWhole ? { low: Math.floor(least), high: Math.ceil(most), runs } : { low: least, high: most, runs };
}

/** What was answered, or null where it is none in most runs. */
function answeredIn(places: readonly Float64Array[], answers: readonly RunAnswer[]): Sample | null {
  const sample = sampleOf(places, answers);
  const runs = sample.answers.length;
  const missed = answers.filter((answer) => answer === null).length;
  return runs === 0 || missed > (runs + missed) * MOST_MISSED ? null : sample;
}

/** Between which ends an answer lies by the runs that are in; null as for {@link spannedOf}. */
export function endsSoFar(answers: readonly RunAnswer[]): Ends | null {
  const sample = answeredIn([], answers);
  return sample && endsOf(sample);
}

/**
 * Between which ends an answer lies, and what that comes from.
 *
 * @param places an axis a doubt
 * @param answers one a run of those places
 * @returns null where it has no value in most runs
 */
export function spannedOf(places: readonly Float64Array[], answers: readonly RunAnswer[]): Spanned | null {
  const sample = answeredIn(places, answers);
  if (!sample) return null;
  const ends = endsOf(sample);
  const width = ends.high - ends.low;
  const fit = fitOf(sample.places, sample.answers);
  const mostFrom = places
    .map((_, doubt) => ({ doubt, share: shareOf(fit, doubt) }))
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share || a.doubt - b.doubt)
    .map((from) => ({ ...from, leaves: Math.min(width, widthMeasured(sample, fit, from.doubt)) }));
  return { ...ends, mostFrom };
}

/** Every answer that some doubt reaches and that has a span, by name; runs that are not in yet are left out. */
export function spansOf(
  { places, reached }: NotSure,
  answered: readonly (Answers | undefined)[],
): ReadonlyMap<QuantityId, Spanned> {
  const found = new Map<QuantityId, Spanned>();
  for (const id of reached) {
    const spanned = spannedOf(
      places,
      answered.map((answers) => answers && numberIn(answers[id])),
    );
    if (spanned) found.set(id, spanned);
  }
  return found;
}
