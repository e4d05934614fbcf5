// NOAA's daily files: one row an element and day, one row a day with attributes, and the fixed-width months.

import { daysInMonth } from "../units/calendar.ts";
import { amountChecker } from "./amount-reader.ts";
import { basePlan, columnOf, columnUses, findHeader } from "./column-plan.ts";
import { columnReader, type ExtraColumn } from "./column-reader.ts";
import type { FormatDetector, FormatFacts, Head } from "./intake.ts";
import { readNumber, UNREADABLE } from "./read-cell.ts";
import { checkedDay, dateReader } from "./read-date.ts";
import { MARK_TRACE } from "./readings.ts";

const LONG_ROW = /^[A-Z]{2}[A-Z0-9_-]{9}$/;
const FIXED_ROW = /^[A-Z]{2}[A-Z0-9_-]{9}\d{6}[A-Z0-9]{4}[ -]/;
const DAYS_A_LINE = 31;
const CELL_WIDTH = 8;
const FIRST_CELL = 21;

type Element = { readonly name: string; readonly day: number; readonly value: number; readonly line: number };

/** Measurement, quality and source flags of one value; the meanings of the flags are from memory. */
type Flags = { readonly measured: string; readonly quality: string; readonly source: string };

/** What a doubtful value is called, and whether it stays unless the user says otherwise. */
function doubtOf(flags: Flags): { readonly name: string; readonly stays: boolean } | null {
  if (flags.quality !== "") return { name: `${flags.quality}, failed a quality check`, stays: false };
  if (flags.measured === "P") return { name: "P, missing and presumed zero", stays: true };
  if (flags.source !== "S") return null;
  return { name: "S, from hourly telegrams, which differ from the day's own reading", stays: true };
}

/** Applies the flags: T is a trace, P was presumed zero, any quality flag is a failed check. */
function afterFlags(head: Head, flags: Flags, amount: number): number {
  const { intake } = head;
  if (Number.isNaN(amount)) return amount;
  const doubt = doubtOf(flags);
  if (doubt) {
    const keep = (head.choices.flagged ?? (doubt.stays ? "keep" : "drop")) === "keep";
    intake.flag(doubt.name, keep ? "kept" : "taken as missing");
    if (!keep) return Number.NaN;
  }
  if (flags.measured !== "T") return amount;
  intake.readings.mark.set(intake.readings.count, MARK_TRACE);
  return 0;
}

/** Takes elements as they come; an amount over several days waits for the number of its days. */
function elementTaker(head: Head) {
  const { intake } = head;
  const check = amountChecker(intake, new Set(head.choices.missing_codes ?? []), null);
  const totals = new Map<number, Element>();
  const spans = new Map<number, number>();
  const takers: Readonly<Record<string, (element: Element, flags: Flags) => void>> = {
    TMAX: ({ day, value }, flags) => takeWarmth("highest", day, value, flags),
    TMIN: ({ day, value }, flags) => takeWarmth("lowest", day, value, flags),
    MDPR: (element) => totals.set(element.day, element),
    DAPR: ({ day, value }) => spans.set(day, value),
    PRCP: ({ day, value, line }, flags) => {
      const checked = value >= 0 && value < 999 ? value : check(value, line);
      if (checked !== UNREADABLE) intake.add(day, afterFlags(head, flags, checked), line, -1);
    },
  };
  function takeWarmth(name: "highest" | "lowest", day: number, value: number, flags: Flags): void {
    if (value > -900 && value < 900 && flags.quality === "") intake.extra(name).push(day, value);
  }
  function take(element: Element, flags: Flags): void {
    if (Object.hasOwn(takers, element.name)) takers[element.name]?.(element, flags);
  }
  function finish(): void {
    for (const [day, { value, line }] of totals) {
      if (value < 0) continue;
      intake.readings.span.set(intake.readings.count, spans.get(day) ?? 1);
      intake.add(day, value, line, -1);
    }
    intake.finish();
  }
  return { take, finish };
}

function facts(id: string, name: string, columns: FormatFacts["columns"]): FormatFacts {
  return {
    id,
    name,
    header: [],
    dataFrom: 0,
    unit: "tenth_mm",
    unitTold: "format",
    temperature: { value: "tenth_C", told: "format" },
    columns,
    dayRule: {
      text: "Each reading is taken for the day it is dated; many stations read in the morning.",
      shift: 0,
    },
    notes: [],
    packedDates: false,
    dottedDates: false,
    shortYears: false,
    rows: "day",
    apartBy: null,
    windowHours: null,
    tenthsIfWhole: false,
    questions: [],
  };
}

const ELEMENT_COLUMNS = [
  { name: "station", use: "station" },
  { name: "date", use: "date" },
  { name: "PRCP", use: "rain" },
  { name: "MDPR and DAPR", use: "amounts over several days, and how many" },
  { name: "TMAX", use: "highest temperature of the day" },
  { name: "TMIN", use: "lowest temperature of the day" },
  { name: "other elements", use: "ignored" },
];

function stationGate(head: Head): (station: string) => boolean {
  let only = head.choices.station ?? null;
  const { stations } = head.intake;
  let last = "";
  return (station) => {
    if (station !== last) {
      stations.add(station);
      last = station;
    }
    only ??= station;
    return station === only;
  };
}

/** By-year and by-station files without a header: ID, date, element, value, flags (read). */
export const detectGhcnLong: FormatDetector = (head) => {
  const first = head.rows[0] ?? [];
  const headed = /^id$/i.test((first[0] ?? "").trim()) && /^element$/i.test((first[2] ?? "").trim());
  const sample = (headed ? head.rows[1] : first) ?? [];
  if (
    !LONG_ROW.test(sample[0] ?? "") ||
    !/^\d{8}$/.test(sample[1] ?? "") ||
    !/^[A-Z0-9]{4}$/.test(sample[2] ?? "")
  ) {
    return null;
  }
  const { take, finish } = elementTaker(head);
  const belongs = stationGate(head);
  const dayOf = dateReader("compact");
  return {
    ...facts("ghcn_long", "NOAA daily, one row an element and day", ELEMENT_COLUMNS),
    dataFrom: headed ? 1 : 0,
    read: (row, line) => {
      if (row.length < 4 || !belongs(row[0] ?? "")) return;
      const day = dayOf(row[1] ?? "");
      const value = readNumber(row[3], false);
      if (Number.isNaN(day)) head.intake.reject(`"${row[1]}" is no date, or no day of the calendar.`, line);
      else if (value === UNREADABLE) head.intake.reject(`"${row[3]}" is no amount of rain.`, line);
      else {
        const flags = { measured: row[4] ?? "", quality: row[5] ?? "", source: row[6] ?? "" };
        take({ name: row[2] ?? "", day, value, line }, flags);
      }
    },
    finish,
  };
};

/** Fixed-width months, an element a line, -9999 missing (layout from memory). */
export const detectGhcnFixed: FormatDetector = (head) => {
  if (!FIXED_ROW.test((head.rows[0] ?? []).join(head.delimiter))) return null;
  const { take, finish } = elementTaker(head);
  const belongs = stationGate(head);
  return {
    ...facts("ghcn_fixed", "NOAA daily, fixed width, a month a line", ELEMENT_COLUMNS),
    read: (row, line) => {
      const text = row.join(head.delimiter);
      if (text.trim() === "" || !belongs(text.slice(0, 11))) return;
      const [year, month, name] = [
        Number(text.slice(11, 15)),
        Number(text.slice(15, 17)),
        text.slice(17, 21),
      ];
      if (Number.isNaN(checkedDay(year, month, 1))) {
        head.intake.reject(`"${text.slice(11, 17)}" is no month.`, line);
        return;
      }
      for (let at = 0; at < Math.min(DAYS_A_LINE, daysInMonth(year, month)); at++) {
        const from = FIRST_CELL + at * CELL_WIDTH;
        const value = readNumber(text.slice(from, from + 5), false);
        if (value === UNREADABLE || value === -9999 || Number.isNaN(value)) continue;
        const flag = (offset: number) => text.charAt(from + offset).trim();
        take(
          { name, day: checkedDay(year, month, at + 1), value, line },
          { measured: flag(5), quality: flag(6), source: flag(7) },
        );
      }
    },
    finish,
  };
};

const MOST_ATTRIBUTES = 1000;

/** Reads "M,Q,S,time" cells; a file has few different ones, so each is taken apart once. */
function attributeReader(): (cell: string | undefined) => Flags {
  const known = new Map<string, Flags>();
  return (cell = "") => {
    const before = known.get(cell);
    if (before) return before;
    const [measured = "", quality = "", source = ""] = cell.split(",").map((flag) => flag.trim());
    const flags = { measured, quality, source };
    if (known.size < MOST_ATTRIBUTES) known.set(cell, flags);
    return flags;
  };
}

function noaaExtras(cells: readonly string[]): ExtraColumn[] {
  const [high, low] = [columnOf(cells, "TMAX"), columnOf(cells, "TMIN")];
  return [
    ...(high === null ? [] : [{ name: "highest", column: high, factor: null } as const]),
    ...(low === null ? [] : [{ name: "lowest", column: low, factor: null } as const]),
  ];
}

/**
 * A row a day with STATION, DATE and PRCP. The same names head files in tenths of a millimetre, and orders in
 * millimetres or inches: whole numbers throughout beside attributes are tenths, all else is asked.
 */
export const detectNoaaTable: FormatDetector = (head) => {
  const header = findHeader(head.rows, ["STATION", "DATE", "PRCP"]);
  if (!header || columnOf(header.cells, "FRSHTT") !== null) return null;
  const { cells, at } = header;
  const attributes = columnOf(cells, "PRCP_ATTRIBUTES");
  const [total, span] = [columnOf(cells, "MDPR"), columnOf(cells, "DAPR")];
  const core = {
    date: { kind: "cell", column: columnOf(cells, "DATE") ?? 1 } as const,
    time: null,
    rain: columnOf(cells, "PRCP") ?? 2,
    extras: noaaExtras(cells),
    station: columnOf(cells, "STATION"),
  };
  const special: Record<number, string> = {};
  if (attributes !== null) special[attributes] = "flags of the rain";
  if (total !== null) special[total] = "amount over several days";
  if (span !== null) special[span] = "how many days";
  const { readings } = head.intake;
  const flagsOf = attributeReader();
  return columnReader(
    basePlan({
      id: "noaa_table",
      name: "NOAA daily, a row a day",
      header: cells,
      dataFrom: at + 1,
      ...core,
      columns: columnUses(cells, core, special),
      tenthsIfWhole: attributes !== null,
      rows: "day",
      judge: (row, amount) => {
        const many = total === null ? Number.NaN : readNumber(row[total], false);
        if (Number.isNaN(amount) && many >= 0) {
          readings.span.set(readings.count, Math.max(1, readNumber(row[span ?? -1], false) || 1));
          return many;
        }
        return attributes === null ? amount : afterFlags(head, flagsOf(row[attributes]), amount);
      },
    }),
    head,
  );
};

/** Global summary of the day: inches, 99.99 missing; flag I: nothing was reported, the zero is made (from memory). */
export const detectGsod: FormatDetector = (head) => {
  const header = findHeader(head.rows, ["DATE", "PRCP", "PRCP_ATTRIBUTES", "FRSHTT"]);
  if (!header) return null;
  const { cells, at } = header;
  const attributes = columnOf(cells, "PRCP_ATTRIBUTES") ?? 0;
  const ends = [columnOf(cells, "MAX"), columnOf(cells, "MIN")] as const;
  const extras: ExtraColumn[] = [];
  if (ends[0] !== null) extras.push({ name: "highest", column: ends[0], factor: null });
  if (ends[1] !== null) extras.push({ name: "lowest", column: ends[1], factor: null });
  return columnReader(
    basePlan({
      id: "gsod",
      name: "NOAA global summary of the day",
      header: cells,
      dataFrom: at + 1,
      date: { kind: "cell", column: columnOf(cells, "DATE") ?? 0 },
      rain: columnOf(cells, "PRCP") ?? 0,
      extras,
      station: columnOf(cells, "STATION"),
      unit: "in",
      unitTold: "format",
      rows: "day",
      temperature: { value: "F", told: "format" },
      codes: [99.99],
      dayRule: { text: "Each reading is taken for the day it is dated, universal time.", shift: 0 },
      judge: (row, amount) => {
        if ((row[attributes] ?? "").trim() !== "I" || Number.isNaN(amount)) return amount;
        const keep = head.choices.flagged === "keep";
        head.intake.flag("I, nothing was reported", keep ? "kept as zero" : "taken as missing");
        return keep ? amount : Number.NaN;
      },
    }),
    head,
  );
};
