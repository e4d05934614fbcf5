// What buckets timed at a pump's hoses teach of the pump: at the open end its speed, through a wand only what no wand explains.

import { DomainError } from "../../physics/domain-error.ts";
import type { GravityLine } from "../../physics/gravity-line.ts";
import type { Pump } from "../../physics/pump-curve.ts";
import { pumpAtShare, pumpRun, type Supply, speedShareFromFlow } from "../../physics/pump-run.ts";

/** A bucket as it was timed at one hose. */
export type BucketTest = {
  /** At the open end, and through the wand or rose; null where not timed [m3/s]. */
  readonly open: number | null;
  readonly wand: number | null;
  /** The hose with its wand and rose as given, and without. */
  readonly whole: GravityLine;
  readonly bare: GravityLine;
  readonly lift: number;
  readonly supply: Supply;
};

/** What a test shows of the pump: its speed over that of its figures; null where the wand explains what was seen [-]. */
export function shareByTest(pump: Pump, test: BucketTest): number | null {
  const { open, wand, whole, bare, lift, supply } = test;
  if (open !== null) return speedShareFromFlow({ pump, line: bare, lift }, supply, open);
  if (wand === null || wand <= pumpRun({ pump, line: bare, lift }, supply).flow) return null;
  return speedShareFromFlow({ pump, line: whole, lift }, supply, wand);
}

/** The mean of all tests of a pump, and how far they lie apart, greatest over least; null where none teaches of it. */
export function shareByTests(
  pump: Pump,
  tests: readonly BucketTest[],
): { readonly share: number; readonly apart: number } | null {
  const shares = tests.flatMap((test) => shareByTest(pump, test) ?? []);
  if (shares.length === 0) return null;
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  return { share: mean, apart: Math.max(...shares) / Math.min(...shares) };
}

/** Said of a bucket that no such pump can fill as it was timed. */
export const TELLS_NOTHING =
  "No pump of its figures gives what its bucket shows: so little would run downhill with the pump still, or so much no such pump gives. Look at bucket, clock, hose and heights again.";

/** What tests teach, or "nothing" where one shows what no such pump can. */
export function unlessNothing<Taught>(learn: () => Taught): Taught | "nothing" {
  try {
    return learn();
  } catch (error) {
    if (error instanceof DomainError) return "nothing";
    throw error;
  }
}

/** The pump as its tests show it. */
export function taughtPump(pump: Pump, share: number | null): Pump {
  return share === null ? pump : pumpAtShare(pump, share);
}
