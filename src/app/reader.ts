// Reading results for the screen: shown texts, labels, origins, movements, workings.

import { type Accessor, createMemo, untrack } from "solid-js";
import { NOTED_GIVENS } from "../document/notes.ts";
import { titlesApart } from "../document/title-apart.ts";
import type { Card, Entry } from "../document/worksheet.ts";
import type { Explanation } from "../graph/explain.ts";
import { type Movement, movement } from "../graph/moved.ts";
import { wordIn } from "../graph/readers.ts";
import { labelOf, shownValue } from "../graph/shown.ts";
import type { Result, Row } from "../graph/types.ts";
import { rowWords, type Words } from "../graph/words.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { isSameSeries, type StoredSeries, storedIn } from "../scene/stored-water.ts";
import { entryOf } from "../ui/rows/enter-number.ts";
import type { MeasureName } from "../units/measures.ts";
import { type ShowOptions, unitFor } from "../units/show.ts";
import type { View } from "./engine.ts";
import { createKeyed } from "./keyed.ts";
import type { Session } from "./session.ts";
import type { Workings } from "./words.ts";

type Place = { readonly card: Card; readonly row: Row | null };

const GIVEN_ROWS = ["given", "choice", "date", "list"];

const rowsByName = new Map<string, ReadonlyMap<string, Row>>();

/** The rows of a kind by their names. */
function rowsOf(kind: string): ReadonlyMap<string, Row> {
  const known = rowsByName.get(kind);
  if (known) return known;
  const made = new Map((CARD_KINDS[kind]?.rows ?? []).map((row) => [row.name, row]));
  rowsByName.set(kind, made);
  return made;
}

const isStarter = (session: Session): boolean => session.worksheet().made_by.includes("made-up");

/** Looks things up by key, so that a row wakes only when what concerns it changed. */
function createLookups(session: Session, showOptions: Accessor<ShowOptions>) {
  const { view } = session.engine;
  const result = createKeyed(view, (id): Result | undefined => view().results.get(id));
  const before = createKeyed(session.baseline, (id) => session.baseline()?.get(id));
  const byId = createMemo(
    () => new Map(titlesApart(session.worksheet()).cards.map((card) => [card.id, card])),
  );
  const cardOf = createKeyed(byId, (id) => byId().get(id));
  // What one card's text may say of others is their titles.
  const titles = createMemo(() =>
    session
      .worksheet()
      .cards.map(({ id, title }) => `${id} ${title}`)
      .join("\n"),
  );
  const placeOf = (id: string): Place | null => {
    const [cardId = "", name = ""] = id.split(".");
    const card = cardOf(cardId);
    return card ? { card, row: rowsOf(card.kind).get(name) ?? null } : null;
  };
  /** Says something of a quantity out of the whole view, woken only by what concerns that quantity. */
  const about = <Said>(id: string, say: (now: View, options: ShowOptions) => Said): Said => {
    result(id);
    cardOf(id.split(".")[0] ?? "");
    titles();
    const options = showOptions();
    return untrack(() => say(view(), options));
  };
  return { view, result, before, placeOf, about };
}

/** Where a number is from, and why there is none. */
function createOrigins(
  { result, placeOf, about }: Pick<ReturnType<typeof createLookups>, "result" | "placeOf" | "about">,
  label: (id: string) => string,
) {
  const typedOf = (id: string): Entry | undefined => {
    const place = placeOf(id);
    if (!place?.row) return undefined;
    const { card, row } = place;
    if (row.row === "given" && row.stored) return entryOf(card, row);
    // What lives in notes is laid over the card only where it is worked out.
    const seen = (now: View) => now.worksheet.cards.find((one) => one.id === card.id)?.givens[row.name];
    return card.givens[row.name] ?? (NOTED_GIVENS.has(row.name) ? about(id, seen) : undefined);
  };
  return {
    /** What somebody said a quantity is. */
    typedOf,
    originOf: (id: string): string | null => {
      const now = result(id);
      if (now?.state !== "ready") return null;
      if (now.origin === "measured") return "measured";
      const row = placeOf(id)?.row?.row;
      if (!row || !GIVEN_ROWS.includes(row)) return null;
      const entry = typedOf(id);
      if (entry) return entry.from ?? null;
      return now.origin === "computed" ? null : "default";
    },
    failure: (id: string): string | null => {
      const now = result(id);
      if (now?.state !== "failed") return null;
      const { problem } = now;
      return problem.cause && problem.cause !== id
        ? `waits for ${placeOf(problem.cause)?.card.title ?? problem.cause}: ${label(problem.cause)}`
        : problem.text;
    },
  };
}

/** What the components may read; everything is worked out from the session's present view. */
export function makeReader(
  session: Session,
  showOptions: Accessor<ShowOptions>,
  { words, workings }: { readonly words: Accessor<Words>; readonly workings: Accessor<Workings | null> },
) {
  const { view, result, before, placeOf, about } = createLookups(session, showOptions);
  const shown = (id: string): string =>
    about(id, (now, options) => shownValue(now.graph, now.worksheet, now.results, id, options));
  const label = (id: string): string => {
    const place = placeOf(id);
    if (!place?.row) return place?.card.title ?? id;
    return about(id, (now) => labelOf(now.graph, now.worksheet, id));
  };
  return {
    result,
    shown,
    label,
    ...createOrigins({ result, placeOf, about }, label),
    help: ({ kind }: Card, row: Row): string => rowWords(words(), kind, row).help,
    place: (id: string): string => {
      const place = placeOf(id);
      if (!place) return id;
      return place.row ? `${place.card.title}: ${label(id)}` : place.card.title;
    },
    explain: (id: string): Explanation | null => {
      const explain = workings()?.explain;
      if (!explain || !result(id)) return null;
      return explain(view().graph, view().worksheet, view().results, id, showOptions(), words());
    },
    moved: (id: string): Movement | null => {
      if (before(id) === result(id)) return null;
      const baseline = session.baseline();
      if (!baseline) return null;
      return about(id, (now, options) =>
        movement(now.graph, now.worksheet, baseline, now.results, id, options),
      );
    },
    unitOf: (id: string): string => {
      const row = placeOf(id)?.row;
      if (!row || !("measure" in row) || row.measure === "text" || row.measure === "series") return "";
      return unitFor(row.measure as MeasureName, showOptions().units);
    },
    stored: createMemo<StoredSeries | null>(() => storedIn(result), null, { equals: isSameSeries }),
    heldResult: (id: string): Result | undefined => session.held()?.results.get(id),
    heldCards: (): readonly Card[] => session.held()?.worksheet.cards ?? [],
    starter: (): boolean => isStarter(session),
    madeUp: (): string | null => {
      const place = isStarter(session) ? "made-up place" : null;
      const kind = wordIn(result("weather.record_kind"));
      const weather = kind.startsWith("made up") ? "made-up weather" : null;
      return [place, weather].filter((text) => text !== null).join(", ") || null;
    },
  };
}

export type Reader = ReturnType<typeof makeReader>;
