// Rain records kept beside the worksheets, each once under its content key, and let go when nothing names it.

import type { DailyRecord } from "../rainfall/record.ts";
import { DAY } from "../units/constants.ts";
import type { InstantStore } from "./instant-store.ts";
import type { KeyValueStore } from "./key-value-store.ts";
import { packRecord, unpackRecord } from "./packed-record.ts";
import { attempt, type Kept } from "./store-failure.ts";

export type RecordShelf = {
  readonly load: (key: string) => Promise<Kept<DailyRecord | null>>;
  /** Keeps a record; one kept under that key before stays as it is. */
  readonly keep: (record: DailyRecord, at: number) => Promise<Kept<void>>;
  /** Whether a record is on its way to the slow store that is noted nowhere: leaving now would lose it. */
  readonly isWaiting: () => boolean;
  /** Keeps what pages that are gone had only noted. */
  readonly takeUp: (at: number) => Promise<Kept<void>>;
  /**
   * Lets go of every record that no kept worksheet, none set aside, and no key in `held` names. One that was kept or held within the last
   * day stays, since another tab may be about to name it.
   *
   * @returns keys let go
   */
  readonly prune: (held: ReadonlySet<string>, at: number) => Promise<Kept<readonly string[]>>;
};

const RECORD = "record:";
const NOTE = "eavesdrip:record:";
/** Characters of a noted record at the most: a century of rain with temperatures, and room is left for worksheets. */
const LONGEST_NOTE = 1_500_000;
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

async function load(store: KeyValueStore, notes: InstantStore, key: string): Promise<DailyRecord | null> {
  const kept = keptRecord(await store.get(RECORD + key), key);
  return kept ? Object.freeze({ ...kept.record }) : noted(notes, key);
}

/** Notes a record at once, so that a page left right after it was taken loses nothing; false where it finds no room. */
function note(notes: InstantStore, record: DailyRecord): boolean {
  if (noted(notes, record.key)) return true;
  const text = JSON.stringify(packRecord(record));
  return text.length <= LONGEST_NOTE && notes.set(NOTE + record.key, text);
}

/** A record that a page noted and that the slow store had not yet when the page was left. */
function noted(notes: InstantStore, key: string): DailyRecord | null {
  try {
    const record = unpackRecord(JSON.parse(notes.get(NOTE + key) ?? "null"));
    return record?.key === key ? record : null;
  } catch {
    return null;
  }
}

/** Puts into the slow store what pages that were left had only noted. */
async function takeUp(store: KeyValueStore, notes: InstantStore, at: number): Promise<void> {
  for (const name of notes.keys().filter((one) => one.startsWith(NOTE))) {
    const record = noted(notes, name.slice(NOTE.length));
    if (record) await keep(store, record, at);
    notes.del(name);
  }
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

/**
 * The records of a key-value store.
 *
 * @param notes where a record is written at once, before the slow store has it
 */
export function makeRecordShelf(store: KeyValueStore, notes: InstantStore): RecordShelf {
  let homeless = 0;
  const keepNoted = async (record: DailyRecord, at: number): Promise<void> => {
    const isNoted = note(notes, record);
    if (!isNoted) homeless += 1;
    await keep(store, record, at).finally(() => {
      if (!isNoted) homeless -= 1;
    });
    notes.del(NOTE + record.key);
  };
  return {
    load: (key) => attempt(() => load(store, notes, key)),
    keep: (record, at) => attempt(() => keepNoted(record, at)),
    isWaiting: () => homeless > 0,
    takeUp: (at) => attempt(() => takeUp(store, notes, at)),
    prune: (held, at) => attempt(() => prune(store, held, at)),
  };
}
