// What of a worksheet is not sure: numbers that were said as a span, and defaults of which their table gives a low and a
// high. Cards that take one word of a table share one doubt; at most twelve are asked at once, the others held.

import { type Change, withChanges } from "../../document/changes.ts";
import type { Card, Entry, Worksheet } from "../../document/worksheet.ts";
import { ancestorsOf } from "../../graph/ancestors.ts";
import { numberIn, wordIn } from "../../graph/readers.ts";
import type { NumberGiven, QuantityId, Row } from "../../graph/types.ts";
import type { DefaultSpread, Doubtful } from "../../kinds/doubtful.ts";
import { KIND_DOUBTS } from "../../kinds/doubts.ts";
import type { Spread } from "../../kinds/table-doubt.ts";
import { MEASURES } from "../../units/measures.ts";
import { type Scale, valueAt } from "../../units/scale.ts";
import { fromSi, toSi } from "../../units/unit.ts";
import type { Base } from "../ask.ts";
import { scaleOf } from "../scale.ts";
import type { Target } from "../try.ts";
import { entryAtTarget, targetOf } from "../turn.ts";

/** One number that is not sure, where it is set, and its ends on a scale of its own. */
export type DoubtfulNumber = {
  readonly id: QuantityId;
  readonly target: Target;
  readonly row: Row;
  readonly scale: Scale;
  /** What stands there now [unit of the scale]; a default's is not the middle. */
  readonly value: number;
  readonly from?: Entry["from"];
};

/** Numbers that are wrong by the same: of several cards where these take one word of a table. */
export type Doubt = {
  readonly key: string;
  readonly from: "said" | "table";
  readonly numbers: readonly [DoubtfulNumber, ...DoubtfulNumber[]];
};

export type Doubts = { readonly taken: readonly Doubt[]; readonly held: readonly Doubt[] };

/** More at once would need more runs than anybody waits for. */
export const MOST_DOUBTS = 12;

/** What is asked: a worksheet with its light part worked out. */
export type Worked = Pick<Base, "worksheet" | "whole">;

type Found = { readonly key: string; readonly from: Doubt["from"]; readonly number: DoubtfulNumber };

/** A span runs as its row does: in ratios where the trade's span of it does. */
function ownScale(row: Row, low: number, high: number, unit: string): Scale {
  const isGiven = row.row === "given";
  const usual = isGiven ? scaleOf(row, unit, [toSi(low, unit), toSi(high, unit)]) : null;
  const measure = "measure" in row ? row.measure : undefined;
  const whole =
    measure !== undefined && measure !== "text" && measure !== "series" && MEASURES[measure].form === "count";
  return { low, high, unit, ratio: low > 0 && (usual?.ratio ?? high / low >= 20), whole };
}

function saidNumber(card: Card, row: Row, target: Target, entry: Entry | null): Found | null {
  if (!entry || typeof entry.value !== "number") return null;
  const { low, high, value, unit, from } = entry;
  if (low === undefined || high === undefined || low >= high) return null;
  const id = `${card.id}.${row.name}`;
  const scale = ownScale(row, low, high, unit || "1");
  return { key: id, from: "said", number: { id, target, row, scale, value, ...(from ? { from } : {}) } };
}

function spreadOf(spread: DefaultSpread, base: Worked, card: Card): Spread | null {
  return "by" in spread
    ? spread.spreadOf(wordIn(base.whole.results.get(`${card.id}.${spread.by}`)))
    : spread.spread;
}

/** The ends of a table within the limits of the row that takes it. */
function within(row: NumberGiven, { low, high, unit }: Spread): readonly [number, number] {
  const bound = (value: number) =>
    fromSi(Math.min(Math.max(toSi(value, unit), row.min ?? -Infinity), row.max ?? Infinity), unit);
  return [bound(low), bound(high)];
}

function tabledNumber(base: Worked, card: Card, row: NumberGiven, doubtful: Doubtful): Found | null {
  const stated = doubtful.spreads?.[row.name];
  const spread = stated ? spreadOf(stated, base, card) : null;
  if (!spread) return null;
  const isMeasured = doubtful.measuring?.[row.name]?.into?.some(
    (name) => card.measured[name] ?? card.givens[name],
  );
  const now = numberIn(base.whole.results.get(`${card.id}.${row.name}`));
  if (isMeasured || now === null) return null;
  const [low, high] = within(row, spread);
  if (low >= high) return null;
  const scale = ownScale(row, low, high, spread.unit);
  const target: Target = { card: card.id, part: "givens", row: row.name };
  const number = { id: `${card.id}.${row.name}`, target, row, scale, value: fromSi(now, spread.unit) };
  return { key: spread.key, from: "table", number };
}

/** The spread that a number's table gives of its usual value, whatever was said of the number; null where it has none. */
export function usualSpread(base: Worked, id: QuantityId): Scale | null {
  const [cardId, name] = id.split(".");
  const card = base.worksheet.cards.find((one) => one.id === cardId);
  const row = base.whole.graph.kinds[card?.kind ?? ""]?.rows.find((one) => one.name === name);
  if (!card || row?.row !== "given") return null;
  return tabledNumber(base, card, row, KIND_DOUBTS.get(card.kind) ?? {})?.number.scale ?? null;
}

function ofRow(base: Worked, card: Card, row: Row): Found | null {
  if (row.row === "given") {
    const target = targetOf(base.worksheet, card.id, row);
    const entry = entryAtTarget(base.worksheet, target);
    if (entry && entry.from !== "default") return saidNumber(card, row, target, entry);
    return (
      saidNumber(card, row, target, entry) ?? tabledNumber(base, card, row, KIND_DOUBTS.get(card.kind) ?? {})
    );
  }
  if (row.row !== "formula" && row.row !== "output") return null;
  const target: Target = { card: card.id, part: "measured", row: row.name };
  return saidNumber(card, row, target, entryAtTarget(base.worksheet, target));
}

/** Everything that is not sure, each where it is first found. */
function foundIn(base: Worked): readonly Found[] {
  const { kinds } = base.whole.graph;
  return base.worksheet.cards.flatMap((card) =>
    (kinds[card.kind]?.rows ?? []).flatMap((row) => ofRow(base, card, row) ?? []),
  );
}

/** How far apart the ends are for the size of what lies between. */
function reach({ scale: { low, high } }: DoubtfulNumber): number {
  const size = (Math.abs(low) + Math.abs(high)) / 2;
  return size === 0 ? 0 : (high - low) / size;
}

const widest = (one: Doubt, other: Doubt): number => reach(other.numbers[0]) - reach(one.numbers[0]);

/**
 * What is not sure among what the wanted answers read: what somebody said first, then the defaults of tables, the widest
 * first. What chooses the record of the rain is held: its years are no doubt.
 */
export function doubtsOf(base: Worked, wanted: readonly QuantityId[]): Doubts {
  const { graph } = base.whole;
  const reads = ancestorsOf(graph, wanted);
  const rain = ancestorsOf(graph, ["weather.record_in_use"]);
  const byKey = new Map<string, Doubt>();
  for (const { key, from, number } of foundIn(base)) {
    const position = graph.index.get(number.id) ?? -1;
    if (reads[position] !== 1 || rain[position] === 1) continue;
    const known = byKey.get(key);
    byKey.set(
      key,
      known ? { ...known, numbers: [...known.numbers, number] } : { key, from, numbers: [number] },
    );
  }
  const all = [...byKey.values()];
  const said = all.filter(({ from }) => from === "said").sort(widest);
  const ordered = [...said, ...all.filter(({ from }) => from === "table").sort(widest)];
  return { taken: ordered.slice(0, MOST_DOUBTS), held: ordered.slice(MOST_DOUBTS) };
}

/** The value at a place of a span; of whole numbers each has as much of the span as any other. */
function valueOn(scale: Scale, place: number): number {
  if (!scale.whole) return valueAt(scale, place);
  const [first, last] = [Math.ceil(scale.low), Math.floor(scale.high)];
  return Math.min(last, first + Math.floor(place * (last - first + 1)));
}

/** What puts a doubt at a place between its ends, on every card that shares it. */
export function changesAt({ numbers }: Doubt, place: number): readonly Change[] {
  return numbers.map(({ target, scale, from }) => ({
    ...target,
    entry: { value: valueOn(scale, place), unit: scale.unit, ...(from ? { from } : {}) },
  }));
}

/** The worksheet with what is not sure written down as it stands, so that every run asks the same rows. */
export function sheetToDoubt(worksheet: Worksheet, { taken }: Doubts): Worksheet {
  const changes = taken.flatMap(({ numbers }) =>
    numbers.map(({ target, scale, value, from }) => ({
      ...target,
      entry: { value, unit: scale.unit, ...(from ? { from } : {}) },
    })),
  );
  return withChanges(worksheet, changes);
}
