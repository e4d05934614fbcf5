// What working back from an answer comes to, in a sentence.

/** A value and the answer there, as they are read. */
export type MetSaid = { readonly value: string; readonly answer: string };

/** "612 gal does it: Short days, worst season 5." */
export const foundSaid = ({ value, answer }: MetSaid): string => `${value} does it: ${answer}.`;

/** "So does 120 gal: 30 days." */
export const alsoSaid = ({ value, answer }: MetSaid): string => `So does ${value}: ${answer}.`;

export const alreadySaid = (answer: string): string => `It is so already: ${answer}.`;

/** "Never from 20 gal to 5,000 gal: nearest is 12, at 5,000 gal."; "It moves nothing here: 12 from 20 gal to 5,000 gal." */
export function neverSaid(
  [low, high]: readonly [string, string],
  best: MetSaid | null,
  still: boolean,
): string {
  if (still && best) return `It moves nothing here: ${best.answer} from ${low} to ${high}.`;
  const nearest = best ? `nearest is ${best.answer}, at ${best.value}` : "there is no answer anywhere";
  return `Never from ${low} to ${high}: ${nearest}.`;
}
