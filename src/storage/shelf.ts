// Several worksheets kept in one browser. Every answer is a value: what the browser refuses is said, never thrown.
// Two tabs never lose work: a save that started from an older revision than the kept one becomes a sheet of its own.

import { copyTitle } from "../document/copy-title.ts";
import type { ReadProblem } from "../document/plain.ts";
import { sameData } from "../document/same.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { Written } from "./journal.ts";
import type { KeyValueStore } from "./key-value-store.ts";
import {
  type OpenedSheet,
  openSaved,
  type SavedSheet,
  savedSheet,
  titleOf,
  versionOf,
} from "./saved-sheet.ts";
import { attempt, type Kept } from "./store-failure.ts";

export type ListedSheet = {
  readonly id: string;
  readonly title: string;
  readonly savedAt: number;
  readonly revision: number;
};

export type SaveRequest = {
  readonly id: string;
  /** Revision that the work started from; 0 for a sheet not kept yet. */
  readonly basedOn: number;
  readonly worksheet: Worksheet;
  /** [ms since 1970-01-01 UTC] */
  readonly at: number;
  /** Who saves and at which step, where it is noted: whoever wrote last goes on from its own, whatever revision it knew of. */
  readonly by?: Written;
};

export type Saved = {
  readonly id: string;
  readonly revision: number;
  /** The sheet as another tab kept it stays; this one went beside it, under the id and with the title given here. */
  readonly conflict: { readonly title: string } | null;
};

export type Opened =
  | { readonly state: "opened"; readonly sheet: OpenedSheet }
  | { readonly state: "absent" }
  /** It could not be read: kept whole under `asideKey`, out of the list. */
  | { readonly state: "set_aside"; readonly asideKey: string; readonly problems: readonly ReadProblem[] };

export type Shelf = {
  readonly list: () => Promise<Kept<readonly ListedSheet[]>>;
  readonly open: (id: string, at: number) => Promise<Kept<Opened>>;
  readonly save: (request: SaveRequest) => Promise<Kept<Saved>>;
  readonly remove: (id: string) => Promise<Kept<void>>;
  readonly current: () => Promise<Kept<string | null>>;
  readonly setCurrent: (id: string | null) => Promise<Kept<void>>;
  readonly listAside: () => Promise<Kept<readonly string[]>>;
  /** What was set aside, as text to save as a file; null where there is nothing under that key. */
  readonly asideText: (key: string) => Promise<Kept<string | null>>;
};

const SHEET = "sheet:";
const ASIDE = "aside:";
const CURRENT = "current";

async function list(store: KeyValueStore): Promise<readonly ListedSheet[]> {
  const keys = (await store.keys()).filter((key) => key.startsWith(SHEET));
  const kept = await Promise.all(keys.map(async (key) => ({ key, saved: savedSheet(await store.get(key)) })));
  // A broken one is listed, too: opening it sets it aside and says so.
  const listed = kept.map(({ key, saved }) => ({
    id: key.slice(SHEET.length),
    title: saved ? titleOf(saved) : "",
    savedAt: saved?.savedAt ?? 0,
    revision: saved?.revision ?? 0,
  }));
  return listed.sort((a, b) => b.savedAt - a.savedAt || (a.id < b.id ? -1 : 1));
}

async function open(store: KeyValueStore, id: string, at: number): Promise<Opened> {
  const data = await store.get(SHEET + id);
  if (data === undefined) return { state: "absent" };
  const opened = await openSaved(data);
  if ("worksheet" in opened) return { state: "opened", sheet: opened };
  const asideKey = `${ASIDE}${id}:${at}`;
  await store.set(asideKey, data);
  await store.del(SHEET + id);
  return { state: "set_aside", asideKey, problems: opened.problems };
}

type Decision = "write" | "already" | "conflict";

function decide(before: unknown, request: SaveRequest): Decision {
  if (before === undefined) return "write";
  const kept = savedSheet(before);
  if (!kept) return "conflict";
  if (sameData(kept.worksheet, request.worksheet)) return "already";
  const isOlder = versionOf(kept) > request.worksheet.version;
  const { by } = request;
  if (by && kept.by?.writer === by.writer && !isOlder) return by.step > kept.by.step ? "write" : "already";
  return kept.revision === request.basedOn && !isOlder ? "write" : "conflict";
}

async function save(store: KeyValueStore, newId: () => string, request: SaveRequest): Promise<Saved> {
  const { id, basedOn, worksheet, at } = request;
  const by = request.by ? { by: request.by } : {};
  let outcome: Saved | null = null;
  await store.update(SHEET + id, (before) => {
    const decision = decide(before, request);
    if (decision === "conflict") return before;
    const kept = savedSheet(before);
    const revision =
      decision === "already" && kept ? kept.revision : Math.max(basedOn, kept?.revision ?? 0) + 1;
    outcome = { id, revision, conflict: null };
    return decision === "already"
      ? before
      : ({ id, revision, savedAt: at, worksheet, ...by } satisfies SavedSheet);
  });
  if (outcome) return outcome;
  const title = copyTitle(worksheet.title);
  const copy = {
    id: newId(),
    revision: 1,
    savedAt: at,
    worksheet: { ...worksheet, title },
    ...by,
  } satisfies SavedSheet;
  await store.set(SHEET + copy.id, copy);
  return { id: copy.id, revision: 1, conflict: { title } };
}

async function current(store: KeyValueStore): Promise<string | null> {
  const id = await store.get(CURRENT);
  return typeof id === "string" ? id : null;
}

async function asideText(store: KeyValueStore, key: string): Promise<string | null> {
  const data = key.startsWith(ASIDE) ? await store.get(key) : undefined;
  return data === undefined ? null : JSON.stringify(data, null, 2);
}

/**
 * The shelf over a key-value store.
 *
 * @param store where things are kept
 * @param newId an id that was never given out before
 */
export function makeShelf(store: KeyValueStore, newId: () => string): Shelf {
  return {
    list: () => attempt(() => list(store)),
    open: (id, at) => attempt(() => open(store, id, at)),
    save: (request) => attempt(() => save(store, newId, request)),
    remove: (id) => attempt(() => store.del(SHEET + id)),
    current: () => attempt(() => current(store)),
    setCurrent: (id) => attempt(() => (id === null ? store.del(CURRENT) : store.set(CURRENT, id))),
    listAside: () => attempt(async () => (await store.keys()).filter((key) => key.startsWith(ASIDE))),
    asideText: (key) => attempt(() => asideText(store, key)),
  };
}

const ID_BYTES = 12;

/** An id by chance, long enough never to come twice. */
export function chanceId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(ID_BYTES));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
