// Chance that can be repeated: the same seed gives the same numbers, bit for bit, on every engine.

/** Spreads a seed over the generator's state, so that seeds 1 and 2 share nothing. */
function scrambler(seed: number): () => number {
  let state = (Math.floor(seed / 2 ** 32) ^ Math.floor(seed % 2 ** 32)) | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let word = state;
    word = Math.imul(word ^ (word >>> 16), 0x21f0aaad);
    word = Math.imul(word ^ (word >>> 15), 0x735a2d97);
    return word ^ (word >>> 15);
  };
}

/**
 * A generator of numbers from 0 up to but not 1, by small fast counting with three words and a counter.
 * @param seed any finite number; its whole part counts [-]
 * @param stream tells apart streams of one seed, so that one draw more here moves nothing there
 */
export function seededRandom(seed: number, stream = 0): () => number {
  const next = scrambler(Math.floor(seed) + stream * 0x1_0000_0001);
  let [a, b, c, counter] = [next(), next(), next(), 1];
  const draw = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    c |= 0;
    return (sum >>> 0) / 2 ** 32;
  };
  for (let warm = 0; warm < 12; warm++) draw();
  return draw;
}
