// Numbers without the dust of the arithmetic.

/** Doubles hold a few more; what is beyond is dust. */
const FIGURES = 12;

/** A number as far as it means anything; nought is never below nought. */
export const tidy = (value: number): number => Number(value.toPrecision(FIGURES)) + 0;
