// Numbers that are not sure: the two ends of the one in hand, and what the answers become.

import { createMemo, untrack } from "solid-js";
import type { Entry } from "../document/worksheet.ts";
import { usualSpread } from "../studies/not-sure/doubts.ts";
import { type Axis, entryAtPlace, entryStepped, placeOnAxis } from "../studies/turn.ts";
import type { Doubting, End, SpanInHand } from "../ui/hand/doubting.ts";
import { MEASURES } from "../units/measures.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Asker } from "../worker/asking-pool.ts";
import type { InHandInside } from "./in-hand.ts";
import { createNotSure } from "./not-sure.ts";
import { FIGURES, type InHandTools } from "./turned.ts";

/** Nothing being known of it, a number may be off by so much of itself to either side. */
const USUAL_DOUBT = 0.2;
/** Of a number that is nought, of its axis. */
const AROUND_NOUGHT = 0.05;

type Ends = Readonly<Record<End, number>>;

const tidy = (value: number): number => Number(value.toPrecision(FIGURES));

/** Both ends of the number in hand, and every way of setting them. */
function createSpan({ session }: InHandTools, { turned, axis, texts, putting }: InHandInside) {
  const { turn, entry, value, ends } = turned;
  const numbers = (): Extract<Axis, { form: "number" }> | null => {
    const over = axis();
    return over?.form === "number" ? over : null;
  };
  const put = ({ low, high }: Ends, unit: string): void => {
    const row = turn()?.row;
    const middle = tidy((low + high) / 2);
    const isCount = row?.row === "given" && MEASURES[row.measure].form === "count";
    const from = entry()?.from;
    const own = from && from !== "default" && from !== "borrowed" ? from : "guessed";
    putting.put({ value: isCount ? Math.round(middle) : middle, unit, low, high, from: own });
  };
  /** The round value at a place, as a number of the axis's unit. */
  const numberAt = (over: Axis, place: number): number => Number(entryAtPlace(over, place).value);
  const about = (over: Extract<Axis, { form: "number" }>, si: number): Ends => {
    const { unit } = over.scale;
    const size = Math.abs(fromSi(si, unit)) * USUAL_DOUBT;
    const now = placeOnAxis(over, si) ?? 0;
    const [low = 0, high = 1] = [-1, 1].map((side) => {
      const there = placeOnAxis(over, toSi(fromSi(si, unit) + side * size, unit)) ?? now;
      return numberAt(over, size === 0 ? now + side * AROUND_NOUGHT : there);
    });
    return low < high ? { low, high } : apart(over, low);
  };
  /** One step up, or where there is none one down. */
  const apart = (over: Extract<Axis, { form: "number" }>, from: number): Ends => {
    const si = toSi(from, over.scale.unit);
    const up = entryStepped(over, si, 1, false);
    if (up) return { low: from, high: Number(up.value) };
    return { low: Number(entryStepped(over, si, -1, false)?.value ?? from), high: from };
  };
  const doubt = (): void => {
    const [now, over, si] = [turn(), numbers(), value()];
    if (!now || !over || typeof si !== "number") return;
    const view = untrack(session.engine.view);
    const spread = usualSpread({ worksheet: view.worksheet, whole: view }, now.id);
    const { unit } = over.scale;
    const of = (end: number) => tidy(fromSi(toSi(end, spread?.unit ?? unit), unit));
    put(spread ? { low: of(spread.low), high: of(spread.high) } : about(over, si), unit);
  };
  const endsNow = (unit: string): Ends | null => {
    const [low, high] = ends();
    return low === undefined || high === undefined
      ? null
      : { low: tidy(fromSi(low, unit)), high: tidy(fromSi(high, unit)) };
  };
  const set = (end: End, to: number): void => {
    const over = numbers();
    const now = over && endsNow(over.scale.unit);
    // An end never goes past the other one.
    if (!over || !now || (end === "low" ? to >= now.high : to <= now.low)) return;
    put({ ...now, [end]: to }, over.scale.unit);
  };
  const span = createMemo<SpanInHand | null>(() => {
    const over = numbers();
    const [low, high] = ends();
    if (!over || low === undefined || high === undefined) return null;
    const mark = (si: number) => ({
      place: Math.min(1, Math.max(0, placeOnAxis(over, si) ?? 0)),
      text: texts.placeText(si),
    });
    return { low: mark(low), high: mark(high) };
  });
  const sure = (): void => {
    const of: Entry | null = entry();
    if (!of) return;
    const { low: _low, high: _high, ...rest } = of;
    putting.put(rest);
  };
  return {
    mayDoubt: () => numbers() !== null && typeof value() === "number",
    span,
    doubt,
    sure,
    slide: (end: End, place: number): void => {
      const over = numbers();
      if (over) set(end, numberAt(over, place));
    },
    step: (end: End, by: 1 | -1, coarse: boolean): void => {
      const [over, [low, high]] = [numbers(), ends()];
      const from = end === "low" ? low : high;
      const next = over && from !== undefined ? entryStepped(over, from, by, coarse) : null;
      if (next) set(end, Number(next.value));
    },
  };
}

export function createDoubting(tools: InHandTools, inside: InHandInside, asker: Asker): Doubting {
  return { ...createSpan(tools, inside), ...createNotSure(tools, asker) };
}
