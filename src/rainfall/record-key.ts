// A record's content key: our own 128-bit mix in plain arithmetic, since a phone on plain http has no crypto.
// It tells records apart; it is no defence against somebody who wants two records to collide.
import type { DailyRecord } from "./record.ts";

export type RecordParts = {
  readonly title: string;
  readonly source: string;
  readonly madeUp: boolean;
  readonly firstDay: number;
  readonly rain: Float64Array;
  readonly highest?: Float64Array | null;
  readonly lowest?: Float64Array | null;
  readonly wind?: Float64Array | null;
  readonly vapour?: Float64Array | null;
  readonly sun?: Float64Array | null;
};

const MULTIPLIERS = [0x9e3779b1, 0x85ebca6b, 0xc2b2ae35, 0x27d4eb2f] as const;
const ROTATIONS = [15, 13, 17, 11] as const;
const NAN_HIGH = 0x7ff80000;

type Lanes = [number, number, number, number];

const freshLanes = (): Lanes => [0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344];

function rotate(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by));
}

function mixWord(lanes: Lanes, word: number): void {
  for (let lane = 0; lane < 4; lane++) {
    const multiplier = MULTIPLIERS[lane] ?? 1;
    const before = lanes[(lane + 3) & 3] ?? 0;
    const stirred = Math.imul(
      rotate((lanes[lane] ?? 0) ^ Math.imul(word, multiplier), ROTATIONS[lane] ?? 1),
      5,
    );
    lanes[lane] = (stirred + Math.imul(before, multiplier) + 0x38b34ae5) | 0;
  }
}

function finishLane(lane: number): number {
  let word = lane;
  word = Math.imul(word ^ (word >>> 16), 0x85ebca6b);
  word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35);
  return word ^ (word >>> 16);
}

function finished(lanes: Lanes): string {
  for (let round = 0; round < 4; round++) mixWord(lanes, round);
  return lanes.map((lane) => (finishLane(lane) >>> 0).toString(16).padStart(8, "0")).join("");
}

function mixColumn(lanes: Lanes, values: Float64Array): void {
  const view = new DataView(new ArrayBuffer(8));
  mixWord(lanes, values.length);
  for (const value of values) {
    if (Number.isNaN(value)) {
      // Engines may keep different bits for a missing day; all of them count as one.
      mixWord(lanes, 0);
      mixWord(lanes, NAN_HIGH);
      continue;
    }
    view.setFloat64(0, value + 0, true);
    mixWord(lanes, view.getInt32(0, true));
    mixWord(lanes, view.getInt32(4, true));
  }
}

/**
 * Content key of a record: 32 hexadecimal digits over its first day and every column that it holds.
 * Title, source and the made-up mark are no part of it.
 */
export function recordKey(parts: Pick<RecordParts, "firstDay" | "rain"> & Partial<RecordParts>): string {
  const lanes = freshLanes();
  mixWord(lanes, parts.firstDay);
  const columns = [parts.rain, parts.highest, parts.lowest, parts.wind, parts.vapour, parts.sun];
  columns.forEach((column, index) => {
    if (!column) return;
    mixWord(lanes, index + 1);
    mixColumn(lanes, column);
  });
  return finished(lanes);
}

/** Content key of a text, by the same mix: 32 hexadecimal digits. */
export function textKey(text: string): string {
  const lanes = freshLanes();
  mixWord(lanes, text.length);
  for (let at = 0; at < text.length; at++) mixWord(lanes, text.charCodeAt(at));
  return finished(lanes);
}

/** A frozen record with its content key; columns left out are null. */
export function makeRecord(parts: RecordParts): DailyRecord {
  return Object.freeze({
    key: recordKey(parts),
    title: parts.title,
    source: parts.source,
    madeUp: parts.madeUp,
    firstDay: parts.firstDay,
    rain: parts.rain,
    highest: parts.highest ?? null,
    lowest: parts.lowest ?? null,
    wind: parts.wind ?? null,
    vapour: parts.vapour ?? null,
    sun: parts.sun ?? null,
  });
}
