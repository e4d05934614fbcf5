// What measuring a row teaches. Types only, no code.

/** What a measured value of this row teaches, in words; a row without this cannot be measured. */
export type Measurable = {
  readonly teaches: string;
  /** The measurable row of the same card that holds the lesson by itself, once what was measured no longer stands so. */
  readonly lesson?: string;
};
