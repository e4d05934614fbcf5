// The shape of a version-3 worksheet. What it does not know about an object it keeps, so that nothing is lost on saving.

import * as z from "zod/mini";
import { ORIGINS, spanProblem } from "./entry-fits.ts";
import { LIMITS } from "./limits.ts";
import { NOTE_KINDS, type NoteKind, noteProblem } from "./note-kinds.ts";
import { FORBIDDEN_NAMES } from "./plain.ts";

// The checker would otherwise probe for compiling code at run time, which the page's policy forbids and reports.
z.config({ jitless: true });

const text = z.string().check(z.maxLength(LIMITS.text));
const title = z.string().check(z.maxLength(LIMITS.title));
const id = z.string().check(z.maxLength(LIMITS.id));
const point = z.array(z.number()).check(z.maxLength(LIMITS.point));
const content = z.looseObject({
  crop: title,
  planted: title,
  share: z.number(),
  until: z.exactOptional(title),
  trained: z.exactOptional(z.boolean()),
});
const scalar = z.union([z.number(), text, z.null()]);
const list = z.array(z.union([z.number(), text, z.null(), point, content])).check(z.maxLength(LIMITS.list));

export const entryShape = z
  .looseObject({
    value: z.union([scalar, list]),
    unit: z._default(z.string().check(z.maxLength(LIMITS.unit)), ""),
    low: z.exactOptional(z.number()),
    high: z.exactOptional(z.number()),
    from: z.exactOptional(z.enum(ORIGINS)),
  })
  .check(({ value, issues }) => {
    const message = spanProblem(value);
    if (message !== null) issues.push({ code: "custom", message, input: value });
  });

const entries = z.record(z.string(), entryShape);

export const cardShape = z.looseObject({
  id: z._default(id, ""),
  kind: z._default(id, ""),
  title: z._default(title, ""),
  givens: z._default(entries, {}),
  measured: z._default(entries, {}),
  price: z.exactOptional(entryShape),
  life: z.exactOptional(entryShape),
  offers: z.exactOptional(entries),
});

const allowed = z.refine<string>((name) => !FORBIDDEN_NAMES.has(name), {
  error: "This name is not allowed.",
});
const allowedId = id.check(allowed);

const changeShape = z.looseObject({
  card: allowedId,
  part: z.enum(["givens", "measured", "price", "life", "title"]),
  row: z._default(title.check(allowed), ""),
  entry: z.union([entryShape, z.null()]),
});

const addedShape = z.extend(cardShape, { id: allowedId, kind: allowedId, after: z.exactOptional(id) });

export const planShape = z.looseObject({
  name: title.check(z.minLength(1)),
  changes: z._default(z.array(changeShape).check(z.maxLength(LIMITS.list)), []),
  added: z._default(z.array(addedShape).check(z.maxLength(LIMITS.cards)), []),
  removed: z._default(z.array(id).check(z.maxLength(LIMITS.cards)), []),
});

const noteFields = z.looseObject({
  id: z.string().check(z.regex(/^[0-9a-f]{32}$/)),
  day: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/)),
  minute: z.exactOptional(z.int().check(z.minimum(0), z.maximum(1439))),
  what: id.check(z.minLength(1)),
  where: allowedId,
  value: z.exactOptional(z.number()),
  unit: z.exactOptional(z.string().check(z.maxLength(LIMITS.unit))),
  with: z.exactOptional(
    z.looseObject({ value: z.number(), unit: z.string().check(z.maxLength(LIMITS.unit)) }),
  ),
  by: z.exactOptional(id),
  text: z.exactOptional(text),
  undoes: z.exactOptional(z.string().check(z.maxLength(LIMITS.id))),
});

export const noteShape = noteFields.check(({ value, issues }) => {
  const problem = noteProblem(value);
  if (problem) issues.push({ code: "custom", message: problem.message, path: [...problem.at], input: value });
});

/** Everything but the cards, plans and notes, which are checked one by one. */
export const sheetShape = z.looseObject({
  version: z.int().check(z.minimum(1)),
  id: z.exactOptional(id),
  title: z._default(title, ""),
  units: z._default(z.enum(["us", "imperial", "metric"]), "metric"),
  locale: z._default(title.check(z.regex(/^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$/)), "en-US"),
  currency: z._default(z.string().check(z.maxLength(LIMITS.unit)), "$"),
  datum: z._default(title, ""),
  made_by: z._default(title, ""),
  made_on: z._default(z.string().check(z.regex(/^(\d{4}-\d{2}-\d{2})?$/)), ""),
});

const worksheetShape = z.extend(sheetShape, {
  cards: z.array(cardShape).check(z.maxLength(LIMITS.cards)),
  plans: z.exactOptional(z.array(planShape).check(z.maxLength(LIMITS.plans))),
  notes: z.exactOptional(z.array(noteShape).check(z.maxLength(LIMITS.notes))),
});

/** What each known word of a note wants, as a schema says it. */
function wants(what: string, { value, with: second, words }: NoteKind): unknown {
  const amount = ["value", "unit"];
  const must = [...(value ? amount : []), ...(second ? ["with"] : []), ...(words && !value ? ["text"] : [])];
  return {
    if: { properties: { what: { const: what } } },
    // biome-ignore lint/suspicious/noThenProperty: a schema's own word
    then: { required: must, ...(words && !value ? { properties: { text: { enum: words } } } : {}) },
  };
}

function notesToJson(notes: unknown): unknown {
  const { items, ...list } = notes as { readonly items: object };
  const known = Object.entries<NoteKind>(NOTE_KINDS).filter(([, { value, words }]) => value || words);
  return { ...list, items: { ...items, allOf: known.map(([what, kind]) => wants(what, kind)) } };
}

/** JSON Schema of a stored worksheet, for whoever writes one by hand or reads one elsewhere. */
export function worksheetJsonSchema(): unknown {
  const { properties, ...schema } = z.toJSONSchema(worksheetShape, { io: "input" });
  return {
    title: "Eavesdrip worksheet, version 4",
    description:
      "Numbers as the user typed them, each with its unit. Whatever the schema does not know is kept when saving.",
    ...schema,
    properties: { ...properties, notes: notesToJson(properties?.notes) },
  };
}
