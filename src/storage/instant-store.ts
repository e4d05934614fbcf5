// The browser's small store that is written before the call returns: what is put there outlives the page at once.

export type InstantStore = {
  readonly get: (key: string) => string | null;
  /** False where the browser refuses or there is no room. */
  readonly set: (key: string, text: string) => boolean;
  readonly del: (key: string) => void;
  readonly keys: () => readonly string[];
};

function refusing<T>(work: () => T, refused: T): T {
  try {
    return work();
  } catch {
    return refused;
  }
}

/** The store as the browser has it; one that a browser forbids keeps nothing and says so by `set`. */
export function instantStore(storage: () => Storage): InstantStore {
  return {
    get: (key) => refusing(() => storage().getItem(key), null),
    set: (key, text) =>
      refusing(() => {
        storage().setItem(key, text);
        return true;
      }, false),
    del: (key) => refusing(() => storage().removeItem(key), undefined),
    keys: () => refusing(() => Object.keys(storage()), []),
  };
}
