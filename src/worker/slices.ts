// Long work in slices: a step, a rest in which other messages are heard, the next step, until it ends or is called off.

/** How the slices are run. */
export type Slicing<Part> = {
  readonly signal: AbortSignal;
  /** Hears each part as it comes; never after the work was called off. */
  readonly onPart: (part: Part) => void;
  /** Resolves once whatever else waits has had its turn. */
  readonly rest: () => Promise<void>;
};

/** Runs all steps; what they ended with, or null where they were called off before the end. */
export async function inSlices<Part, End>(
  steps: Generator<Part, End>,
  { signal, onPart, rest }: Slicing<Part>,
): Promise<{ readonly end: End } | null> {
  while (!signal.aborted) {
    const step = steps.next();
    if (step.done) return { end: step.value };
    onPart(step.value);
    await rest();
  }
  steps.return(undefined as End);
  return null;
}
