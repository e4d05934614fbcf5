// Water that went another way in the year before: spilled, ran over into a tank that is of no use there, or was lost to leaks
// and the air. It tells why a tank is empty, and each litre of it answers for one litre of shortfall, once.

import { COMMON_YEAR } from "../units/constants.ts";
import { LOSS, RAIN, STORAGE, UNROOFED } from "./bounds.ts";

/** Litres by tank and day of the year before, which is 365 days, that have not answered yet [m3]. */
type Book = {
  readonly days: readonly Float64Array[];
  readonly sum: Float64Array;
  /** First day that may still hold anything, by tank. */
  readonly oldest: Int32Array;
};

export type Gone = { readonly spilled: Book; readonly lost: Book };

const newBook = (tanks: number): Book => ({
  days: Array.from({ length: tanks }, () => new Float64Array(COMMON_YEAR)),
  sum: new Float64Array(tanks),
  oldest: new Int32Array(tanks),
});

export const nothingGone = (tanks: number): Gone => ({ spilled: newBook(2 * tanks), lost: newBook(tanks) });

/** Where the book of what spilled keeps what a tank passed on by its overflow: after what all tanks spilled to the ground. */
export const overflowPlace = (tanks: number, tank: number): number => tanks + tank;

const copyOf = ({ days, sum, oldest }: Book): Book => ({
  days: days.map((slots) => slots.slice()),
  sum: sum.slice(),
  oldest: oldest.slice(),
});

/** The same litres, written down anew. */
export const copyOfGone = ({ spilled, lost }: Gone): Gone => ({
  spilled: copyOf(spilled),
  lost: copyOf(lost),
});

function putInto(into: Book, { days, sum, oldest }: Book): void {
  days.forEach((slots, tank) => {
    into.days[tank]?.set(slots);
  });
  into.sum.set(sum);
  into.oldest.set(oldest);
}

/** Makes litres those of another account of the same tanks. */
export function putGone(into: Gone, { spilled, lost }: Gone): void {
  putInto(into.spilled, spilled);
  putInto(into.lost, lost);
}

/**
 * Writes a day's amount down, every day; that of a year ago drops out.
 *
 * @param book of what spilled to the ground, or of what leaked or dried away
 * @param day counted as by the run, from the day it began [day]
 * @param amount of the day [m3]
 */
export function noteGone({ days, sum }: Book, tank: number, day: number, amount: number): void {
  const slots = days[tank] as Float64Array;
  const slot = day % COMMON_YEAR;
  const before = slots[slot] as number;
  if (before === 0 && amount === 0) return;
  slots[slot] = amount;
  sum[tank] = Math.max(0, (sum[tank] as number) - before + amount);
}

/** How a shortfall of water is told [m3]. */
export type Told = { readonly storage: number; readonly loss: number; readonly rain: number };

/**
 * Tanks whose water would have come, in any way, places in the book of what spilled that had it, and whether any rain is to
 * come to them off a roof.
 */
export type Behind = {
  readonly tanks: readonly number[];
  readonly spills: readonly number[];
  readonly roofed: boolean;
};

/**
 * How a shortfall would be told, with nothing answering for it yet.
 * Storage as far as those tanks spilled in the year before, loss as far as they lost, else rain.
 *
 * @param behind what would have brought the water
 * @param short the shortfall [m3]
 * @returns its parts [m3]
 */
export function toldOf(gone: Gone, { tanks, spills }: Behind, short: number): Told {
  const storage = Math.min(short, leftIn(gone.spilled, spills));
  const loss = Math.min(short - storage, leftIn(gone.lost, tanks));
  return { storage, loss, rain: short - storage - loss };
}

/**
 * The same, and the litres have answered.
 *
 * @param behind what would have brought the water
 * @param short the shortfall [m3]
 * @param day of the record [day]
 * @returns its parts [m3]
 * @source toldOf
 */
export function answeredBy(gone: Gone, behind: Behind, short: number, day: number): Told {
  const told = toldOf(gone, behind, short);
  if (told.storage > 0) take(gone.spilled, behind.spills, told.storage, day);
  if (told.loss > 0) take(gone.lost, behind.tanks, told.loss, day);
  return told;
}

/** What no rain came for: where no roof is to bring any, more of it would change nothing. */
export const rainPlace = ({ roofed }: Pick<Behind, "roofed">): number => (roofed ? RAIN : UNROOFED);

/** The largest part, by its place in BOUNDS; of equal ones the first. */
export function mostOf({ storage, loss, rain }: Told, behind: Pick<Behind, "roofed">): number {
  if (storage > 0 && storage >= loss && storage >= rain) return STORAGE;
  return loss > 0 && loss >= rain ? LOSS : rainPlace(behind);
}

function leftIn({ sum }: Book, tanks: readonly number[]): number {
  let left = 0;
  for (let i = 0; i < tanks.length; i++) left += sum[tanks[i] as number] as number;
  return left;
}

/** Takes an amount from the oldest litres of the first tank, then of the next. */
function take(book: Book, tanks: readonly number[], amount: number, today: number): void {
  let left = amount;
  for (let i = 0; i < tanks.length && left > 0; i++) left -= takeFrom(book, tanks[i] as number, left, today);
}

function takeFrom({ days, sum, oldest }: Book, tank: number, amount: number, today: number): number {
  const slots = days[tank] as Float64Array;
  let taken = 0;
  let day = Math.max(oldest[tank] as number, today - COMMON_YEAR + 1, 0);
  for (; day <= today && taken < amount; day++) {
    const held = slots[day % COMMON_YEAR] as number;
    const part = Math.min(held, amount - taken);
    slots[day % COMMON_YEAR] = held - part;
    taken += part;
    if (held > part) break;
  }
  oldest[tank] = day;
  sum[tank] = Math.max(0, (sum[tank] as number) - taken);
  return taken;
}
