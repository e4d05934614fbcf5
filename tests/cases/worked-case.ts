// Worked examples: their shape, how they are read, and how one is run.

import { toSi } from "../../src/units/unit.ts";

/** A number with its unit, or several with one unit. */
export type Measured = readonly [number | readonly number[], string];

export type Given = number | string | boolean | null | Measured | readonly Given[] | { readonly [name: string]: Given };

/** How far from here a case's numbers come: only the first two are from outside. The test report counts them by these words. */
export const STATUSES = [
  "read",
  "read second-hand",
  "from memory",
  "computed by a general reference library",
  "our own arithmetic",
] as const;

export type WorkedCase = {
  readonly id: string;
  readonly source: string;
  readonly locator: string;
  readonly status: (typeof STATUSES)[number];
  /** Name of an adaptor in tests/cases/functions. */
  readonly of: string;
  readonly given: { readonly [name: string]: Given };
  readonly expect: { readonly [name: string]: readonly [number, string] };
  /** Both together are the room around the expected value: rounding in print, and how far the relations may differ. */
  readonly tolerance: {
    readonly relative?: number;
    readonly absolute?: readonly [number, string];
    readonly why: string;
  };
  /** The printed value is wrong by its own formula: why. `expect` then holds the recomputed value. */
  readonly slip?: string;
  readonly printed?: { readonly [name: string]: readonly [number, string] };
};

// biome-ignore lint/suspicious/noExplicitAny: an adaptor takes whatever its own case files give it.
export type Adaptor = (given: Record<string, any>) => Record<string, number>;

/** Which expected quantities a result misses, in words; empty when all are met. */
export function missesOf(worked: WorkedCase, result: Record<string, number>, expected = worked.expect): string[] {
  return Object.entries(expected).flatMap(([name, [value, unit]]) => {
    const wanted = toSi(value, unit);
    const got = result[name];
    if (got === undefined) return [`${name}: the adaptor gives no such result`];
    const room = roomAround(worked, wanted);
    if (Math.abs(got - wanted) <= room) return [];
    return [`${name}: ${got} is not within ${room} of ${wanted} (${value} ${unit})`];
  });
}

function roomAround({ tolerance }: WorkedCase, wanted: number): number {
  const relative = (tolerance.relative ?? 0) * Math.abs(wanted);
  const absolute = tolerance.absolute ? toSi(...tolerance.absolute) : 0;
  return relative + absolute;
}

/** Givens with every measured number in SI. */
export function inSi(given: WorkedCase["given"]): Record<string, unknown> {
  return Object.fromEntries(Object.entries(given).map(([name, value]) => [name, siOf(value)]));
}

function siOf(value: Given): unknown {
  if (isMeasured(value)) {
    const [amount, unit] = value;
    return typeof amount === "number" ? toSi(amount, unit) : amount.map((one) => toSi(one, unit));
  }
  if (Array.isArray(value)) return value.map(siOf);
  if (typeof value === "object" && value !== null) return inSi(value as WorkedCase["given"]);
  return value;
}

function isMeasured(value: Given): value is Measured {
  if (!Array.isArray(value) || value.length !== 2 || typeof value[1] !== "string") return false;
  const amount: unknown = value[0];
  return typeof amount === "number" || (Array.isArray(amount) && amount.every((one) => typeof one === "number"));
}
