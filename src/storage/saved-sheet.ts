// One worksheet as the shelf keeps it, and how what was kept is read back: with care, as anything from outside.

import type { ReadProblem } from "../document/plain.ts";
import type { Worksheet } from "../document/worksheet.ts";
import type { Written } from "./journal.ts";

export type SavedSheet = {
  readonly id: string;
  /** Raised by one at every save; a save says from which one it started. */
  readonly revision: number;
  /** When it was saved [ms since 1970-01-01 UTC], as the caller said. */
  readonly savedAt: number;
  readonly worksheet: unknown;
  /** Who saved it last, where that was noted. */
  readonly by?: Written;
};

export type OpenedSheet = {
  readonly id: string;
  readonly revision: number;
  readonly savedAt: number;
  readonly worksheet: Worksheet;
  readonly readOnly: boolean;
  readonly notes: readonly string[];
};

function isSaved(data: unknown): data is SavedSheet {
  if (typeof data !== "object" || data === null) return false;
  const { id, revision, savedAt, worksheet } = data as Partial<SavedSheet>;
  const numbers = [revision, savedAt].every((value) => typeof value === "number" && Number.isFinite(value));
  return typeof id === "string" && numbers && worksheet !== undefined;
}

/** What was kept, or null where it has not even the outer form. */
export function savedSheet(data: unknown): SavedSheet | null {
  return isSaved(data) ? data : null;
}

/** The worksheet out of what was kept, or what is wrong with it. What checks it is fetched when it is wanted first. */
export async function openSaved(
  data: unknown,
): Promise<OpenedSheet | { readonly problems: readonly ReadProblem[] }> {
  const saved = savedSheet(data);
  if (!saved) return { problems: [{ path: "", message: "What was kept here is no saved worksheet." }] };
  const { readWorksheet } = await import("../document/check.ts");
  const reading = readWorksheet(saved.worksheet);
  if (!reading.ok) return { problems: reading.problems };
  const { id, revision, savedAt } = saved;
  return {
    id,
    revision,
    savedAt,
    worksheet: reading.worksheet,
    readOnly: reading.readOnly,
    notes: reading.notes,
  };
}

/** Title of a kept worksheet for a list, whatever state it is in. */
export function titleOf(saved: SavedSheet): string {
  const { worksheet } = saved;
  const title =
    typeof worksheet === "object" && worksheet !== null && "title" in worksheet ? worksheet.title : "";
  return typeof title === "string" ? title : "";
}

/** Version a kept worksheet says it has, or 0. */
export function versionOf(saved: SavedSheet): number {
  const { worksheet } = saved;
  const version =
    typeof worksheet === "object" && worksheet !== null && "version" in worksheet ? worksheet.version : 0;
  return typeof version === "number" ? version : 0;
}
