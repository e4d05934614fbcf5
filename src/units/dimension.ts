// Physical dimensions as whole-number powers of seven base kinds.
// A temperature point (20 °C on a thermometer) is told apart from a temperature difference (20 K warmer).

export const BASE_KINDS = ["length", "mass", "time", "temperature", "current", "angle", "money"] as const;

export type BaseKind = (typeof BASE_KINDS)[number];

export type Dimension = { readonly powers: readonly number[]; readonly point: boolean };

/** The dimension of a plain number, a count or a share. */
export const PLAIN: Dimension = Object.freeze({ powers: Object.freeze([0, 0, 0, 0, 0, 0, 0]), point: false });

/** The dimension with the given powers; kinds left out have power 0. */
export function dimension(powers: Partial<Record<BaseKind, number>>, point = false): Dimension {
  return Object.freeze({ powers: Object.freeze(BASE_KINDS.map((kind) => powers[kind] ?? 0)), point });
}

/** Whether two dimensions are the same, temperature points included. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.point === b.point && a.powers.every((power, index) => power === b.powers[index]);
}

/** Whether the dimension is that of a plain number. */
export function isPlain(a: Dimension): boolean {
  return !a.point && a.powers.every((power) => power === 0);
}

/** The dimension of a product of two quantities. */
export function productOf(a: Dimension, b: Dimension): Dimension {
  return { powers: a.powers.map((power, index) => power + (b.powers[index] ?? 0)), point: false };
}

/** The dimension of a quotient of two quantities. */
export function quotientOf(a: Dimension, b: Dimension): Dimension {
  return { powers: a.powers.map((power, index) => power - (b.powers[index] ?? 0)), point: false };
}

/** The dimension of a quantity raised to a power. */
export function powerOf(a: Dimension, exponent: number): Dimension {
  return { powers: a.powers.map((power) => power * exponent || 0), point: false };
}
