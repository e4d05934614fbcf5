// Equality of plain data, in any order of keys.

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((part, index) => sameData(part, b[index]));
}

function sameObject(a: object, b: object): boolean {
  const names = Object.keys(a);
  if (names.length !== Object.keys(b).length) return false;
  return names.every(
    (name) =>
      Object.hasOwn(b, name) &&
      sameData((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]),
  );
}

/** Whether two pieces of plain data hold the same values. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) return Array.isArray(a) && Array.isArray(b) && sameList(a, b);
  return sameObject(a, b);
}
