// What measuring a row teaches. Types only, no code.

/** What a measured value of this row teaches, in words; a row without this cannot be measured. */
export type Measurable = {
  readonly teaches: string;
  /** Limits in SI of what is measured, both allowed, where the row is no given with its own. */
  readonly min?: number;
  readonly max?: number;
  /** The measurable row of the same card that holds the lesson by itself, once what was measured no longer stands so. */
  readonly lesson?: string;
};
