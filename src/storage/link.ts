// A worksheet as the part of an address behind the #: packed, so that it never goes to a server, and read with care.

import { parseJson } from "../document/check.ts";
import { mapCard } from "../document/entries.ts";
import { frozen } from "../document/freeze.ts";
import { withNotes } from "../document/notes.ts";
import { recordNames, renameRecord } from "../document/record-names.ts";
import type { Entries, Worksheet } from "../document/worksheet.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import { type BundleReading, type KeyOf, readBundle } from "./bundle.ts";
import { packNamed } from "./file-text.ts";
import { isWorksheetLink } from "./link-mark.ts";
import { roughPlace } from "./rough-place.ts";
import { deflate, fromLetters, inflate, TooBig, toLetters } from "./squeeze.ts";

const MARK = "w1=";

/** Characters of a link that still go through most messengers. */
export const LONGEST_LINK = 16_000;

/** Bytes of an unpacked link at the most. */
export const LARGEST_UNPACKED = 1_000_000;

/** Letters that could at all hold so much, packed or not. */
const MOST_LETTERS = 2 * LARGEST_UNPACKED;

export type LinkOptions = {
  /** Whether what was noted through the season goes along; left out: it stays here. */
  readonly notes?: boolean;
  readonly records: ReadonlyMap<string, DailyRecord>;
  /** Givens of the weather card that stand for a record too long to travel: its normals. */
  readonly normals: Entries | null;
  /** The records stay behind even where they are short enough. */
  readonly withoutRecords?: boolean;
  /** The latitude as typed, instead of to a tenth of a degree. */
  readonly exactPlace?: boolean;
  /** Characters at the most. */
  readonly longest?: number;
};

export type LinkMade =
  | {
      readonly ok: true;
      /** Without the #. */
      readonly fragment: string;
      /** Whether a record travels in it. */
      readonly hasRecord: boolean;
      /** What the reader will not get, in sentences. */
      readonly leftOut: readonly string[];
    }
  | { readonly ok: false; readonly reason: string };

async function pack(data: unknown): Promise<string> {
  const bytes = new TextEncoder().encode(JSON.stringify(data));
  return `${MARK}${toLetters(await deflate(bytes))}`;
}

function withoutRecords(worksheet: Worksheet, normals: Entries | null): Worksheet {
  const bare = recordNames(worksheet).reduce((sheet, key) => renameRecord(sheet, key, ""), worksheet);
  return frozen(
    mapCard(bare, "weather", (card) =>
      normals ? { ...card, givens: { ...card.givens, ...normals } } : card,
    ),
  );
}

function recordLeftOut({ normals, withoutRecords }: LinkOptions): string {
  const why = withoutRecords ? "Your rain record" : "Your rain record is too long for a link: it";
  return normals
    ? `${why} stays here and twelve monthly figures of it travel instead, so the answers will differ.`
    : `${why} stays here, so the answers will differ.`;
}

/** Marks a link whose sender ran a record of his own, for whoever opens it. */
const LEFT_OUT = "record_left_out";

const RECEIVED_WITHOUT =
  "The maker's own rain record did not come with the link. This stands on twelve monthly figures of it, so the answers differ from the maker's.";

/** Whether every record that the worksheet names is at hand. */
function hasAll(worksheet: Worksheet, records: ReadonlyMap<string, DailyRecord>): boolean {
  return recordNames(worksheet).every((key) => records.has(key));
}

async function fitting(worksheet: Worksheet, options: LinkOptions, longest: number): Promise<LinkMade> {
  if (!options.withoutRecords && hasAll(worksheet, options.records)) {
    const records = packNamed(worksheet, options.records);
    const data = records.length > 0 ? { ...worksheet, records } : worksheet;
    const isReadable = JSON.stringify(data).length <= LARGEST_UNPACKED / 2;
    const fragment = isReadable ? await pack(data) : null;
    if (fragment !== null && fragment.length <= longest) {
      return { ok: true, fragment, hasRecord: records.length > 0, leftOut: [] };
    }
  }
  const named = recordNames(worksheet).length > 0;
  const bare = withoutRecords(worksheet, named ? options.normals : null);
  const fragment = await pack(named && options.normals ? { ...bare, [LEFT_OUT]: true } : bare);
  if (fragment.length > longest) {
    return { ok: false, reason: "This worksheet is too long for a link. Send it as a file." };
  }
  return { ok: true, fragment, hasRecord: false, leftOut: named ? [recordLeftOut(options)] : [] };
}

/**
 * Packs a worksheet into a link, with its record where that is short enough.
 *
 * @returns the part behind the #, and what was left out; or the reason why there is no link
 */
export async function worksheetToLink(worksheet: Worksheet, options: LinkOptions): Promise<LinkMade> {
  if (typeof CompressionStream === "undefined") {
    return { ok: false, reason: "This browser cannot pack a worksheet into a link. Send it as a file." };
  }
  const told = options.notes ? worksheet : withNotes(worksheet, []);
  const sent = options.exactPlace ? told : roughPlace(told);
  try {
    return await fitting(sent, options, options.longest ?? LONGEST_LINK);
  } catch {
    return { ok: false, reason: "This browser cannot pack a worksheet into a link. Send it as a file." };
  }
}

function refusal(message: string): BundleReading {
  return { ok: false, problems: [{ path: "", message }] };
}

async function unpack(letters: string): Promise<{ readonly text: string } | { readonly reason: string }> {
  if (letters.length > MOST_LETTERS) return { reason: "This link is far too long for a worksheet." };
  const bytes = fromLetters(letters);
  if (!bytes || bytes.length === 0) return { reason: "This link was cut off or changed on its way." };
  if (typeof DecompressionStream === "undefined") {
    return { reason: "This browser cannot open links. Ask for the worksheet as a file." };
  }
  try {
    const unpacked = await inflate(bytes, LARGEST_UNPACKED);
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(unpacked) };
  } catch (error) {
    return error instanceof TooBig
      ? { reason: "This link unpacks to more than a worksheet can be. It was not opened." }
      : { reason: "This link was cut off or changed on its way." };
  }
}

/** What a link holds, and what its sender left out of it. */
function readLinked(data: unknown, keyOf: KeyOf): BundleReading {
  if (typeof data !== "object" || data === null || !Object.hasOwn(data, LEFT_OUT))
    return readBundle(data, keyOf);
  const { [LEFT_OUT]: _, ...rest } = data as Readonly<Record<string, unknown>>;
  const read = readBundle(rest, keyOf);
  return read.ok ? { ...read, notes: [...read.notes, RECEIVED_WITHOUT] } : read;
}

/**
 * Reads the part of an address behind the #.
 *
 * @param keyOf content key of a record, worked out anew
 * @returns the worksheet and its records, or the reason why it could not be read
 */
export async function worksheetFromLink(fragment: string, keyOf: KeyOf): Promise<BundleReading> {
  const bare = fragment.startsWith("#") ? fragment.slice(1) : fragment;
  if (!bare.startsWith(MARK)) {
    return isWorksheetLink(bare)
      ? refusal("This link was made by a newer version. Reload the page and try again.")
      : refusal("This is not a link to a worksheet.");
  }
  const unpacked = await unpack(bare.slice(MARK.length));
  if ("reason" in unpacked) return refusal(unpacked.reason);
  const parsed = parseJson(unpacked.text, LARGEST_UNPACKED);
  return parsed.ok ? readLinked(parsed.data, keyOf) : refusal("This link was cut off or changed on its way.");
}
