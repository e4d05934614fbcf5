// Where so much of a list of numbers lies below.

/**
 * Quantile of values, between the two nearest where it falls between them: place (n - 1) p of the sorted ones.
 *
 * @param share 0 to 1 [-]
 * @returns quantile; 0 of no values [any]
 * @source Hyndman & Fan (1996), The American Statistician 50(4), 361-365, definition 7, from memory
 */
export function quantile(values: ArrayLike<number>, share: number): number {
  return quantileOf(Float64Array.from(values).sort(), share);
}

/** quantile of values that are sorted already. */
export function quantileOf(sorted: Float64Array, share: number): number {
  const place = (sorted.length - 1) * share;
  const lower = sorted[Math.floor(place)] ?? 0;
  const upper = sorted[Math.ceil(place)] ?? 0;
  return lower + (upper - lower) * (place - Math.floor(place));
}
