// Numbers that are not sure: the two ends of the one in hand, and what the answers become.

import { createMemo, untrack } from "solid-js";
import type { Entry } from "../document/worksheet.ts";
import { usualSpread } from "../studies/not-sure/doubts.ts";
import { type Ends, type NumberAxis, numberAt, usualEnds } from "../studies/not-sure/usual-ends.ts";
import { type Axis, entryStepped, placeOnAxis } from "../studies/turn.ts";
import type { Doubting, End, SpanInHand } from "../ui/hand/doubting.ts";
import { MEASURES } from "../units/measures.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { createAlone } from "./alone.ts";
import type { InHandInside } from "./in-hand.ts";
import { createNotSure } from "./not-sure.ts";
import type { InHandTools } from "./turned.ts";

/** Figures of a middle that is no round value. */
const SURE_FIGURES = 3;
const NAMES: ReadonlySet<string> = new Set(["count", "year"]);
/** An end stands under the axis as its field has it, not rounded as an answer is. */
const END_FIGURES = 4;

/** Both ends of the number in hand put down, and what its table gives for them. */
function createEnds({ session }: InHandTools, { turned, putting }: InHandInside) {
  const { turn } = turned;
  const put = ({ low, high }: Ends, unit: string): void => {
    const row = turn()?.row;
    const middle = tidy((low + high) / 2);
    const isCount = row?.row === "given" && MEASURES[row.measure].form === "count";
    const next = { value: isCount ? Math.round(middle) : middle, unit, low, high };
    putting.put({ from: "guessed", ...putting.keeping(next) });
  };
  /** What the table of its usual value gives, in a unit; null where it has none. */
  const usual = (unit: string): Ends | null => {
    const view = untrack(session.engine.view);
    const spread = usualSpread({ worksheet: view.worksheet, whole: view }, turn()?.id ?? "");
    const of = (end: number) => tidy(fromSi(toSi(end, spread?.unit ?? unit), unit));
    return spread && { low: of(spread.low), high: of(spread.high) };
  };
  return { put, usual };
}

const numbersOf = (over: Axis | null): NumberAxis | null => (over?.form === "number" ? over : null);

/** Both ends in a unit, where there are two. */
function endsIn(unit: string, [low, high]: readonly number[]): Ends | null {
  if (low === undefined || high === undefined) return null;
  return { low: tidy(fromSi(low, unit)), high: tidy(fromSi(high, unit)) };
}

/** Both ends of the number in hand, and every way of setting them. */
function createSpan(tools: InHandTools, inside: InHandInside) {
  const { turned, axis, texts, putting } = inside;
  const { entry, value, ends } = turned;
  const { put, usual } = createEnds(tools, inside);
  const numbers = (): NumberAxis | null => numbersOf(axis());
  const doubt = (): void => {
    const [over, si] = [numbers(), value()];
    if (!over || typeof si !== "number") return;
    const { unit } = over.scale;
    const isUsual = entry() === null || entry()?.from === "default";
    put((isUsual ? usual(unit) : null) ?? usualEnds(over, si), unit);
  };
  const set = (end: End, to: number): void => {
    const over = numbers();
    const now = over && endsIn(over.scale.unit, ends());
    // An end never goes past the other one.
    if (!over || !now || (end === "low" ? to >= now.high : to <= now.low)) return;
    tools.looking.stir();
    put({ ...now, [end]: to }, over.scale.unit);
  };
  const span = createMemo<SpanInHand | null>(() => {
    const over = numbers();
    const [low, high] = ends();
    if (!over || low === undefined || high === undefined) return null;
    const mark = (si: number) => ({
      place: Math.min(1, Math.max(0, placeOnAxis(over, si) ?? 0)),
      text: texts.placeText(si, END_FIGURES),
    });
    return { low: mark(low), high: mark(high) };
  });
  const sure = (): void => {
    const of: Entry | null = entry();
    if (!of) return;
    const { low, high, ...rest } = of;
    const table = usual(of.unit);
    // The table's own span was taken up by a touch: who is sure again has the usual value again.
    const isTable = table !== null && table.low === low && table.high === high;
    putting.put(isTable ? null : { ...rest, value: sureValue(of) });
  };
  /** What stood there before it was not sure, where that may be; else the round value nearest to the middle, or the middle itself. */
  const sureValue = ({ value: middle, unit, low = 0, high = 0 }: Entry): number => {
    const before = turned.turn()?.entry;
    const isSame = typeof before?.value === "number" && before.unit === unit && before.low === undefined;
    const over = numbers();
    const si = toSi(Number(middle), unit || "1");
    const place = over && placeOnAxis(over, si);
    const round =
      over && place !== null ? tidy(fromSi(toSi(numberAt(over, place), over.scale.unit), unit)) : null;
    const may = [isSame ? Number(before.value) : null, round].find(
      (value) => value !== null && value >= low && value <= high,
    );
    return may ?? Number(Number(middle).toPrecision(SURE_FIGURES));
  };
  return {
    mayDoubt: () => {
      const row = turned.turn()?.row;
      // A turn or the name of a set is what somebody says it is.
      const isName = row?.row === "given" && row.sizeless && NAMES.has(MEASURES[row.measure].form);
      return numbers() !== null && typeof value() === "number" && !isName;
    },
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
  return { ...createSpan(tools, inside), ...createNotSure(tools, asker), alone: createAlone(inside) };
}
