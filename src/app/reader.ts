// Reading results for the screen: shown texts, labels, origins, movements, workings.

import type { Accessor } from "solid-js";
import { CARD_KINDS } from "../cards/index.ts";
import type { Card } from "../document/worksheet.ts";
import { type Explanation, explain } from "../graph/explain.ts";
import { type Movement, movement } from "../graph/moved.ts";
import { labelOf, shownValue } from "../graph/shown.ts";
import type { Result, Row } from "../graph/types.ts";
import type { StoredSeries } from "../scene/stored-water.ts";
import type { MeasureName } from "../units/measures.ts";
import { type ShowOptions, unitFor } from "../units/show.ts";
import type { Session } from "./session.ts";

type Place = { readonly card: Card; readonly row: Row | null };

const GIVEN_ROWS = ["given", "choice", "date", "list"];

const isStarter = (session: Session): boolean => session.worksheet().made_by.includes("made-up");

/** What the components may read; everything is worked out from the session's present view. */
export function makeReader(session: Session, showOptions: Accessor<ShowOptions>) {
  const view = session.engine.view;
  const result = (id: string): Result | undefined => view().results.get(id);
  const placeOf = (id: string): Place | null => {
    const [cardId, name] = id.split(".");
    const card = session.worksheet().cards.find((candidate) => candidate.id === cardId);
    if (!card) return null;
    return { card, row: CARD_KINDS[card.kind]?.rows.find((row) => row.name === name) ?? null };
  };
  const shown = (id: string): string =>
    shownValue(view().graph, view().worksheet, view().results, id, showOptions());
  const label = (id: string): string => {
    const place = placeOf(id);
    if (!place?.row) return place?.card.title ?? id;
    return labelOf(view().graph, view().worksheet, id);
  };
  return {
    result,
    shown,
    label,
    place: (id: string): string => {
      const place = placeOf(id);
      if (!place) return id;
      return place.row ? `${place.card.title}: ${label(id)}` : place.card.title;
    },
    explain: (id: string): Explanation | null =>
      result(id) ? explain(view().graph, view().worksheet, view().results, id, showOptions()) : null,
    moved: (id: string): Movement | null => {
      const baseline = session.baseline();
      if (!baseline) return null;
      return movement(view().graph, view().worksheet, baseline, view().results, id, showOptions());
    },
    unitOf: (id: string): string => {
      const row = placeOf(id)?.row;
      if (!row || !("measure" in row) || row.measure === "text" || row.measure === "series") return "";
      return unitFor(row.measure as MeasureName, showOptions().units);
    },
    originOf: (id: string): string | null => {
      const now = result(id);
      if (now?.state !== "ready") return null;
      if (now.origin === "measured") return "measured";
      const place = placeOf(id);
      if (!place?.row || !GIVEN_ROWS.includes(place.row.row)) return null;
      const entry = place.card.givens[place.row.name];
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
    stored: (): StoredSeries | null => {
      const [stored, short, first] = [
        "season.stored_total",
        "season.short_days",
        "season.record_first_day",
      ].map((id) => {
        const now = result(id);
        return now?.state === "ready" ? now.value : now?.state === "pending" ? now.last : null;
      });
      if (!(stored instanceof Float64Array) || !(short instanceof Uint8Array) || typeof first !== "number")
        return null;
      return { stored, short, firstDay: first };
    },
    starter: (): boolean => isStarter(session),
    madeUp: (): string | null => {
      const place = isStarter(session) ? "made-up place" : null;
      const kind = result("weather.record_kind");
      const weather =
        kind?.state === "ready" && String(kind.value).startsWith("made up") ? "made-up weather" : null;
      return [place, weather].filter((text) => text !== null).join(", ") || null;
    },
  };
}
