// Which cautions have been read once on this device: those that can kill stand open until then.

import { createSignal } from "solid-js";
import type { InstantStore } from "../storage/instant-store.ts";

const KEY = "eavesdrip-read";

function kept(store: InstantStore): ReadonlySet<string> {
  return new Set((store.get(KEY) ?? "").split(" ").filter((id) => id !== ""));
}

/** @param store of this device; what it refuses to keep is read again */
export function createReadOnce(store: InstantStore) {
  const [read, setRead] = createSignal(kept(store));
  return {
    isRead: (caution: string): boolean => read().has(caution),
    markRead: (caution: string): void => {
      // Another tab may have read some meanwhile.
      const now = new Set([...kept(store), ...read(), caution]);
      setRead(now);
      store.set(KEY, [...now].join(" "));
    },
  };
}
