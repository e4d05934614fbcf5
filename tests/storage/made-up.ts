// A store in memory with the manners of the browser's own: values are copied in and out, every step takes a turn.

import type { DailyRecord } from "../../src/rainfall/record.ts";
import { recordKey } from "../../src/rainfall/record-key.ts";
import type { InstantStore } from "../../src/storage/instant-store.ts";
import type { KeyValueStore } from "../../src/storage/key-value-store.ts";

export function memoryStore(
  refuse: () => Error | null = () => null,
): KeyValueStore & { readonly kept: Map<string, unknown> } {
  const kept = new Map<string, unknown>();
  const turn = async () => {
    await new Promise((resolve) => setImmediate(resolve));
    const error = refuse();
    if (error) throw error;
  };
  return {
    kept,
    get: async (key) => {
      await turn();
      return structuredClone(kept.get(key));
    },
    set: async (key, value) => {
      await turn();
      kept.set(key, structuredClone(value));
    },
    del: async (key) => {
      await turn();
      kept.delete(key);
    },
    keys: async () => {
      await turn();
      return [...kept.keys()];
    },
    update: async (key, next) => {
      await turn();
      kept.set(key, structuredClone(next(structuredClone(kept.get(key)))));
    },
  };
}

/** The small store that is written at once, in memory; it can be told to refuse. */
export function instantMemory(): InstantStore & { refuse: boolean; readonly kept: Map<string, string> } {
  const kept = new Map<string, string>();
  const store = {
    refuse: false,
    kept,
    get: (key: string) => kept.get(key) ?? null,
    set: (key: string, text: string) => {
      if (!store.refuse) kept.set(key, text);
      return !store.refuse;
    },
    del: (key: string) => {
      kept.delete(key);
    },
    keys: () => [...kept.keys()],
  };
  return store;
}

export function countingId(): () => string {
  let count = 0;
  return () => {
    count += 1;
    return `sheet-${count}`;
  };
}

/** A made-up record: depths [m]; temperatures [K] if asked. */
export function madeUpRecord(rain: readonly number[], temperatures = false, title = "Made up"): DailyRecord {
  const column = (base: number) => Float64Array.from(rain, (_, day) => base + (day % 7) / 10);
  const parts = {
    title,
    source: "made up for a test",
    madeUp: true,
    firstDay: 18_262,
    rain: Float64Array.from(rain),
    highest: temperatures ? column(291.4) : null,
    lowest: temperatures ? column(279.85) : null,
    wind: null,
    vapour: null,
    sun: null,
  };
  return Object.freeze({ ...parts, key: recordKey(parts) });
}
