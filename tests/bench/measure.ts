// Timing of works against each other in the same run, so that a busy machine slows all of them alike.

/** A measured ratio of times with the bound it must keep. */
export type Ratio = {
  readonly name: string;
  /** [-] */
  readonly ratio: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** Times behind the ratio, for the reader of the table. */
  readonly detail: string;
};

const WARM_UP = 30;
const ROUNDS = 41;
const LEAST_MILLISECONDS = 2;

function timeOf(work: () => void, repeats: number): number {
  const start = performance.now();
  for (let repeat = 0; repeat < repeats; repeat++) work();
  return (performance.now() - start) / repeats;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

/** The median time of each work [ms], the works taking turns. */
export function mediansOf<Name extends string>(
  works: Readonly<Record<Name, () => void>>,
): Record<Name, number> {
  const named = Object.entries(works) as [Name, () => void][];
  const plans = named.map(([name, work]) => {
    const once = timeOf(work, WARM_UP);
    return { name, work, repeats: Math.max(1, Math.ceil(LEAST_MILLISECONDS / once)), times: [] as number[] };
  });
  for (let round = 0; round < ROUNDS; round++) {
    for (const { work, repeats, times } of plans) times.push(timeOf(work, repeats));
  }
  return Object.fromEntries(plans.map(({ name, times }) => [name, median(times)])) as Record<Name, number>;
}

/** Milliseconds as a reader takes them in. */
export function shownTime(milliseconds: number): string {
  return milliseconds < 1 ? `${(milliseconds * 1000).toFixed(1)} µs` : `${milliseconds.toFixed(2)} ms`;
}
