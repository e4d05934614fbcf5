// Whatever claims to be a worksheet, read: a deeply frozen worksheet, or the places that are wrong. Never a throw.
// Wrong ids, unknown kinds and dead links pass: the graph reports them where they stand, with the rest still answered.

import type * as z from "zod/mini";
import { frozen } from "./freeze.ts";
import { lenientCard, lenientPlan, lenientSheet } from "./lenient.ts";
import { LIMITS } from "./limits.ts";
import { migrate } from "./migrate.ts";
import { noteKind } from "./note-kinds.ts";
import { united } from "./notes.ts";
import {
  FORBIDDEN_NAMES,
  isPlainObject,
  type Plain,
  type PlainObject,
  pathOf,
  plainCopy,
  type ReadProblem,
} from "./plain.ts";
import { freePlanName } from "./plan-names.ts";
import { cardShape, noteShape, planShape, sheetShape } from "./shape.ts";
import { placeInText } from "./text-place.ts";
import { type Card, CURRENT_VERSION, type Note, type Plan, type Worksheet } from "./worksheet.ts";

export type WorksheetReading =
  | {
      readonly ok: true;
      readonly worksheet: Worksheet;
      /** Written by a newer version: shown whole, not to be edited or saved over. */
      readonly readOnly: boolean;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly ReadProblem[] };

/** Cards and plans whose inside could not be read at all are kept under this key of the worksheet, and go back out on saving. */
export const SET_ASIDE = "set_aside";

type Issue = z.core.$ZodIssue;

const EXPECTED: Readonly<Record<string, string>> = {
  string: "a text",
  number: "a number",
  int: "a whole number",
  array: "a list",
  object: "a group of named values",
  record: "a group of named values",
  null: "nothing",
};

function issueText(issue: Issue): string {
  switch (issue.code) {
    case "invalid_type":
      return `Here should be ${EXPECTED[issue.expected] ?? issue.expected}.`;
    case "too_big":
      return `This is too long: at most ${issue.maximum}.`;
    case "too_small":
      return `This is too small: at least ${issue.minimum}.`;
    case "invalid_value":
      return `Here should be one of: ${issue.values.map(String).join(", ")}.`;
    case "invalid_format":
      return "This text is not written as it should be.";
    case "custom":
      return issue.message;
    case "invalid_union":
      return "Here should be a number, a text, or a list of them.";
    default:
      return "This cannot be read.";
  }
}

function problemsOf(issues: readonly Issue[], under: readonly PropertyKey[]): ReadProblem[] {
  return issues.map((issue) => ({ path: pathOf([...under, ...issue.path]), message: issueText(issue) }));
}

type ListKey = "cards" | "plans" | "notes";

type ReadList<T> = { readonly read: T[]; readonly aside: Plain[]; readonly notes: string[] };

function nameOf(part: Plain): string {
  const name = isPlainObject(part) ? (part.title ?? part.name ?? part.id) : null;
  return typeof name === "string" && name !== "" ? ` ("${name.slice(0, LIMITS.id)}")` : "";
}

type Checked<T> =
  | { readonly success: true; readonly data: T }
  | { readonly success: false; readonly error: { readonly issues: readonly Issue[] } };

/** Reads a list part by part: one that is wrong is set aside, its first wrong place told. */
function readList<T>(list: readonly Plain[], key: ListKey, check: (part: Plain) => Checked<T>): ReadList<T> {
  const all: ReadList<T> = { read: [], aside: [], notes: [] };
  const what = { cards: "Card", plans: "Plan", notes: "Note" }[key];
  list.forEach((given, index) => {
    const checked = check(given);
    if (checked.success) {
      all.read.push(checked.data);
      return;
    }
    const first = problemsOf(checked.error.issues, [key, index])[0];
    all.aside.push(given);
    all.notes.push(
      `${what} ${index + 1}${nameOf(given)} was set aside. ${first ? `${first.path}: ${first.message}` : ""}`.trim(),
    );
  });
  return all;
}

const titled = (card: Card): Card => (card.title === "" ? { ...card, title: card.id } : card);

function readCards(list: readonly Plain[]): ReadList<Card> {
  const all = readList<Card>(list, "cards", (card) => cardShape.safeParse(lenientCard(card)));
  return { ...all, read: all.read.map(titled) };
}

/** Plans go by their names: of two that have the same, the later gets a number. */
function readPlans(list: readonly Plain[]): ReadList<Plan> {
  const all = readList<Plan>(list, "plans", (plan) => planShape.safeParse(lenientPlan(plan)));
  const names: string[] = [];
  const read = all.read.map((plan) => {
    const name = freePlanName(names, plan.name);
    names.push(name);
    return { ...plan, name, added: plan.added.map(titled) };
  });
  return { ...all, read };
}

function listOf(worksheet: PlainObject, key: ListKey): readonly Plain[] | ReadProblem {
  const list = key === "cards" ? worksheet.cards : (worksheet[key] ?? []);
  if (!Array.isArray(list)) return { path: key, message: `A worksheet has a list of ${key}.` };
  if (list.length > LIMITS[key]) {
    return {
      path: key,
      message: `A worksheet holds at most ${LIMITS[key]} ${key}; this has ${list.length}.`,
    };
  }
  return list;
}

/** Ids and kinds become names of things looked up: one that reaches into the objects themselves is refused. */
function forbiddenName(list: readonly Plain[]): ReadProblem | null {
  for (const [index, card] of list.entries()) {
    if (!isPlainObject(card)) continue;
    for (const key of ["id", "kind"] as const) {
      const name = card[key];
      if (typeof name === "string" && FORBIDDEN_NAMES.has(name))
        return { path: pathOf(["cards", index, key]), message: `The name "${name}" is not allowed.` };
    }
  }
  return null;
}

/** Words of notes that nobody here knows, told once each. */
function unknownWords(notes: readonly Note[]): readonly string[] {
  const words = new Set(notes.filter(({ what }) => !noteKind(what)).map(({ what }) => what));
  return [...words].map((word) => `What "${word}" means in the notes is not known here. It is kept.`);
}

function assemble(worksheet: PlainObject, newer: boolean, earlier: readonly string[]): WorksheetReading {
  const list = listOf(worksheet, "cards");
  if ("path" in list) return { ok: false, problems: [list] };
  const planList = listOf(worksheet, "plans");
  if ("path" in planList) return { ok: false, problems: [planList] };
  const noteList = listOf(worksheet, "notes");
  if ("path" in noteList) return { ok: false, problems: [noteList] };
  const forbidden = forbiddenName(list);
  if (forbidden) return { ok: false, problems: [forbidden] };
  const { cards: _cards, plans: _plans, notes: _notes, ...rest } = worksheet;
  const sheet = sheetShape.safeParse(lenientSheet(rest));
  if (!sheet.success) return { ok: false, problems: problemsOf(sheet.error.issues, []) };
  const cards = readCards(list);
  const plans = readPlans(planList);
  const notes = readList<Note>(noteList, "notes", (note) => noteShape.safeParse(note));
  const before = worksheet[SET_ASIDE];
  const kept = [...(Array.isArray(before) ? before : []), ...cards.aside, ...plans.aside, ...notes.aside];
  const whole = {
    ...sheet.data,
    cards: cards.read,
    ...(plans.read.length > 0 ? { plans: plans.read } : {}),
    ...(notes.read.length > 0 ? { notes: united([], notes.read) } : {}),
    ...(kept.length > 0 ? { [SET_ASIDE]: kept } : {}),
  };
  const newerNotes = newer
    ? [
        `This worksheet was written by a newer version (${sheet.data.version}; this one knows ${CURRENT_VERSION}). ` +
          "It can be read here, not changed.",
      ]
    : [];
  return {
    ok: true,
    worksheet: frozen(whole),
    readOnly: newer,
    notes: [
      ...earlier,
      ...newerNotes,
      ...cards.notes,
      ...plans.notes,
      ...notes.notes,
      ...unknownWords(notes.read),
    ],
  };
}

/**
 * Reads data that should be a worksheet of this or an earlier or later version.
 *
 * @param data anything, from a file, a link, a save
 * @returns the worksheet, deeply frozen, with notes on what was put right; or every place that is wrong
 */
export function readWorksheet(data: unknown): WorksheetReading {
  const plain = plainCopy(data);
  if (!plain.ok) return { ok: false, problems: [plain.problem] };
  const migrated = migrate(plain.value);
  if (!migrated.ok) return { ok: false, problems: [migrated.problem] };
  return assemble(migrated.worksheet, migrated.newer, migrated.notes);
}

/** JSON text to data, or the line and column at which it stops being JSON. */
export function parseJson(
  text: string,
  longest: number = LIMITS.characters,
): { readonly ok: true; readonly data: unknown } | { readonly ok: false; readonly problem: ReadProblem } {
  if (text.length > longest) {
    return { ok: false, problem: { path: "", message: `This text is longer than ${longest} characters.` } };
  }
  // Editors on some systems begin a file with this invisible mark.
  const bare = text.startsWith("\uFEFF") ? text.slice(1) : text;
  try {
    return { ok: true, data: JSON.parse(bare) };
  } catch {
    const place = placeInText(bare);
    const path = `line ${place.line}, column ${place.column}`;
    return { ok: false, problem: { path, message: `This is no JSON: ${place.what}` } };
  }
}
