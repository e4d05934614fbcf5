// A rain record's text or file to a checked daily record, piece by piece: 50 MB never stand in memory as rows.
import Papa from "papaparse";
import { checkedChoices } from "./check-choices.ts";
import { recogniseFormat } from "./formats.ts";
import { type Choices, type ImportResult, Refusal } from "./import-result.ts";
import { type FormatReader, Intake } from "./intake.ts";
import { type ImportNames, type Preview, settleRecord } from "./settle-record.ts";
import { decoderFor, delimiterOf, lineEnd } from "./text-shape.ts";

const PIECE_CHARACTERS = 262_144;
const PIECE_BYTES = 1_048_576;
/** A row longer than this is an opening quote that is never closed. */
const LONGEST_ROW = 2_097_152;
const PREVIEW_ROWS = 6;
const PREVIEW_CELL = 60;

export type ImportNamesGiven = { readonly title?: string; readonly source?: string };

export type ImportOptions = ImportNamesGiven & {
  readonly choices?: Choices;
  /** Called after each piece with the share that is read, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  readonly signal?: AbortSignal;
};

type ParsedPiece = { readonly data: string[][]; readonly meta: { readonly cursor: number } };

/** Takes text in pieces, rows in order, and settles them at the end. */
class RecordReader {
  private readonly intake = new Intake();
  private readonly choices: Choices;
  private readonly names: ImportNamesGiven;
  private format: FormatReader | null = null;
  private parser: InstanceType<typeof Papa.Parser> | null = null;
  private delimiter = ",";
  private rest = "";
  private line = 1;
  private preview: Preview = { header: [], rows: [] };
  private madeUp = false;

  constructor(choices: Choices, names: ImportNamesGiven) {
    this.choices = choices;
    this.names = names;
  }

  take(piece: string, last: boolean): void {
    const text = this.rest + (this.parser ? piece : piece.replace(/^\uFEFF/, ""));
    if (!this.parser) {
      if (text.includes("\0"))
        throw new Refusal("This is no text; a rain record comes as CSV or plain text.", 1);
      this.delimiter = delimiterOf(text);
      this.parser = new Papa.Parser({ delimiter: this.delimiter, newline: lineEnd(text) });
      this.madeUp = /^\s*#\s*made up\b/im.test(text.slice(0, 2000));
    }
    const parsed = this.parser.parse(text, 0, !last) as ParsedPiece;
    this.rest = last ? "" : text.slice(parsed.meta.cursor);
    if (this.rest.length > LONGEST_ROW) {
      throw new Refusal("A quotation mark opens here and is never closed.", this.line + parsed.data.length);
    }
    const consumed = last ? text : text.slice(0, parsed.meta.cursor);
    this.rows(parsed.data, text.includes('"') && lineEnds(consumed) > parsed.data.length);
  }

  private rows(rows: readonly string[][], quoted: boolean): void {
    let from = 0;
    if (!this.format) {
      this.format = this.recognise(rows);
      from = this.format.dataFrom;
      this.line += rows.slice(0, from).reduce((lines, row) => lines + linesIn(row, quoted), 0);
    }
    const { read } = this.format;
    for (let at = from; at < rows.length; at++) {
      const row = rows[at];
      if (!row) continue;
      read(row, this.line);
      this.line += quoted ? linesIn(row, true) : 1;
    }
  }

  private recognise(rows: readonly string[][]): FormatReader {
    const { delimiter, choices, intake } = this;
    const format = recogniseFormat({ rows, delimiter, choices, intake });
    if (!format) {
      const line = rows.findIndex((row) => row.some((cell) => cell.trim() !== "")) + 1;
      throw new Refusal(
        line ? "No columns with a date and an amount of rain are found." : "The file is empty.",
        line || null,
      );
    }
    const shorten = (row: readonly string[]) =>
      row.slice(0, 40).map((cell) => cell.trim().slice(0, PREVIEW_CELL));
    this.preview = {
      header: shorten(format.header),
      rows: rows.slice(format.dataFrom, format.dataFrom + PREVIEW_ROWS).map(shorten),
    };
    return format;
  }

  settle(): ImportResult {
    if (!this.format) throw new Refusal("The file is empty.", null);
    const names: ImportNames = {
      title: this.names.title ?? "Rain record",
      source: this.names.source ?? this.format.name,
      madeUp: this.madeUp,
    };
    return settleRecord(this.format, this.intake, this.choices, this.preview, names);
  }
}

function lineEnds(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count++;
  return count;
}

function linesIn(row: readonly string[], quoted: boolean): number {
  let lines = 1;
  if (quoted) for (const cell of row) if (cell.includes("\n")) lines += cell.split("\n").length - 1;
  return lines;
}

/** The one place where a refusal becomes a result. */
function refused(problem: unknown): ImportResult {
  if (problem instanceof Refusal) return { state: "refused", reason: problem.message, line: problem.line };
  throw problem;
}

/**
 * A record's text to a daily record, to the questions that stand in its way, or to a reason with its line.
 * @param text the whole text
 * @param choices answers to questions, and assumptions to be overridden
 */
export function readRainCsv(text: string, choices: Choices = {}, names: ImportNamesGiven = {}): ImportResult {
  try {
    const reader = new RecordReader(checkedChoices(choices), names);
    for (let at = 0; at === 0 || at < text.length; at += PIECE_CHARACTERS) {
      reader.take(text.slice(at, at + PIECE_CHARACTERS), at + PIECE_CHARACTERS >= text.length);
    }
    return reader.settle();
  } catch (problem) {
    return refused(problem);
  }
}

/**
 * A file or blob to a daily record, read in slices between which the thread is free.
 * Runs in a worker of our own; cancelled by its signal it is refused, with nothing half read.
 */
export async function readRainFile(file: Blob, options: ImportOptions = {}): Promise<ImportResult> {
  try {
    const reader = new RecordReader(checkedChoices(options.choices ?? {}), options);
    let decoder: TextDecoder | null = null;
    for (let at = 0; at === 0 || at < file.size; at += PIECE_BYTES) {
      const bytes = new Uint8Array(await file.slice(at, at + PIECE_BYTES).arrayBuffer());
      if (options.signal?.aborted) throw new Refusal("The import was cancelled.", null);
      decoder ??= decoderFor(bytes);
      const last = at + PIECE_BYTES >= file.size;
      reader.take(decoder.decode(bytes, { stream: !last }), last);
      options.onProgress?.(file.size ? Math.min(1, (at + PIECE_BYTES) / file.size) : 1);
    }
    return reader.settle();
  } catch (problem) {
    return refused(problem);
  }
}
