// Spreads members evenly without chance: in another order for each thing that is spread over them.

/** The fraction of the golden ratio. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Ranks of so many members, each once.
 *
 * @param order tells apart what is spread: other members come first in each
 * @returns by member its rank from 0 on
 */
export function spreadOver(members: number, order: number): readonly number[] {
  const key = (place: number) => ((place + 1) * (order + 1) * GOLDEN + place * GOLDEN) % 1;
  const sorted = Array.from({ length: members }, (_, place) => place).sort(
    (a, b) => key(a) - key(b) || a - b,
  );
  const ranks = new Array<number>(members);
  sorted.forEach((place, rank) => {
    ranks[place] = rank;
  });
  return ranks;
}
