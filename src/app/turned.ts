// What is in hand and what stands there now, the axis it is turned over, and what values and steps are called.

import { type Accessor, createMemo, on, untrack } from "solid-js";
import { sameData } from "../document/same.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";
import { nodeOf } from "../graph/nodes.ts";
import { shownIn } from "../graph/readers.ts";
import { shownOf } from "../graph/shown.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import {
  type Axis,
  axisHolding,
  axisIn,
  entryAtTarget,
  type Turn,
  targetOf,
  turnedUnit,
  turnOf,
} from "../studies/turn.ts";
import type { Looking } from "../ui/looking.ts";
import type { Edits } from "../ui/sheet.ts";
import { MEASURES } from "../units/measures.ts";
import { displayParts, type ShowOptions, showNumber, showQuantity } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Session } from "./session.ts";

export type InHandTools = {
  readonly session: Session;
  readonly looking: Looking;
  readonly edits: () => Edits;
  readonly options: Accessor<ShowOptions>;
};

/** Doubles hold a few more; what is beyond is dust of the arithmetic. */
export const FIGURES = 12;
const STEP_FIGURES = 4;
/** What goes on a step's button. */
const STEP_LENGTH = 8;

/** What is in hand, and what stands there now. */
export function createTurned({ session, looking }: InHandTools) {
  const { engine } = session;
  const turn = createMemo<Turn | null>(
    on(looking.inHand, (id) => {
      if (id === null) return null;
      const { worksheet, results } = engine.view();
      const held = session.held()?.results;
      return turnOf(worksheet, CARD_KINDS, id, held ? [results, held] : [results]);
    }),
  );
  const worksheet = (): Worksheet => engine.view().worksheet;
  const target = () => {
    const now = turn();
    return now && targetOf(worksheet(), now.target.card, now.row);
  };
  const entry = createMemo<Entry | null>(
    () => {
      const at = target();
      return at && entryAtTarget(worksheet(), at);
    },
    null,
    { equals: sameData },
  );
  /** In SI, a word or a date; also where it lies outside the row's limits and nothing is worked out from it. */
  const value = createMemo<number | string | null>(() => {
    const [now, of] = [turn(), entry()];
    if (!now) return null;
    if (typeof of?.value === "number") return toSi(of.value, of.unit || "1");
    if (typeof of?.value === "string") return of.value;
    const shown = shownIn(engine.view().results.get(now.id));
    return typeof shown === "number" || typeof shown === "string" ? shown : null;
  });
  /** Both ends where it is not sure [SI]. */
  const ends = (): readonly number[] => {
    const of = entry();
    return of?.low === undefined ? [] : [of.low, of.high ?? of.low].map((end) => toSi(end, of.unit || "1"));
  };
  const unit = createMemo(() => {
    const now = turn();
    return now?.row.row === "given" ? turnedUnit(now.row, entry(), worksheet()) : "";
  });
  return { turn, target, entry, value, ends, unit };
}

export type Turned = ReturnType<typeof createTurned>;

export function createAxis({ turn, value, ends, unit }: Turned): Accessor<Axis | null> {
  const standing = createMemo<{ readonly of: Turn; readonly axis: Axis | null } | null>((before) => {
    const now = turn();
    if (!now) return null;
    const last = before?.of === now ? before.axis : now.axis;
    const hold = (axis: Axis | null, si: number | string | null) => axis && axisHolding(axis, now.row, si);
    const axis = [value(), ...ends()].reduce(hold, last);
    return before?.of === now && before.axis === axis ? before : { of: now, axis };
  }, null);
  return createMemo<Axis | null>((before) => {
    const stands = standing();
    const shown = stands?.axis ? axisIn(stands.axis, stands.of.row, unit()) : null;
    return before && sameData(before, shown) ? before : shown;
  }, null);
}

/** What values and steps are called. */
export function createTexts({ session, options }: InHandTools, { turn, value, unit }: Turned) {
  const saidOf = (id: string, of: number | string): string => {
    const { graph, worksheet } = untrack(session.engine.view);
    const node = nodeOf(graph, id);
    return node ? shownOf(worksheet, node, of, options()) : "";
  };
  const said = (of: number | string): string => saidOf(turn()?.id ?? "", of);
  /** Without its unit, where that stands beside the large value anyway. */
  const placeText = (of: number | string, figures?: number): string => {
    const row = turn()?.row;
    if (row?.row !== "given" || typeof of !== "number") return said(of);
    const more = figures === undefined ? {} : { figures, rounded: false };
    return displayParts(of, row.measure, { ...options(), unit: unit(), ...more }).number;
  };
  const stepText = (next: Entry | null, sign: string): string | null => {
    const [row, now] = [turn()?.row, value()];
    if (!next) return null;
    if (row?.row !== "given" || typeof next.value !== "number") return sign;
    const { form } = MEASURES[row.measure];
    const by = Math.abs(next.value - fromSi(typeof now === "number" ? now : 0, next.unit));
    if (form === "duration" || form === "clock") {
      return `${sign}${showQuantity(toSi(by, next.unit), "duration", options())}`;
    }
    const text = `${sign}${showNumber(Number(by.toPrecision(FIGURES)), STEP_FIGURES, options().locale)}`;
    // From far beyond the axis back to its end is no step that anybody counts.
    return text.length > STEP_LENGTH ? sign : text;
  };
  return { saidOf, placeText, stepText };
}
