// The order in which a row of runs is best made: the middle and the ends first, then ever finer between them.

/**
 * Places 0..count-1, each once: one chosen place, the two ends, then the middle of every gap that is left.
 *
 * @param count of places, 0 or more [-]
 * @param first place to begin with [-]
 * @returns the places in that order [-]
 * @source definition
 */
export function coarseFirst(count: number, first: number): readonly number[] {
  const order = new Set<number>();
  for (const place of [first, count - 1, 0]) if (place >= 0 && place < count) order.add(place);
  const gaps: (readonly [number, number])[] = [
    [0, first],
    [first, count - 1],
  ];
  for (const [from, to] of gaps) {
    if (to - from < 2) continue;
    const middle = Math.floor((from + to) / 2);
    order.add(middle);
    gaps.push([from, middle], [middle, to]);
  }
  return [...order];
}
