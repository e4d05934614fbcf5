// Where so much of a list of numbers lies below.

/**
 * A quantile, between the two nearest numbers where it falls between them.
 *
 * @param rising sorted numbers, at least one
 * @param share 0 to 1
 * @source Hyndman & Fan (1996), The American Statistician 50(4), 361-365, definition 7, from memory
 */
export function quantile(rising: Float64Array, share: number): number {
  const place = share * (rising.length - 1);
  const below = Math.floor(place);
  const one = rising[below] as number;
  const other = rising[Math.min(rising.length - 1, below + 1)] as number;
  return one + (other - one) * (place - below);
}
