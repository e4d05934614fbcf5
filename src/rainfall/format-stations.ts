// Tables of weather services, a row a day, each told by its own header.
import { basePlan, columnOf, columnUses, extraColumns, findHeader, toldTemperature } from "./column-plan.ts";
import { type ColumnPlan, columnReader, type ExtraColumn } from "./column-reader.ts";
import type { FormatDetector, Head } from "./intake.ts";
import { readNumber } from "./read-cell.ts";
import { MARK_ACCUMULATED, MARK_TRACE } from "./readings.ts";

function keepFlagged(head: Head, usually: "keep" | "drop"): boolean {
  return (head.choices.flagged ?? usually) === "keep";
}

/** Counts a doubtful reading and says whether it stays. */
function judged(head: Head, flag: string, amount: number, usually: "keep" | "drop"): number {
  const keep = keepFlagged(head, usually);
  head.intake.flag(flag, keep ? "kept" : "taken as missing");
  return keep ? amount : Number.NaN;
}

function traced(head: Head): number {
  head.intake.readings.mark.set(head.intake.readings.count, MARK_TRACE);
  return 0;
}

function named(cells: readonly string[], high: string, low: string): ExtraColumn[] {
  const [highest, lowest] = [columnOf(cells, high), columnOf(cells, low)];
  return [
    ...(highest === null ? [] : [{ name: "highest", column: highest, factor: null } as const]),
    ...(lowest === null ? [] : [{ name: "lowest", column: lowest, factor: null } as const]),
  ];
}

const BOM_RAIN = "Rainfall amount (millimetres)";

/** BoM: an amount over several days ends on its day; quality N is not yet checked. */
function bomJudge(head: Head, period: number | null, quality: number | null): ColumnPlan["judge"] {
  const { readings } = head.intake;
  return (row, amount) => {
    if (Number.isNaN(amount)) return amount;
    const days = period === null ? 1 : readNumber(row[period], false);
    if (days > 1) readings.span.set(readings.count, days);
    const unchecked = quality !== null && (row[quality] ?? "").trim() === "N";
    return unchecked ? judged(head, "N, not yet checked", amount, "keep") : amount;
  };
}

/** BoM Australia, IDCJAC0009. Header and rules read from a real file and bom.gov.au. */
export const detectBom: FormatDetector = (head) => {
  const header = findHeader(head.rows, [BOM_RAIN, "Year", "Month", "Day"]);
  if (!header) return null;
  const { cells, at } = header;
  const column = (name: string) => columnOf(cells, name);
  const period = column("Period over which rainfall was measured (days)");
  const quality = column("Quality");
  const special: Record<number, string> = {};
  if (period !== null) special[period] = "days covered";
  if (quality !== null) special[quality] = "quality";
  const core = {
    date: { kind: "parts", year: column("Year") ?? 0, month: column("Month") ?? 0, day: column("Day") ?? 0 },
    time: null,
    rain: column(BOM_RAIN) ?? 0,
    extras: [],
    station: column("Bureau of Meteorology station number"),
  } as const;
  const plan = basePlan({
    id: "bom",
    name: "Bureau of Meteorology, Australia, daily rainfall",
    header: cells,
    dataFrom: at + 1,
    ...core,
    columns: columnUses(cells, core, special),
    unit: "mm",
    unitTold: "header",
    rows: "day",
    dayRule: {
      text: "Read at 9 in the morning of the dated day, so mostly the rain of the day before.",
      shift: 0,
    },
    judge: bomJudge(head, period, quality),
  });
  return columnReader(plan, head);
};

/** ECA&D blended series: tenths of a millimetre, quality 0 valid, 1 suspect, 9 missing (from memory). */
export const detectEcad: FormatDetector = (head) => {
  const header = findHeader(head.rows, ["DATE", "RR", "Q_RR"]);
  if (!header) return null;
  const { cells, at } = header;
  const quality = columnOf(cells, "Q_RR") ?? 0;
  return columnReader(
    basePlan({
      id: "ecad",
      name: "European Climate Assessment, daily rainfall",
      header: cells,
      dataFrom: at + 1,
      date: { kind: "cell", column: columnOf(cells, "DATE") ?? 0 },
      rain: columnOf(cells, "RR") ?? 0,
      station: columnOf(cells, "STAID") ?? columnOf(cells, "SOUID"),
      unit: "tenth_mm",
      unitTold: "format",
      rows: "day",
      judge: (row, amount) => {
        const mark = (row[quality] ?? "").trim();
        if (mark === "9") return Number.NaN;
        return mark === "1" ? judged(head, "1, suspect", amount, "keep") : amount;
      },
    }),
    head,
  );
};

/** KNMI daily: tenths of a millimetre, -1 for less than 0.05 mm (from memory). */
export const detectKnmi: FormatDetector = (head) => {
  const byRain = findHeader(head.rows, ["STN", "YYYYMMDD", "RD"]);
  const header = byRain ?? findHeader(head.rows, ["STN", "YYYYMMDD", "RH"]);
  if (!header) return null;
  const { cells, at } = header;
  const extras = named(cells, "TX", "TN");
  return columnReader(
    basePlan({
      id: "knmi",
      name: "KNMI, Netherlands, daily",
      header: cells,
      dataFrom: at + 1,
      date: { kind: "cell", column: columnOf(cells, "YYYYMMDD") ?? 1 },
      rain: columnOf(cells, byRain ? "RD" : "RH") ?? 2,
      extras,
      station: columnOf(cells, "STN"),
      unit: "tenth_mm",
      unitTold: "format",
      rows: "day",
      temperature: { value: "tenth_C", told: "format" },
      minusOne: "trace",
      dayRule: byRain
        ? {
            text: "Read at 8 in the morning, universal time, of the dated day: mostly the rain of the day before.",
            shift: 0,
          }
        : { text: "Each reading is taken for the day it is dated, universal time.", shift: 0 },
    }),
    head,
  );
};

/** DWD daily: millimetres, -999 missing, columns divided by semicolons (layout from memory). */
export const detectDwd: FormatDetector = (head) => {
  const header =
    findHeader(head.rows, ["STATIONS_ID", "MESS_DATUM", "RSK"]) ??
    findHeader(head.rows, ["STATIONS_ID", "MESS_DATUM", "RS"]);
  if (!header) return null;
  const { cells, at } = header;
  return columnReader(
    basePlan({
      id: "dwd",
      name: "Deutscher Wetterdienst, daily",
      header: cells,
      dataFrom: at + 1,
      date: { kind: "cell", column: columnOf(cells, "MESS_DATUM") ?? 1 },
      rain: columnOf(cells, "RSK") ?? columnOf(cells, "RS") ?? 0,
      extras: named(cells, "TXK", "TNK"),
      station: columnOf(cells, "STATIONS_ID"),
      unit: "mm",
      unitTold: "format",
      rows: "day",
      temperature: { value: "C", told: "format" },
    }),
    head,
  );
};

/** Meteo-France daily: millimetres, column RR (column names from memory). */
export const detectMeteoFrance: FormatDetector = (head) => {
  const header = findHeader(head.rows, ["NUM_POSTE", "AAAAMMJJ", "RR"]);
  if (!header) return null;
  const { cells, at } = header;
  return columnReader(
    basePlan({
      id: "meteo_france",
      name: "Meteo-France, daily",
      header: cells,
      dataFrom: at + 1,
      date: { kind: "cell", column: columnOf(cells, "AAAAMMJJ") ?? 0 },
      rain: columnOf(cells, "RR") ?? 0,
      extras: named(cells, "TX", "TN"),
      station: columnOf(cells, "NUM_POSTE"),
      unit: "mm",
      unitTold: "format",
      rows: "day",
      temperature: { value: "C", told: "format" },
      dayRule: { text: "From 6 in the morning of the dated day to 6 of the next, universal time.", shift: 0 },
    }),
    head,
  );
};

/** Environment Canada daily: flag M missing; T trace, A accumulated, C and L uncertain (from memory). */
export const detectCanada: FormatDetector = (head) => {
  const header =
    findHeader(head.rows, ["Date/Time", "Total Precip (mm)"]) ??
    findHeader(head.rows, ["Date/Time", "Total Rain (mm)"]);
  if (!header) return null;
  const { cells, at } = header;
  const chosen = columnOf(cells, head.choices.rain_column);
  const rain = chosen ?? columnOf(cells, "Total Precip (mm)") ?? columnOf(cells, "Total Rain (mm)") ?? 0;
  const flag = columnOf(cells, (cells[rain] ?? "").replace("(mm)", "Flag"));
  const date = { kind: "cell", column: columnOf(cells, "Date/Time") ?? 0 } as const;
  const extras = extraColumns(cells, head.choices, [date.column, rain]);
  return columnReader(
    basePlan({
      id: "canada",
      name: "Environment Canada, daily",
      header: cells,
      dataFrom: at + 1,
      date,
      rain,
      extras,
      station: columnOf(cells, "Climate ID"),
      unit: "mm",
      unitTold: "header",
      rows: "day",
      temperature: toldTemperature(cells, extras),
      judge: (row, amount) => canadaFlag(head, (flag === null ? "" : (row[flag] ?? "")).trim(), amount),
    }),
    head,
  );
};

function canadaFlag(head: Head, flag: string, amount: number): number {
  const { readings } = head.intake;
  if (flag === "T") return traced(head);
  if (flag === "M") return Number.NaN;
  if (flag === "A" && !Number.isNaN(amount)) readings.mark.set(readings.count, MARK_ACCUMULATED);
  if ((flag === "C" || flag === "L") && !Number.isNaN(amount))
    return judged(head, `${flag}, uncertain`, amount, "keep");
  return amount;
}

/** UK MIDAS Open daily rain: one-day readings only, the last version of each (partly from memory). */
export const detectMidas: FormatDetector = (head) => {
  const header = findHeader(head.rows, ["ob_date", "ob_day_cnt", "prcp_amt"]);
  if (!header) return null;
  const { cells, at } = header;
  const count = columnOf(cells, "ob_day_cnt") ?? 0;
  const plan: ColumnPlan = basePlan({
    id: "midas",
    name: "MIDAS Open, United Kingdom, daily rain",
    header: cells,
    dataFrom: at + 1,
    date: { kind: "cell", column: columnOf(cells, "ob_date") ?? 0 },
    rain: columnOf(cells, "prcp_amt") ?? 0,
    station: columnOf(cells, "src_id"),
    unit: "mm",
    unitTold: "format",
    rows: "day",
    dayRule: { text: "Read at 9 in the morning, universal time; booked on the day before.", shift: -1 },
    keep: (row) => {
      if (/^end data/i.test(row[0] ?? "")) return false;
      const days = readNumber(row[count], false);
      if (days > 1) head.intake.flag(`reading over ${days} days`, "left out");
      return days === 1 || row.length < cells.length;
    },
  });
  // A day that stands twice is two versions of it, the later one last; times of day would make them hours.
  const reader = columnReader(plan, head);
  return { ...reader, notes: ["Of several versions of a day the last is kept."] };
};
