// What stands typed in fields and is not entered yet, written at once, field by field: a page that is left without a word, or a
// text that cannot be read, loses none of it. One note for each page and worksheet, as for the worksheets themselves.

import type { InstantStore } from "./instant-store.ts";

export type Texts = Readonly<Record<string, string>>;

/** What a page left typed in one worksheet. */
export type TypedNote = {
  readonly writer: string;
  readonly sheet: string;
  /** [ms since 1970-01-01 UTC] */
  readonly at: number;
  readonly texts: Texts;
};

const PREFIX = "eavesdrip:typed:";

/** Longer than a record that somebody pastes by hand, shorter than would leave no room for worksheets. */
const LONGEST = 500_000;

const keyOf = (writer: string, sheet: string): string => `${PREFIX}${writer}:${sheet}`;

function noteOf(text: string | null): TypedNote | null {
  try {
    const data = JSON.parse(text ?? "null") as Partial<TypedNote> | null;
    const { writer, sheet, at, texts } = data ?? {};
    if (typeof writer !== "string" || typeof sheet !== "string" || typeof at !== "number") return null;
    if (typeof texts !== "object" || texts === null) return null;
    return Object.values(texts).every((one) => typeof one === "string") ? { writer, sheet, at, texts } : null;
  } catch {
    return null;
  }
}

/**
 * @param writer a name that no other page has
 * @param now [ms since 1970-01-01 UTC]
 */
export function makeTypedTexts(store: InstantStore, writer: string, now: () => number) {
  const own = new Map<string, Texts>();
  const keep = (sheet: string, texts: Texts): void => {
    own.set(sheet, texts);
    const text = JSON.stringify({ writer, sheet, at: now(), texts } satisfies TypedNote);
    const isKept =
      Object.keys(texts).length > 0 && text.length <= LONGEST && store.set(keyOf(writer, sheet), text);
    if (!isKept) store.del(keyOf(writer, sheet));
  };
  return {
    /** What stands typed in a worksheet, by field. */
    of: (sheet: string): Texts => own.get(sheet) ?? {},
    /** Says what stands typed in a field; null: nothing any more. */
    say: (sheet: string, field: string, text: string | null): void => {
      const before = own.get(sheet) ?? {};
      if ((before[field] ?? null) === text) return;
      const others = Object.entries(before).filter(([name]) => name !== field);
      keep(sheet, Object.fromEntries(text === null ? others : [...others, [field, text]]));
    },
    /** Takes over what a page that is gone left typed; what is typed here already stays. */
    adopt: (note: TypedNote): void => {
      store.del(keyOf(note.writer, note.sheet));
      keep(note.sheet, { ...note.texts, ...own.get(note.sheet) });
    },
  };
}

export type TypedTexts = ReturnType<typeof makeTypedTexts>;

/** Whether a note still lies there. */
export function isTypedLeft(store: InstantStore, { writer, sheet }: TypedNote): boolean {
  return store.get(keyOf(writer, sheet)) !== null;
}

/** What pages left typed, the newest first. */
export function typedLeft(store: InstantStore): readonly TypedNote[] {
  return store
    .keys()
    .filter((key) => key.startsWith(PREFIX))
    .flatMap((key) => noteOf(store.get(key)) ?? [])
    .sort((a, b) => b.at - a.at);
}
