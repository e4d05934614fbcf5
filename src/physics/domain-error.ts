// The one way physics says "this relation does not hold here": thrown, never NaN, never a silent clamp.

/** A number outside the range for which a published relation holds. */
export class DomainError extends Error {
  /** Name of the quantity, in words. */
  readonly quantity: string;
  /** The offending value, in SI. */
  readonly value: number;
  /** The limit it broke, in words. */
  readonly limit: string;
  /** Who set the limit. */
  readonly source: string;

  constructor(quantity: string, value: number, limit: string, source: string) {
    super(`${quantity} is ${value}, but must be ${limit} (${source})`);
    this.name = "DomainError";
    this.quantity = quantity;
    this.value = value;
    this.limit = limit;
    this.source = source;
  }
}

/**
 * Throws unless a value is finite and above zero.
 *
 * @param quantity name of the quantity, in words
 * @param value any unit [SI]
 * @param source who set the limit
 * @throws DomainError when it is not
 * @source definition
 */
export function requirePositive(quantity: string, value: number, source: string): void {
  if (!(value > 0 && value < Infinity)) throw new DomainError(quantity, value, "finite and above 0", source);
}

/**
 * Throws unless a value is finite and not below zero.
 *
 * @param quantity name of the quantity, in words
 * @param value any unit [SI]
 * @param source who set the limit
 * @throws DomainError when it is not
 * @source definition
 */
export function requireNotNegative(quantity: string, value: number, source: string): void {
  if (!(value >= 0 && value < Infinity))
    throw new DomainError(quantity, value, "finite and not below 0", source);
}

/**
 * Throws unless a value lies in a closed range.
 *
 * @param quantity name of the quantity, in words
 * @param value any unit [SI]
 * @param range both ends included, in the value's unit [SI]
 * @param source who set the limit
 * @throws DomainError when it does not
 * @source definition
 */
export function requireWithin(
  quantity: string,
  value: number,
  range: readonly [number, number],
  source: string,
): void {
  if (!(value >= range[0] && value <= range[1])) {
    throw new DomainError(quantity, value, `from ${range[0]} to ${range[1]}`, source);
  }
}
