// Where a curve of size against share met flattens: past it, more tank buys little.

/** More volume that is asked about: a tenth. */
const MORE = 0.1;
/** Gain in share met for that tenth under which it is little: half of one part in a hundred. Our definition. */
const LITTLE_GAIN = 0.005;

/** One size on the curve. */
export type SizeOnCurve = {
  /** Times today's size [-]. */
  readonly multiple: number;
  /** [-]; null where there is no share at that size. */
  readonly shareMet: number | null;
};

/**
 * Smallest size tried from which, at every step on to the largest, a tenth more volume adds less than half a percent
 * (of all that is wanted) to the share met. Between two sizes the gain is taken as even over the logarithm of the volume:
 * gain of a tenth = (share after - share before) * ln 1.1 / ln (volume after / volume before).
 *
 * @param points of the curve, in any order
 * @returns multiple of today's size; null where more tank still helps at the end, or nothing is known
 * @validity the curve need not rise everywhere; a size is not named while a later step still gains
 */
export function kneeOf(points: readonly SizeOnCurve[]): number | null {
  const rising = [...points].sort((a, b) => a.multiple - b.multiple);
  let knee: number | null = null;
  for (let place = rising.length - 2; place >= 0; place--) {
    const gain = gainOfMore(rising[place], rising[place + 1]);
    if (gain === null || gain >= LITTLE_GAIN) break;
    knee = rising[place]?.multiple ?? null;
  }
  return knee;
}

function gainOfMore(before: SizeOnCurve | undefined, after: SizeOnCurve | undefined): number | null {
  if (!before || !after || before.shareMet === null || after.shareMet === null) return null;
  const steps = Math.log(after.multiple / before.multiple) / Math.log1p(MORE);
  return (after.shareMet - before.shareMet) / steps;
}
