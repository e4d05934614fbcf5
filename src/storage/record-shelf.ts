// Rain records kept beside the worksheets, each once under its content key, and let go when nothing names it.

import type { DailyRecord } from "../rainfall/record.ts";
import { DAY } from "../units/constants.ts";
import type { KeyValueStore } from "./key-value-store.ts";
import { attempt, type Kept } from "./store-failure.ts";

export type RecordShelf = {
  readonly load: (key: string) => Promise<Kept<DailyRecord | null>>;
  /** Keeps a record; one kept under that key before stays as it is. */
  readonly keep: (record: DailyRecord, at: number) => Promise<Kept<void>>;
  /**
   * Lets go of every record that no kept worksheet, none set aside, and no key in `held` names. One that was kept or held within the last
   * day stays, since another tab may be about to name it.
   *
   * @returns keys let go
   */
  readonly prune: (held: ReadonlySet<string>, at: number) => Promise<Kept<readonly string[]>>;
};

const RECORD = "record:";
const MILLISECONDS = 1000;
const GRACE = DAY * MILLISECONDS;

type KeptRecord = { readonly record: DailyRecord; readonly heldAt: number };

function isColumn(value: unknown, length: number): boolean {
  return value === null || (value instanceof Float64Array && value.length === length);
}

function isRecord(value: unknown, key: string): value is DailyRecord {
  if (typeof value !== "object" || value === null) return false;
  const record = value as Partial<Record<keyof DailyRecord, unknown>>;
  const { rain, highest, lowest, wind, vapour, sun } = record;
  if (record.key !== key || !Number.isInteger(record.firstDay) || !(rain instanceof Float64Array))
    return false;
  const hasWords = typeof record.title === "string" && typeof record.source === "string";
  return hasWords && [highest, lowest, wind, vapour, sun].every((column) => isColumn(column, rain.length));
}

function keptRecord(data: unknown, key: string): KeptRecord | null {
  if (typeof data !== "object" || data === null) return null;
  const { record, heldAt } = data as Partial<Record<keyof KeptRecord, unknown>>;
  return isRecord(record, key) && typeof heldAt === "number" ? { record, heldAt } : null;
}

async function load(store: KeyValueStore, key: string): Promise<DailyRecord | null> {
  const kept = keptRecord(await store.get(RECORD + key), key);
  return kept ? Object.freeze({ ...kept.record }) : null;
}

async function keep(store: KeyValueStore, record: DailyRecord, at: number): Promise<void> {
  await store.update(RECORD + record.key, (before) => {
    const kept = keptRecord(before, record.key);
    return { record: kept?.record ?? record, heldAt: at } satisfies KeptRecord;
  });
}

/** Everything kept but records, as text: what names a record holds its key, even where nothing else can be read of it. */
async function textsKept(store: KeyValueStore): Promise<readonly string[]> {
  const keys = (await store.keys()).filter((name) => !name.startsWith(RECORD));
  return Promise.all(keys.map(async (key) => JSON.stringify(await store.get(key)) ?? ""));
}

async function prune(
  store: KeyValueStore,
  held: ReadonlySet<string>,
  at: number,
): Promise<readonly string[]> {
  const texts = await textsKept(store);
  const isNamed = (key: string) => texts.some((text) => text.includes(JSON.stringify(key)));
  const gone: string[] = [];
  for (const full of (await store.keys()).filter((name) => name.startsWith(RECORD))) {
    const key = full.slice(RECORD.length);
    const kept = keptRecord(await store.get(full), key);
    if (kept && held.has(key)) {
      await store.set(full, { ...kept, heldAt: at });
    } else if (!isNamed(key) && at - (kept?.heldAt ?? 0) > GRACE) {
      await store.del(full);
      gone.push(key);
    }
  }
  return gone;
}

/** The records of a key-value store. */
export function makeRecordShelf(store: KeyValueStore): RecordShelf {
  return {
    load: (key) => attempt(() => load(store, key)),
    keep: (record, at) => attempt(() => keep(store, record, at)),
    prune: (held, at) => attempt(() => prune(store, held, at)),
  };
}
