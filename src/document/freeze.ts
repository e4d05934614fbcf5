// Deep freezing that stops at what is frozen already, so that shared parts are walked once.

/** The same value, frozen through and through. Plain data only; a frozen part is taken to be frozen inside. */
export function frozen<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  for (const member of Object.values(value)) frozen(member);
  return Object.freeze(value);
}
