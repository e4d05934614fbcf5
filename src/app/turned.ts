// What is in hand and what stands there now, the axis it is turned over, and what values are called.

import { type Accessor, createMemo, on, untrack } from "solid-js";
import { sameData } from "../document/same.ts";
import type { Entry, Worksheet } from "../document/worksheet.ts";
import { nodeOf } from "../graph/nodes.ts";
import { shownIn } from "../graph/readers.ts";
import { isUsual, shownOf } from "../graph/shown.ts";
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
import { displayParts, roundedShown, type ShowOptions } from "../units/show.ts";
import { toSi } from "../units/unit.ts";
import type { Session } from "./session.ts";

export type InHandTools = {
  readonly session: Session;
  readonly looking: Looking;
  readonly edits: () => Edits;
  readonly options: Accessor<ShowOptions>;
};

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
  /** What a step goes on from: of a number that nobody typed what is read there, rounded in its unit [SI]. */
  const stands = (): number | string | null => {
    const [now, si] = [turn(), value()];
    if (now?.row.row !== "given" || entry() !== null || typeof si !== "number") return si;
    const node = nodeOf(engine.view().graph, now.id);
    const read = roundedShown(si, now.row.measure, unit(), node !== null && isUsual(node));
    return toSi(read, unit());
  };
  /** Both ends where it is not sure [SI]. */
  const ends = (): readonly number[] => {
    const of = entry();
    return of?.low === undefined ? [] : [of.low, of.high ?? of.low].map((end) => toSi(end, of.unit || "1"));
  };
  const unit = createMemo(() => {
    const now = turn();
    return now?.row.row === "given" ? turnedUnit(now.row, entry(), worksheet()) : "";
  });
  return { turn, target, entry, value, stands, ends, unit };
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

/** What values are called. */
export function createTexts({ session, options }: InHandTools, { turn, unit }: Turned) {
  const saidOf = (id: string, of: number | string): string => {
    const { graph, worksheet } = untrack(session.engine.view);
    const node = nodeOf(graph, id);
    return node ? shownOf(worksheet, node, of, options()) : "";
  };
  const said = (of: number | string): string => saidOf(turn()?.id ?? "", of);
  /** Without its unit, where that stands beside the large value anyway. */
  const placeText = (of: number | string, figures?: number, usual = false): string => {
    const row = turn()?.row;
    if (row?.row !== "given" || typeof of !== "number") return said(of);
    const more = figures === undefined ? {} : { figures, rounded: false };
    return displayParts(of, row.measure, { ...options(), unit: unit(), usual, ...more }).number;
  };
  return { saidOf, placeText };
}
