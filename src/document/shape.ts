// The shape of a version-1 worksheet. What it does not know about an object it keeps, so that nothing is lost on saving.

import * as z from "zod/mini";
import { LIMITS } from "./limits.ts";

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

export const entryShape = z.looseObject({
  value: z.union([scalar, list]),
  unit: z._default(z.string().check(z.maxLength(LIMITS.unit)), ""),
  spread: z.exactOptional(z.number().check(z.minimum(0))),
  from: z.exactOptional(z.enum(["default", "guessed", "borrowed", "label", "measured"])),
});

const entries = z.record(z.string(), entryShape);

export const cardShape = z.looseObject({
  id: z._default(id, ""),
  kind: z._default(id, ""),
  title: z._default(title, ""),
  givens: z._default(entries, {}),
  measured: z._default(entries, {}),
  options: z.exactOptional(z.record(title, entries)),
  active: z.exactOptional(z.union([title, z.null()])),
  price: z.exactOptional(entryShape),
  life: z.exactOptional(entryShape),
});

/** Everything but the cards, which are checked one by one. */
export const sheetShape = z.looseObject({
  version: z.int().check(z.minimum(1)),
  title: z._default(title, ""),
  units: z._default(z.enum(["us", "imperial", "metric"]), "metric"),
  locale: z._default(title.check(z.regex(/^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$/)), "en-US"),
  currency: z._default(z.string().check(z.maxLength(LIMITS.unit)), "$"),
  datum: z._default(title, ""),
  made_by: z._default(title, ""),
  made_on: z._default(z.string().check(z.regex(/^(\d{4}-\d{2}-\d{2})?$/)), ""),
});

const worksheetShape = z.extend(sheetShape, { cards: z.array(cardShape).check(z.maxLength(LIMITS.cards)) });

/** JSON Schema of a stored worksheet, for whoever writes one by hand or reads one elsewhere. */
export function worksheetJsonSchema(): unknown {
  return {
    title: "Eavesdrip worksheet, version 1",
    description:
      "Numbers as the user typed them, each with its unit. Whatever the schema does not know is kept when saving.",
    ...z.toJSONSchema(worksheetShape, { io: "input" }),
  };
}
