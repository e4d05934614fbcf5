// On which days a bed is due by the calendar, and from which day on it is let go in a dry spell.

import { calendarDate, dayInYear, weekday } from "../units/calendar.ts";
import { DAY, MILLIMETRE } from "../units/constants.ts";
import type { BedPart, BedRule, LetGo } from "./input.ts";

/**
 * Whether a bed gets a set amount on set days, so that what it is due is told from the calendar and not from the soil.
 *
 * @returns true where the amount is set
 */
export function isByCalendar(rule: BedRule): boolean {
  return rule.kind === "fixed" || (rule.kind === "weekdays" && rule.volume !== null);
}

/**
 * Whether a bed may ask on a day.
 *
 * @param date the day [days since 1970-01-01]
 * @param dayInSeason counted from 1 [day]
 * @returns true on every day by the soil, on its days by the calendar
 */
export function mayAsk(rule: BedRule, date: number, dayInSeason: number): boolean {
  if (rule.kind === "soil") return true;
  if (rule.kind === "weekdays") return rule.days.includes(weekday(date));
  return (dayInSeason - 1) % daysApart(rule) === 0;
}

const WEEK = 7;

/** Whole days between two days on which a bed may ask, the least of them. */
export function daysApart(rule: BedRule): number {
  if (rule.kind === "soil") return 1;
  if (rule.kind === "fixed") return Math.max(1, Math.round(rule.every / DAY));
  const days = [...rule.days].sort((a, b) => a - b);
  return Math.min(...days.map((day, i) => (days[i + 1] ?? (days[0] ?? 0) + WEEK) - day));
}

/** A day with less rain than this is dry [m]; the same as in the longest dry run of a record. */
const DRY = MILLIMETRE;

/** Dry days on end before a morning, and whether the bed has been let go by then. */
export type DrySpell = { readonly days: number; readonly isGone: boolean };

/** What a bed's letting go is told from; `dayInSeason` is 0 outside the season. */
export type LetGoGiven = {
  readonly firstDay: number;
  readonly arriving: Float64Array;
  readonly dayInSeason: Int32Array;
  /** How dry it has been on the morning of a day, whatever fell before; left out: nobody knows of days before the first. */
  readonly dryOn?: { readonly day: number; readonly spell: DrySpell };
};

/**
 * Days on which a bed is let go: from its date on, once so many days on end were dry, until the season ends.
 * Decided on the days before, never on what is to come.
 *
 * @param given rain [m] and the days of the season [day]
 * @returns 1 on each such day; null where the bed is never let go
 */
export function letGoDays(bed: BedPart, given: LetGoGiven): Uint8Array | null {
  if (!bed.letGo) return null;
  const { dryOn, arriving } = given;
  const gone = new Uint8Array(arriving.length);
  let spell: DrySpell = { days: 0, isGone: false };
  for (let day = 0; day < gone.length; day++) {
    if (dryOn?.day === day) spell = dryOn.spell;
    spell = afterDay(spell, bed.letGo, given, day);
    gone[day] = spell.isGone ? 1 : 0;
  }
  return gone;
}

/**
 * How dry it has been on the morning of a day.
 *
 * @param given rain [m] and the days of the season, from the record's first day on [day]
 * @param day of the record, its own rain not yet fallen [day]
 */
export function drySpellOn(letGo: LetGo, given: LetGoGiven, day: number): DrySpell {
  let spell = given.dryOn?.spell ?? { days: 0, isGone: false };
  for (let before = given.dryOn?.day ?? 0; before < day; before++)
    spell = afterDay(spell, letGo, given, before);
  return spell;
}

/** The spell after a day, and whether the bed was let go on it. */
function afterDay(
  { days, isGone }: DrySpell,
  letGo: LetGo,
  { firstDay, arriving, dayInSeason }: LetGoGiven,
  day: number,
): DrySpell {
  const place = dayInSeason[day] as number;
  const date = day + firstDay;
  const goes = days >= letGo.dryDays && date >= dateInSeason(letGo.from, date - place + 1);
  return {
    days: (arriving[day] as number) < DRY ? days + 1 : 0,
    isGone: place > 0 && ((place > 1 && isGone) || goes),
  };
}

/** The first day of that date on or after a season's start; never where the text is no date. */
function dateInSeason(from: string, start: number): number {
  const { year } = calendarDate(start);
  const same = dayInYear(from, year);
  if (same === null) return Infinity;
  return same >= start ? same : (dayInYear(from, year + 1) ?? Infinity);
}
