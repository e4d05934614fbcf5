// The known word that a misspelt one is nearest to.

/** Steps of adding, leaving out or changing one letter from one word to another; gives up above 2. */
function distance(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 2) return 3;
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (previous[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(change, (previous[j] ?? 0) + 1, (current[j - 1] ?? 0) + 1));
    }
    previous = current;
  }
  return previous[b.length] ?? 3;
}

/** The known word nearest to a misspelt one, of equals the first; null where none is near. Words under three letters are near to all. */
export function nearestOf(word: string, words: Iterable<string>): string | null {
  if (word.length < 3) return null;
  let best: string | null = null;
  let least = word.length < 5 ? 2 : 3;
  for (const known of words) {
    if (known.length < 3) continue;
    const steps = distance(word, known);
    if (steps < least) [best, least] = [known, steps];
  }
  return best;
}
