// A note that can hardly be right, asked about with its choices before it is written down, and told where it stands in a file.

import { AS_READ, dipCounts, isOver, sayingToo, saysSo } from "../happened/dip.ts";
import { isMuchRain, muchRainSaid } from "../happened/much-rain.ts";
import { calendarDate, dayInYear, parseIsoDate } from "../units/calendar.ts";
import { DAYS_A_YEAR } from "../units/constants.ts";
import { fromSi, toSi } from "../units/unit.ts";
import { drawnSinceDip } from "./note-drawn.ts";
import type { Show } from "./note-words.ts";
import { amountOf } from "./telling-notes.ts";
import type { Note, Worksheet } from "./worksheet.ts";

type Said = Omit<Note, "id">;

/** What may be noted instead; null: nothing. */
export type NoteChoice = {
  readonly label: string;
  readonly note: Said | null;
  /** What is noted then, where it is not what was said before. */
  readonly words?: string;
};

export type NoteQuestion = { readonly question: string; readonly choices: readonly NoteChoice[] };

export type NoteAsking = {
  readonly worksheet: Worksheet;
  /** What a quantity holds; null where it holds nothing now. */
  readonly value: (id: string) => unknown;
  readonly show: Show;
  /** `YYYY-MM-DD` */
  readonly today: string;
  /** Time of that day, for a note that says none [min]; null: not known. */
  readonly now: number | null;
  /** Water in a tank at a depth [m3]. */
  readonly held: (vessel: unknown, depth: number) => number;
};

/** How a note came about. */
export type Offered = {
  /** The sheet itself offers so much of it: nobody is asked whether a tank holds it. */
  readonly sure?: boolean | undefined;
  /** The note that it stands in for. */
  readonly instead?: string | undefined;
};

const LEAVE: NoteChoice = { label: "Leave it out", note: null };

const titleOf = ({ worksheet }: NoteAsking, id: string): string =>
  worksheet.cards.find((card) => card.id === id)?.title ?? id;

/** How deep and how much a tank is [m, m3]; null where that is not known. */
const vesselOf = ({ value }: NoteAsking, id: string) =>
  value(`${id}.vessel`) as { readonly height: number; readonly volume: number } | null;

function ofDay(asking: NoteAsking, note: Said): NoteQuestion | null {
  const [day, today] = [parseIsoDate(note.day), parseIsoDate(asking.today)];
  if (day === null || today === null || day <= today) return null;
  const { minute: _later, ...rest } = note;
  return {
    question: `${note.day} is still to come. When was it?`,
    choices: [{ label: "Today", note: { ...rest, day: asking.today } }, LEAVE],
  };
}

function ofDip(asking: NoteAsking, note: Said): NoteQuestion | null {
  const [vessel, depth] = [vesselOf(asking, note.where), amountOf(note)];
  if (!vessel || depth === null || dipCounts(depth, vessel.height, saysSo(note.text, AS_READ))) return null;
  const title = titleOf(asking, note.where);
  const { show } = asking;
  const full = show(vessel.height, "depth");
  return {
    question: `Full, the water in ${title} stands at ${full}; this says ${show(depth, "depth")}. Which is it?`,
    choices: [
      { label: `Full, ${full}`, note: { ...note, value: vessel.height, unit: "m" } },
      {
        label: "As I read it: the tank is deeper than it says",
        note: { ...note, text: sayingToo(note.text, AS_READ) },
      },
      LEAVE,
    ],
  };
}

/** Tanks that the water of a note went into or came out of. */
function tanksOf({ worksheet, value }: NoteAsking, { what, where, by }: Said): readonly string[] {
  if (what === "filled" || what === "took" || what === "timed") return [where];
  const waterers = by === undefined ? (value(`${where}.watered_by`) ?? []) : [by];
  const ids = (Array.isArray(waterers) ? waterers : [waterers]) as readonly string[];
  return ids.flatMap((id) => {
    const from = worksheet.cards.find((card) => card.id === id)?.givens["from"]?.value;
    return typeof from === "string" ? [from] : [];
  });
}

const OF_WATER: ReadonlySet<string> = new Set(["gave", "soaked", "filled", "took", "timed"]);

function ofVolume(asking: NoteAsking, note: Said): NoteQuestion | null {
  const volume = OF_WATER.has(note.what) ? amountOf(note) : null;
  if (volume === null) return null;
  const vessels = [...new Set(tanksOf(asking, note))].map((id) => ({ id, vessel: vesselOf(asking, id) }));
  const known = vessels.flatMap(({ id, vessel }) => (vessel ? [{ id, holds: vessel.volume }] : []));
  const holds = known.reduce((sum, one) => sum + one.holds, 0);
  if (known.length === 0 || known.length < vessels.length || !isOver(volume, holds)) return null;
  const { show } = asking;
  const names = known.map(({ id }) => titleOf(asking, id)).join(" and ");
  return {
    question: `${names} ${known.length === 1 ? "holds" : "hold"} ${show(holds, "volume")}; this says ${show(volume, "volume")}. Is that right?`,
    choices: [{ label: `Yes, ${show(volume, "volume")}`, note }, LEAVE],
  };
}

/** Figures of an amount as it is said. */
const AS_SAID = 2;

/** More water than a tank can have had in it since it was dipped that day. */
function ofDrawn(asking: NoteAsking, note: Said, { instead }: Offered): NoteQuestion | null {
  const volume = note.what === "gave" || note.what === "took" ? amountOf(note) : null;
  const [tank, ...others] = tanksOf(asking, note);
  const minute = note.minute ?? (note.day === asking.today ? asking.now : null);
  const vessel = tank === undefined ? null : vesselOf(asking, tank);
  if (volume === null || tank === undefined || others.length > 0 || minute === null || !vessel) return null;
  const { worksheet, value, show } = asking;
  const number = (id: string): number | null => {
    const held = value(id);
    return typeof held === "number" ? held : null;
  };
  const inflow = linesInto(asking, tank).reduce(
    (sum, { id }) => sum + Math.max(0, number(`${id}.flow`) ?? 0),
    0,
  );
  const known = {
    vessel,
    held: (depth: number) => asking.held(vessel, depth),
    inflow,
    doubt: number("season.dip_doubt"),
  };
  const of = { worksheet, instead, tanksOf: (one: Said) => tanksOf(asking, one) };
  const drawn = drawnSinceDip(of, tank, known, note, minute);
  if (!drawn || volume <= drawn.most) return null;
  const { unit = "" } = note;
  const left = Number(fromSi(drawn.left, unit).toPrecision(AS_SAID));
  const there = show(toSi(left, unit), "volume");
  return {
    question: `${titleOf(asking, tank)} was dipped at ${show(drawn.depth, "depth")}: ${show(drawn.held, "volume")}. How did ${show(volume, "volume")} come out of it?`,
    choices: [
      ...(left > 0
        ? [
            {
              label: `It was ${there}, what was in it`,
              note: { ...note, value: left },
              words: `${titleOf(asking, note.where)}, ${there}`,
            },
          ]
        : []),
      { label: "More came in meanwhile", note },
      LEAVE,
    ],
  };
}

/** Lines that end in a tank. */
const linesInto = ({ worksheet }: NoteAsking, tank: string) =>
  worksheet.cards.filter(({ kind, givens }) => kind === "line" && givens["to"]?.value === tank);

/** Of a refill through one of several lines which it was: of them all together it tells of none. */
function ofRefill(asking: NoteAsking, note: Said): NoteQuestion | null {
  if (note.what !== "timed" || note.by !== undefined) return null;
  const lines = linesInto(asking, note.where);
  if (lines.length < 2) return null;
  return {
    question: `${lines.length} lines fill ${titleOf(asking, note.where)}. Which one ran?`,
    choices: [
      ...lines.map(({ id, title }) => ({ label: title, note: { ...note, by: id } })),
      { label: "More than one: keep it, no line's flow is told by it", note },
      LEAVE,
    ],
  };
}

/** No battery holds more than all of its charge. */
function ofCharge(asking: NoteAsking, note: Said): NoteQuestion | null {
  const charge = note.what === "charged" || note.what === "swapped" ? amountOf(note) : null;
  if (charge === null || !isOver(charge, 1)) return null;
  const { show } = asking;
  return {
    question: `${titleOf(asking, note.where)} is full at ${show(1, "share")}; this says ${show(charge, "share")}. Which is it?`,
    choices: [{ label: `Full, ${show(1, "share")}`, note: { ...note, value: 1, unit: "1" } }, LEAVE],
  };
}

function ofRain({ show }: NoteAsking, note: Said): NoteQuestion | null {
  const depth = note.what === "rain" ? amountOf(note) : null;
  if (depth === null || !isMuchRain(depth)) return null;
  return {
    question: muchRainSaid(show(depth, "rain"), "in the gauge"),
    choices: [{ label: `Yes, ${show(depth, "rain")}`, note }, LEAVE],
  };
}

/** Days before a planting in which a soak is asked about, and after one in which something may still stand: our definition. */
const SOON = 90;
const STANDS = 200;

/** The planting of a bed that a soak comes shortly before, where nothing was planted in the months before it, as `MM-DD`. */
function plantedSoon({ value }: NoteAsking, bed: string, date: number): string | null {
  const contents = value(`${bed}.contents`);
  if (!Array.isArray(contents)) return null;
  const { year } = calendarDate(date);
  const waits = (contents as readonly { readonly planted?: unknown }[]).flatMap(({ planted }) => {
    const day = typeof planted === "string" ? dayInYear(planted, year) : null;
    // The year goes round: what is planted in October stands in January.
    return day === null
      ? []
      : [{ planted: planted as string, days: (day - date + DAYS_A_YEAR) % DAYS_A_YEAR }];
  });
  if (waits.some(({ days }) => days === 0 || days > DAYS_A_YEAR - STANDS)) return null;
  const [next] = waits.sort((a, b) => a.days - b.days);
  return next && next.days <= SOON ? next.planted : null;
}

function ofSoak(asking: NoteAsking, note: Said): NoteQuestion | null {
  const date = note.what === "soaked" ? parseIsoDate(note.day) : null;
  const planted = date === null ? null : plantedSoon(asking, note.where, date);
  if (planted === null) return null;
  return {
    question: `${titleOf(asking, note.where)} is planted on ${planted}; this soak was before. Is the day right?`,
    choices: [{ label: `Yes, on ${note.day}`, note }, LEAVE],
  };
}

/**
 * What is to be asked before a note is written down.
 *
 * @returns null where nothing speaks against it
 */
export function askOfNote(asking: NoteAsking, note: Said, offered: Offered = {}): NoteQuestion | null {
  return (
    ofDay(asking, note) ??
    (note.what === "dipped" ? ofDip(asking, note) : null) ??
    ofDrawn(asking, note, offered) ??
    (offered.sure ? null : ofVolume(asking, note)) ??
    ofRefill(asking, note) ??
    ofRain(asking, note) ??
    ofCharge(asking, note) ??
    ofSoak(asking, note)
  );
}

/** A dip of more than its tank holds, which is not counted until it is answered. */
export type UncountedDip = { readonly note: Note; readonly asked: NoteQuestion };

/** Dips that are not counted until their grower says how deep it was. */
export function uncountedDips(asking: NoteAsking, inForce: readonly Note[]): readonly UncountedDip[] {
  return inForce.flatMap((note) => {
    const asked = note.what === "dipped" ? ofDip(asking, note) : null;
    return asked ? [{ note, asked }] : [];
  });
}

/** The questions of all notes in force, each with its day and part, for where nobody can choose. */
export function questionsOf(asking: NoteAsking, inForce: readonly Note[]): readonly string[] {
  return inForce.flatMap((note) => {
    const asked = askOfNote(asking, note);
    if (!asked) return [];
    const isUncounted = note.what === "dipped" && ofDip(asking, note) !== null;
    const until = isUncounted ? ` It is not counted until it is said: noted as "${AS_READ}", it is.` : "";
    return [`Note of ${note.day}, ${titleOf(asking, note.where)}: ${asked.question}${until}`];
  });
}
