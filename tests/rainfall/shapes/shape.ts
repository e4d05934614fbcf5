// What a shape of rain file is: its text, the rain it truly holds, and how it has to come in.
import type { Choices } from "../../../src/rainfall/import-result.ts";

export type Shape = {
  readonly name: string;
  readonly text: string;
  /** Bytes where the text is not written as UTF-8. */
  readonly bytes?: Uint8Array;
  /** Mean rain of a year that the file truly holds [mm], counted from what it was written from. */
  readonly yearly: number;
  /** Right at once; asked, and right after the answers; or refused with a reason that holds the words. */
  readonly comes:
    | { readonly as: "right"; readonly choices?: Choices }
    | {
        readonly as: "asked";
        readonly questions: readonly string[];
        /** The answers; where null, what the file makes likeliest has to be right: one touch. */
        readonly answers: Choices | null;
        readonly flags: readonly string[];
      }
    | { readonly as: "refused"; readonly words: RegExp };
};

export const right = { as: "right" } as const;
export const refused = (words: RegExp) => ({ as: "refused", words }) as const;
/** Asked, the likeliest answers being the true ones; `flags` say the same on the command line. */
export const oneTouch = (questions: readonly string[], ...flags: readonly string[]) =>
  ({ as: "asked", questions, answers: null, flags }) as const;
/** Asked, with answers that the file cannot make likely. */
export const asked = (questions: readonly string[], answers: Choices, ...flags: readonly string[]) =>
  ({ as: "asked", questions, answers, flags }) as const;
