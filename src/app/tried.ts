// What was tried along the axis of the number in hand.

import { numberIn } from "../graph/readers.ts";
import type { Answers } from "../studies/ask.ts";
import type { Tried } from "../studies/enough.ts";
import type { Trial } from "../studies/try.ts";

export type Raw = { readonly place: number; readonly value: number | string; readonly answers: Answers };

/** Asks for trials; ends when all are answered. */
export type AskFor = (
  trials: readonly (Trial & { readonly place: number })[],
  onRaw: (raw: Raw) => void,
) => Promise<void>;

export const triedOf = (points: readonly Raw[], answer: string): readonly Tried[] =>
  points.map(({ place, value, answers }) => ({
    place,
    size: typeof value === "number" ? value : 0,
    answer: numberIn(answers[answer]),
  }));
