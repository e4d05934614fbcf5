// What goes out as CSV: every quantity, the shopping list, the season day by day, the record.

import { inForce } from "../document/note-order.ts";
import { wordSaid } from "../document/note-words.ts";
import type { Worksheet } from "../document/worksheet.ts";
import { numberIn, valueIn } from "../graph/readers.ts";
import type { Row } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { csvText, recordToCsv } from "../rainfall/export-csv.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { TableName } from "../ui/dialogs/keeping.ts";
import { isoDate } from "../units/calendar.ts";
import { MEASURES } from "../units/measures.ts";
import { unitFor } from "../units/show.ts";
import { fromSi } from "../units/unit.ts";
import type { makeReader } from "./reader.ts";

type Reader = ReturnType<typeof makeReader>;

export type TableTools = {
  readonly reader: Reader;
  readonly worksheet: Worksheet;
  readonly record: DailyRecord | null;
};

type Cells = (string | number | null)[];

function numberInUnit(reader: Reader, id: string, unit: string): number | null {
  const number = numberIn(reader.result(id));
  if (number === null) return null;
  return unit === "" || unit === "money" ? number : fromSi(number, unit);
}

const SAID: ReadonlySet<Row["row"]> = new Set(["given", "choice", "link", "text", "date", "list"]);

/** Where a quantity is from, in the words of the page: what somebody said without a word of it is their own. */
function sourceOf({ reader, worksheet }: TableTools, id: string, row: Row): string {
  const inHead = row.row === "text" && row.of === "currency";
  if (inHead) return worksheet.currency === row.default ? "default" : "your own";
  const origin = reader.originOf(id);
  if (origin !== null) return origin;
  if (!SAID.has(row.row)) return "worked out";
  if (reader.typedOf(id)) return "your own";
  const now = reader.result(id);
  // Nobody said it, and it is worked out from others, or is nothing at all.
  if (now?.state !== "ready") return "";
  return now.origin === "computed" ? "worked out" : "default";
}

function quantities(tools: TableTools): string {
  const { reader, worksheet } = tools;
  const rows: Cells[] = [["id", "card", "quantity", "value", "unit", "shown", "where it is from"]];
  for (const card of worksheet.cards) {
    for (const row of CARD_KINDS[card.kind]?.rows ?? []) {
      if (row.hidden || ("measure" in row && row.measure === "series")) continue;
      const id = `${card.id}.${row.name}`;
      if (!reader.result(id)) continue;
      const unit = reader.unitOf(id);
      rows.push([
        id,
        card.title,
        reader.label(id),
        numberInUnit(reader, id, unit),
        unit,
        reader.shown(id),
        sourceOf(tools, id, row),
      ]);
    }
  }
  return csvText(rows);
}

function shopping({ reader, worksheet }: TableTools): string {
  const { currency } = worksheet;
  const rows: Cells[] = [["part", "kind", `price (${currency})`, "lasts (years)"]];
  for (const card of worksheet.cards) {
    const price = numberInUnit(reader, `${card.id}.price`, "money");
    if (price === null) continue;
    const kind = CARD_KINDS[card.kind]?.label ?? card.kind;
    rows.push([card.title, kind, price, numberInUnit(reader, `${card.id}.life`, "year")]);
  }
  rows.push(["All together", "", numberInUnit(reader, "cost.total", "money"), null]);
  return csvText(rows);
}

type Series = { readonly head: string; readonly at: (day: number) => number };

function seriesOf(reader: Reader, id: string, days: number): ArrayLike<number> | null {
  const result = reader.result(id);
  const value = valueIn(result);
  const isSeries = value instanceof Float64Array || value instanceof Uint8Array;
  return isSeries && value.length === days ? value : null;
}

function dailyColumns(tools: TableTools, days: number): readonly Series[] {
  const { reader, worksheet, record } = tools;
  const [volume, rain] = [unitFor("volume", worksheet.units), unitFor("rain", worksheet.units)];
  const column = (id: string, head: string, unit: string): Series[] => {
    const values = seriesOf(reader, id, days);
    if (!values) return [];
    const factor = unit === "" ? 1 : fromSi(1, unit);
    return [
      { head: unit === "" ? head : `${head} (${unit})`, at: (day) => (values[day] ?? Number.NaN) * factor },
    ];
  };
  const factor = fromSi(1, rain);
  const fallen: Series[] = record
    ? [{ head: `rain (${rain})`, at: (day) => (record.rain[day] ?? Number.NaN) * factor }]
    : [];
  const tanks = worksheet.cards.flatMap((card) =>
    column(`${card.id}.stored`, `water in ${card.title}`, volume),
  );
  return [
    ...fallen,
    ...column("weather.daily_eto", "drying", rain),
    ...tanks,
    ...column("season.stored_total", "water in all tanks", volume),
    ...column("season.short_days", "a bed is short (1 is yes)", ""),
  ];
}

function days(tools: TableTools): string {
  const stored = tools.reader.stored();
  if (!stored) return csvText([["The season is not worked out yet."]]);
  const columns = dailyColumns(tools, stored.stored.length);
  const rows: Cells[] = [["date", ...columns.map(({ head }) => head)]];
  for (let day = 0; day < stored.stored.length; day++)
    rows.push([isoDate(stored.firstDay + day), ...columns.map(({ at }) => at(day))]);
  return csvText(rows);
}

/** Every note in force, its amounts as they were written down. */
function notes({ worksheet }: TableTools): string {
  const titleOf = (id: string | undefined) =>
    worksheet.cards.find((card) => card.id === id)?.title ?? id ?? "";
  const head = [
    "day",
    "time",
    "part",
    "what",
    "amount",
    "unit",
    "time taken",
    "unit of time taken",
    "by",
    "words",
  ];
  const rows = inForce(worksheet.notes ?? []).map(
    (note): Cells => [
      note.day,
      note.minute === undefined ? "" : timeText(note.minute),
      titleOf(note.where),
      wordSaid(note.what),
      note.value ?? null,
      note.unit ?? "",
      note.with?.value ?? null,
      note.with?.unit ?? "",
      titleOf(note.by),
      note.text ?? "",
    ],
  );
  return csvText([head, ...rows]);
}

/** "06:46" */
const timeText = (minute: number): string =>
  [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, "0")).join(":");

/** The text of a table; a cell that another program would run as a formula is made harmless. */
export function tableText(table: TableName, tools: TableTools): string {
  if (table === "quantities") return quantities(tools);
  if (table === "shopping") return shopping(tools);
  if (table === "days") return days(tools);
  if (table === "notes") return notes(tools);
  const isMetric = MEASURES.rain[tools.worksheet.units] === "mm";
  const units = { rain: isMetric ? "mm" : "in", temperature: isMetric ? "C" : "F" } as const;
  return tools.record ? recordToCsv(tools.record, units) : csvText([["There is no record yet."]]);
}
