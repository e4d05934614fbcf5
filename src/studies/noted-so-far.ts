// What the notes of a season add up to, part by part, with the days on which anything was noted.

import { inForce } from "../document/note-order.ts";
import { amountOf } from "../document/telling-notes.ts";
import type { Note } from "../document/worksheet.ts";
import type { NotedSoFar, NotedSum } from "../telling/this-year.ts";
import { parseIsoDate } from "../units/calendar.ts";

const daysOf = (notes: readonly Note[]): number => new Set(notes.map(({ day }) => day)).size;

function byPart(notes: readonly Note[]): ReadonlyMap<string, readonly Note[]> {
  const parts = new Map<string, Note[]>();
  for (const note of notes) parts.set(note.where, [...(parts.get(note.where) ?? []), note]);
  return new Map([...parts].sort(([a], [b]) => (a < b ? -1 : 1)));
}

const summed = (notes: readonly Note[], amount: (all: readonly number[]) => number): readonly NotedSum[] =>
  [...byPart(notes)].map(([id, own]) => ({
    id,
    amount: amount(own.map((note) => amountOf(note) ?? 0)),
    days: daysOf(own),
  }));

const counted = (notes: readonly Note[]) =>
  [...byPart(notes)].map(([id, own]) => ({ id, days: daysOf(own) }));

const total = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0);

/** Of a soak beside which a watering of that bed and day stands, that says how much: it is no watering more. */
function withoutToldSoaks(notes: readonly Note[]): readonly Note[] {
  const key = ({ where, day }: Note) => `${where} ${day}`;
  const told = new Set(notes.filter(({ what }) => what === "gave").map(key));
  return notes.filter((note) => note.what === "gave" || !told.has(key(note)));
}

/**
 * @param notes those that count: a dip of more than its tank holds is none of them
 * @param span first and last day that count [days since 1970-01-01]
 * @returns sums over the notes in force
 */
export function notedSoFar(
  notes: readonly Note[],
  span: { readonly first: number; readonly last: number },
): NotedSoFar {
  const own = inForce(notes).filter(({ day }) => {
    const date = parseIsoDate(day);
    return date !== null && date >= span.first && date <= span.last;
  });
  const of = (what: string) => own.filter((note) => note.what === what);
  const watered = withoutToldSoaks([...of("gave"), ...of("soaked")]);
  return {
    days: daysOf(own),
    given: summed(
      watered.filter(({ value }) => value !== undefined),
      total,
    ),
    unmeasured: counted(watered.filter(({ value }) => value === undefined)),
    dry: counted(of("dug").filter(({ text }) => text === "dry")),
    dips: summed(of("dipped"), (all) => Math.min(...all)),
    rain: summed(of("rain"), total)[0] ?? null,
  };
}
