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
  /** Numbers that matter and can move an answer, and the likeliest of them. */
  readonly numbers: (answer: string) => { readonly all: readonly string[]; readonly first: string | null };
  /** What is likely wished of an answer. */
  readonly wish: (answer: string) => { readonly sense: Sense; readonly text: string };
  /** Never ends where the next question calls it off; throws with a reader's reason. */
  readonly work: (question: WorkBackQuestion) => Promise<WorkedBack>;
  readonly set: (number: string, entry: Entry) => void;
  readonly callOff: () => void;
};
