// What the components know of working back from an answer to one number. The app provides it.

import type { Entry } from "../../document/worksheet.ts";

export type Sense = "at most" | "at least";

/** A value that does it: what is said of it, and what sets it. */
export type WorkedValue = { readonly said: string; readonly shown: string; readonly entry: Entry };

export type WorkedBack = {
  /** The first sentence where nothing is found. */
  readonly said: string;
  /** All values from which on it is so, the nearest to the present one first. */
  readonly values: readonly WorkedValue[];
};

export type WorkBackQuestion = {
  readonly answer: string;
  readonly number: string;
  readonly sense: Sense;
  /** [SI] */
  readonly target: number;
};

export type WorkBackTools = {
  /** Numbers that matter and may move an answer, the likeliest first. */
  readonly numbers: (answer: string) => readonly string[];
  /** What is likely wished of an answer; null where nothing can be. */
  readonly wish: (
    answer: string,
  ) => { readonly sense: Sense; readonly target: number; readonly text: string } | null;
  /** The one of them to begin with: what gives out first, where that helps. Null: none helps. */
  readonly helping: (
    answer: string,
    wish: { readonly sense: Sense; readonly target: number },
  ) => Promise<string | null>;
  /** Those of them that move it. */
  readonly moving: (answer: string) => Promise<readonly string[]>;
  /** Never ends where the next question calls it off; throws with a reader's reason. */
  readonly work: (question: WorkBackQuestion) => Promise<WorkedBack>;
  readonly set: (number: string, entry: Entry) => void;
  readonly callOff: () => void;
};
