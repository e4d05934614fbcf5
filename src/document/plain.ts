// A clean copy of whatever came from outside: plain objects, lists, texts, finite numbers, and nothing else.
// Everything read later works on the copy, so neither odd prototypes nor a sender's later changes reach it.

import { LIMITS } from "./limits.ts";

export type Plain = null | boolean | number | string | PlainList | PlainObject;
export type PlainList = Plain[];
export type PlainObject = { [key: string]: Plain };

export type ReadProblem = { readonly path: string; readonly message: string };

/** Names that would reach into the objects themselves. */
export const FORBIDDEN_NAMES: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);

/** Raised inside this folder only, and turned into a ReadProblem where reading began. */
class Refused extends Error {
  readonly path: string;
  constructor(path: string, message: string) {
    super(message);
    this.path = path;
  }
}

type Budget = { values: number };

/** Path of a member, as it is written in the text: `cards[2].givens.capacity`. */
export function pathOf(keys: readonly PropertyKey[]): string {
  return keys.reduce<string>((path, key) => join(path, key), "");
}

function join(path: string, key: PropertyKey): string {
  if (typeof key === "number") return `${path}[${key}]`;
  return path === "" ? String(key) : `${path}.${String(key)}`;
}

export function isPlainObject(value: Plain | undefined): value is PlainObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function copyNumber(value: number, path: string): number {
  if (!Number.isFinite(value)) throw new Refused(path, "This is not a number that can be worked with.");
  // JSON text has no minus nought; without it here, too, what is saved reads back the very same.
  return value + 0;
}

function copyText(value: string, path: string): string {
  if (value.length > LIMITS.text)
    throw new Refused(path, `This text is longer than ${LIMITS.text} characters.`);
  return value;
}

function copyList(value: readonly unknown[], path: string, depth: number, budget: Budget): PlainList {
  const most = path === "notes" ? LIMITS.notes : LIMITS.list;
  if (value.length > most) throw new Refused(path, `This list has more than ${most} parts.`);
  return Array.from(value, (part, index) => copy(part, join(path, index), depth + 1, budget));
}

function copyObject(value: object, path: string, depth: number, budget: Budget): PlainObject {
  const prototype: unknown = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) throw new Refused(path, "This is no plain data.");
  const names = Object.keys(value);
  if (names.length > LIMITS.keys) throw new Refused(path, `This has more than ${LIMITS.keys} parts.`);
  const clean: PlainObject = {};
  for (const name of names) {
    const at = join(path, name.slice(0, LIMITS.id));
    if (FORBIDDEN_NAMES.has(name)) throw new Refused(at, `The name "${name}" is not allowed.`);
    if (name.length > LIMITS.title) throw new Refused(at, "This name is too long.");
    const member = (value as Record<string, unknown>)[name];
    if (member !== undefined) clean[name] = copy(member, at, depth + 1, budget);
  }
  return clean;
}

function copy(value: unknown, path: string, depth: number, budget: Budget): Plain {
  budget.values -= 1;
  if (budget.values < 0) throw new Refused(path, `There are more than ${LIMITS.values} values.`);
  if (depth > LIMITS.depth) throw new Refused(path, "This is nested too deeply.");
  if (value === null || typeof value === "boolean") return value;
  if (typeof value === "number") return copyNumber(value, path);
  if (typeof value === "string") return copyText(value, path);
  if (Array.isArray(value)) return copyList(value, path, depth, budget);
  if (typeof value === "object") return copyObject(value, path, depth, budget);
  throw new Refused(path, "This is neither a number, a text, a list nor a group of named values.");
}

/**
 * A clean copy of data from outside, or the first place that cannot be accepted.
 *
 * @param data anything
 * @returns the copy, or the place and the reason
 */
export function plainCopy(
  data: unknown,
): { readonly ok: true; readonly value: Plain } | { readonly ok: false; readonly problem: ReadProblem } {
  try {
    return { ok: true, value: copy(data, "", 0, { values: LIMITS.values }) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problem: { path: error.path, message: error.message } };
    // A getter or a proxy of the sender's may throw anything at all; that is data we cannot read, not our fault.
    return { ok: false, problem: { path: "", message: "This is no plain data." } };
  }
}
