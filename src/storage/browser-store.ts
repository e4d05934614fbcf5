// The browser's own database as a key-value store.

import { createStore, del, get, keys, set, type UseStore, update } from "idb-keyval";
import type { KeyValueStore } from "./key-value-store.ts";

const SHELF = "shelf";

/** A store whose writes are said to be done only once they are on the disk: what was noted outlives a kill. */
function strictStore(name: string): UseStore {
  const plain = createStore(name, SHELF);
  return (mode, use) =>
    plain("readonly", (store) =>
      mode === "readonly"
        ? use(store)
        : use(store.transaction.db.transaction(SHELF, mode, { durability: "strict" }).objectStore(SHELF)),
    );
}

/** The browser's database; it is opened at the first use, and a browser that has none rejects there. */
export function browserStore(name = "eavesdrip"): KeyValueStore {
  let opened: UseStore | null = null;
  const within = async <T>(use: (store: UseStore) => Promise<T>): Promise<T> => {
    opened ??= strictStore(name);
    return use(opened);
  };
  return {
    get: (key) => within((store) => get<unknown>(key, store)),
    set: (key, value) => within((store) => set(key, value, store)),
    del: (key) => within((store) => del(key, store)),
    keys: () => within(async (store) => (await keys(store)).filter((key) => typeof key === "string")),
    update: (key, next) => within((store) => update<unknown>(key, next, store)),
  };
}
