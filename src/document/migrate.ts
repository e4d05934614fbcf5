// From the version a worksheet was written in to the present one, a step at a time. A released step is never edited.

import { isPlainObject, type Plain, type PlainObject, type ReadProblem } from "./plain.ts";
import { toVersion2 } from "./to-version-2.ts";
import { toVersion3 } from "./to-version-3.ts";
import { toVersion4 } from "./to-version-4.ts";
import { CURRENT_VERSION } from "./worksheet.ts";

export type Migration = {
  /** Version it reads; it writes the next one. */
  readonly from: number;
  /** What changed, one sentence. */
  readonly change: string;
  /** The same worksheet in the next version, without its version number; the given one is a copy and may be altered. */
  readonly apply: (worksheet: PlainObject) => PlainObject;
};

export const MIGRATIONS: readonly Migration[] = [
  {
    from: 1,
    change: "how far a number is in doubt is kept as its two ends, and other numbers of a part as plans.",
    apply: toVersion2,
  },
  {
    from: 2,
    change: "levels and soaks of a day are kept as notes of that day.",
    apply: toVersion3,
  },
  {
    from: 3,
    change: "what money is counted in is said once, for the whole worksheet.",
    apply: toVersion4,
  },
];

export type Migrated =
  | {
      readonly ok: true;
      readonly worksheet: PlainObject;
      readonly newer: boolean;
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problem: ReadProblem };

function versionOf(worksheet: PlainObject): number | null {
  const version = worksheet.version;
  return typeof version === "number" && Number.isInteger(version) && version >= 1 ? version : null;
}

/**
 * Brings a worksheet to the present version; one of a newer version is left as it is and marked.
 *
 * @param data plain data that should be a worksheet
 * @param migrations steps, each raising the version by one
 * @param current version to arrive at
 * @returns the worksheet, whether it is newer than we know, and a note for each step taken
 */
export function migrate(
  data: Plain,
  migrations: readonly Migration[] = MIGRATIONS,
  current: number = CURRENT_VERSION,
): Migrated {
  if (!isPlainObject(data)) return { ok: false, problem: { path: "", message: "This is not a worksheet." } };
  const version = versionOf(data);
  if (version === null) {
    const message = "A worksheet says its version, a whole number from 1; this one does not.";
    return { ok: false, problem: { path: "version", message } };
  }
  const notes: string[] = [];
  let worksheet = data;
  for (let at = version; at < current; at += 1) {
    const step = migrations.find((migration) => migration.from === at);
    if (!step) {
      const message = `There is no way from version ${at} to version ${at + 1}.`;
      return { ok: false, problem: { path: "version", message } };
    }
    worksheet = { ...step.apply(worksheet), version: at + 1 };
    notes.push(`Brought from version ${at} to ${at + 1}: ${step.change}`);
  }
  return { ok: true, worksheet, newer: version > current, notes };
}
