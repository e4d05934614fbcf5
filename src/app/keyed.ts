// One signal a key over something that changes as a whole: who reads one key wakes only when that key's value changed.

import { type Accessor, createComputed, createSignal, getListener, untrack } from "solid-js";

/**
 * A reader by key.
 *
 * @param watch what changes as a whole
 * @param read the value of a key in it, cheap to look up
 * @param equals whether a key's value is still the same
 */
export function createKeyed<Value>(
  watch: Accessor<unknown>,
  read: (key: string) => Value,
  equals: (before: Value, now: Value) => boolean = Object.is,
): (key: string) => Value {
  const kept = new Map<
    string,
    { readonly get: Accessor<Value>; readonly set: (value: () => Value) => void }
  >();
  createComputed(() => {
    watch();
    untrack(() => {
      for (const [key, { set }] of kept) set(() => read(key));
    });
  });
  return (key) => {
    if (!getListener()) return untrack(() => read(key));
    const known = kept.get(key);
    if (known) return known.get();
    const [get, set] = createSignal(
      untrack(() => read(key)),
      { equals },
    );
    kept.set(key, { get, set });
    return get();
  };
}
