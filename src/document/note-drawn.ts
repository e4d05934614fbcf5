// How much can have come out of a tank since it was dipped the same day: what a watering that says more is asked about.

import { AS_READ, dipCounts, saysSo } from "../happened/dip.ts";
import { MINUTE } from "../units/constants.ts";
import { inForce } from "./note-order.ts";
import { amountOf } from "./telling-notes.ts";
import type { Note, Worksheet } from "./worksheet.ts";

/** Steps of half an inch: a dip is read no nearer, where nothing else is said [m]. */
const READ_TO = 0.0127;

type Vessel = { readonly height: number; readonly volume: number };

/** What is known of a tank. */
export type TankKnown = {
  readonly vessel: Vessel;
  /** Water in it at a depth [m3]. */
  readonly held: (depth: number) => number;
  /** What its lines bring, floats open [m3/s]. */
  readonly inflow: number;
  /** How far off a dip may be [m]; null: not known. */
  readonly doubt: number | null;
};

export type Drawn = {
  /** The dip, what the tank held by it, what would be left of that, and what can have come out at most, were it misread [m], [m3]. */
  readonly depth: number;
  readonly held: number;
  readonly left: number;
  readonly most: number;
};

type Of = {
  readonly worksheet: Worksheet;
  /** Tanks that the water of a note came out of. */
  readonly tanksOf: (note: Omit<Note, "id">) => readonly string[];
  /** A note that the new one stands in for. */
  readonly instead?: string | undefined;
};

/** What was noted of a day before a note, up to its minute. */
function before(
  { worksheet, instead }: Of,
  note: Omit<Note, "id"> & { readonly id?: string },
  minute: number,
) {
  const all = inForce(worksheet.notes ?? []).filter(({ day, id }) => day === note.day && id !== instead);
  const own = all.findIndex(({ id }) => id === note.id);
  return (own < 0 ? all : all.slice(0, own)).filter((one) => (one.minute ?? Infinity) <= minute);
}

/**
 * What can have come out of a tank by a minute of the day on which it was dipped.
 *
 * @param minute of the day at which a note says that water came out
 * @returns null where it was not dipped that day before that
 */
export function drawnSinceDip(
  of: Of,
  tank: string,
  known: TankKnown,
  note: Note | Omit<Note, "id">,
  minute: number,
): Drawn | null {
  const told = before(of, note, minute);
  const at = told.findLastIndex(({ what, where }) => what === "dipped" && where === tank);
  const dip = told[at];
  const depth = dip ? amountOf(dip) : null;
  if (!dip || depth === null || !dipCounts(depth, known.vessel.height, saysSo(dip.text, AS_READ)))
    return null;
  const since = told.slice(at + 1);
  const sum = (those: readonly Note[]) => those.reduce((all, one) => all + (amountOf(one) ?? 0), 0);
  const filled = sum(since.filter(({ what, where }) => what === "filled" && where === tank));
  const taken = sum(
    since.filter((one) => (one.what === "gave" || one.what === "took") && of.tanksOf(one).includes(tank)),
  );
  const came = known.inflow * (minute - (dip.minute ?? minute)) * MINUTE;
  const { height, volume } = known.vessel;
  const held = known.held(Math.min(height, depth));
  const leftOf = (water: number) => Math.max(0, Math.min(volume, water + filled + came) - taken);
  const most = leftOf(known.held(Math.min(height, depth + 2 * (known.doubt ?? READ_TO))));
  return { depth, held, left: leftOf(held), most };
}
