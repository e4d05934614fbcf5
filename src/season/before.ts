// What days that are over left behind for a run that goes on from them: where the sky, the roofs and the counters stood.

import type { FlushLeft } from "./roof-catch.ts";
import type { DrySpell } from "./schedule.ts";

export type Before = {
  /** Place in the record of the first day that is run; those before it only tell of the use of late [day]. */
  readonly day: number;
  /** Day from which draws and carried charges are counted [days since 1970-01-01]. */
  readonly origin: number;
  /** Snow that lies [m of water]. */
  readonly snow: number;
  /** By roof, what an event has still to flush [m]; and by bed that may be let go how dry it has been. */
  readonly flushLeft: Readonly<Record<string, number>>;
  readonly dry: Readonly<Record<string, DrySpell>>;
};

/** What is left to flush of a roof, where that is known. */
export function flushBefore(before: Before | null | undefined, roof: string): FlushLeft | undefined {
  const left = before?.flushLeft[roof];
  return before && left !== undefined ? { day: before.day, left } : undefined;
}

/** How dry it has been for a bed, where that is known. */
export function dryBefore(
  before: Before | null | undefined,
  bed: string,
): { readonly dryOn?: { readonly day: number; readonly spell: DrySpell } } {
  const spell = before?.dry[bed];
  return before && spell ? { dryOn: { day: before.day, spell } } : {};
}
