// A season's days as a sheet of months, a square a day, for the chart stack: what was given, rain that counts, thirst.

import { SHORT_MONTHS } from "../units/calendar-names.ts";
import type { Bar, Layer, Plot, Point } from "./plot.ts";

export type SheetDay = {
  readonly date: string;
  readonly given: number;
  readonly rain: number;
  readonly stressed: boolean;
  readonly letGo: boolean;
  readonly grows: boolean;
};

export type MonthSheet<Day extends SheetDay> = {
  readonly plot: Plot;
  /** How many months, a row each. */
  readonly rows: number;
  /** The day at a place of the chart, if there is one. */
  readonly at: (across: number, up: number) => Day | null;
};

const COLUMNS = 31;
/** Left of the days, for the names of the months [days]. */
const NAMES = 7;
/** Between two squares [of a square]. */
const GAP = 0.1;
/** However little was given, it is seen [of a square]. */
const LEAST = 0.2;

const monthOf = ({ date }: SheetDay): string => date.slice(0, 7);
const columnOf = ({ date }: SheetDay): number => Number(date.slice(8)) - 1;

function nameOf(month: string): string {
  return `${SHORT_MONTHS[Number(month.slice(5)) - 1]} ${month.slice(0, 4)}`;
}

type Where = { readonly column: number; readonly foot: number };

/** What is drawn of the days, each at its place. */
function layersOf<Day extends SheetDay>(days: readonly Day[], where: (day: Day) => Where): readonly Layer[] {
  const most = Math.max(1e-12, ...days.map(({ given }) => given));
  const square = (day: Day, share = 1): Bar => {
    const { column, foot } = where(day);
    const floor = foot + GAP;
    return { from: column, to: column + 1 - GAP, floor, up: floor + share * (1 - 2 * GAP) };
  };
  const middle = (day: Day): Point => [where(day).column + 0.5 - GAP / 2, where(day).foot + 0.5];
  const of = (is: (day: Day) => boolean): readonly Day[] => days.filter(is);
  const given = of((day) => day.given > 0);
  return [
    { as: "bars", tone: "soft", faint: true, bars: of((day) => day.grows).map((day) => square(day)) },
    { as: "bars", tone: "water", bars: given.map((day) => square(day, Math.max(LEAST, day.given / most))) },
    {
      as: "dots",
      tone: "water",
      radius: 2,
      points: of((day) => day.rain > 0 && day.given === 0).map(middle),
    },
    {
      as: "signs",
      sign: "stroke",
      tone: "soft",
      points: of((day) => day.letGo && !day.stressed).map(middle),
    },
    { as: "signs", sign: "cross", tone: "trouble", points: of((day) => day.stressed).map(middle) },
  ];
}

/** Days, in order, as a chart: across the days of a month, up the months, the first at the top. */
export function monthSheet<Day extends SheetDay>(days: readonly Day[]): MonthSheet<Day> {
  const months = [...new Set(days.map(monthOf))];
  const where = (day: Day): Where => ({
    column: columnOf(day),
    foot: months.length - 1 - months.indexOf(monthOf(day)),
  });
  const byPlace = new Map(days.map((day) => [`${where(day).column} ${where(day).foot}`, day]));
  // The name of a month stands on the line under its row.
  const ticks = months.map((month, row) => ({ at: months.length - 1 - row + 0.02, label: nameOf(month) }));
  return {
    plot: {
      across: { from: -NAMES, to: COLUMNS, ticks: [] },
      up: { from: 0, to: Math.max(1, months.length), ticks },
      layers: layersOf(days, where),
      marks: [],
    },
    rows: months.length,
    at: (across, up) => byPlace.get(`${Math.floor(across)} ${Math.floor(up)}`) ?? null,
  };
}
