// What holds of how long it lasts, whatever the place and the state: the sentence says what the runs say, and no more.

import { fromToday } from "../../../src/season/from-today.ts";
import type { SeasonInput } from "../../../src/season/input.ts";
import type { FromToday } from "../../../src/season/odds.ts";
import { prepareSeason } from "../../../src/season/run.ts";
import { seasonAround } from "../../../src/season/spans.ts";
import { daySaid, lastsInShort, lastsSaid, restsOn } from "../../../src/telling/from-today.ts";
import { calendarDate } from "../../../src/units/calendar.ts";
import { MONTH_NAMES } from "../../../src/units/calendar-names.ts";
import { dice } from "../dice.ts";
import { property } from "../harness.ts";

/** "Aug 3", put together apart from the product's own words. */
function dayText(date: number): string {
  const { month, day } = calendarDate(date);
  return `${MONTH_NAMES[month - 1]?.slice(0, 3)} ${day}`;
}

const NUMBERS = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

function wrongOdds(from: Extract<FromToday, { kind: "odds" }>, said: string): string | null {
  const days = from.ahead.map(({ short }) => short);
  const good = days.filter((day) => day === null).length;
  if (days.every((day) => day === from.today))
    return said.includes(" short today, whatever the weather.") ? null : `all are short today, but: ${said}`;
  if (good === days.length) return said.includes("in every year") ? null : `none is short, but: ${said}`;
  const sorted = days.map((day) => day ?? Infinity).sort((a, b) => a - b);
  const half = sorted[Math.floor((sorted.length + 1) / 2) - 1] ?? Infinity;
  if (from.years < 10 !== said.includes("Rough odds")) return `${from.years} years are known, but: ${said}`;
  if (half === from.today) {
    const now = days.filter((day) => day === from.today).length;
    const all = `${days.length}`;
    const end =
      good === 0 ? "." : `; in ${NUMBERS[good] ?? good} of the ${all} no bed is short before the end.`;
    const count = `${now} of ${all}`;
    const where = from.years < 10 ? `${count} runs of past weather` : `the weather of ${count} past years`;
    const wanted = ` short today in ${where}${end}`;
    return said.includes(wanted) ? null : `${wanted}, but: ${said}`;
  }
  const middle = half === Infinity ? "the season's end" : dayText(half);
  if (!said.startsWith(`Lasts to ${middle} in a middling year.`))
    return `the middle one is ${middle}, but: ${said}`;
  const end = good === 0 ? false : `in ${NUMBERS[good] ?? good} to the end.`;
  if (end === false ? said.includes("to the end") : !said.includes(end))
    return `${good} reach the end, but: ${said}`;
  return null;
}

const titleOf = (id: string): string => `<${id}>`;

/** A bed that is said to be short today is so in a run, and never since a day that is still to come. */
function wrongBeds(from: Exclude<FromToday, { kind: "out_of_season" }>, said: string): string | null {
  const runs = from.kind === "odds" ? from.ahead : [from.usual, from.dry];
  const named = [...said.matchAll(/<([^>]+)>/g)].map(([, id]) => id as string);
  const wrong = named.find((id) => runs.every(({ beds }) => beds[id] !== from.today));
  if (wrong !== undefined) return `${wrong} is short in no run today, but: ${said}`;
  const late = Object.values(from.since).find((day) => day >= from.today);
  return late === undefined ? null : `short since ${dayText(late)}, but today is ${dayText(from.today)}`;
}

function wrongOf(from: FromToday): string | null {
  const said = lastsSaid(from, titleOf);
  const all = [said, lastsInShort(from, titleOf).more, ...restsOn(from, titleOf)].join(" ");
  if (from.kind === "out_of_season") return null;
  const beds = wrongBeds(from, said);
  if (beds !== null) return beds;
  if (from.kind === "odds") {
    for (const { short } of from.ahead) {
      const date = short ?? from.last;
      const good = from.ahead.filter((run) => run.short === null || run.short > date).length;
      const read = daySaid(from, date);
      if (read !== `${dayText(date)}: not short yet in ${good} of ${from.members}`)
        return `${good} are not, but: ${read}`;
    }
    return wrongOdds(from, said);
  }
  if (/ of \d|worst|middling year\.|chance|%/.test(said) || /\d+ of \d+|worst/.test(all))
    return `odds of made-up weather: ${all}`;
  const dry = from.dry.short;
  return dry !== null && dry > from.today && !said.includes(dayText(dry))
    ? `without rain to ${dayText(dry)}, but: ${said}`
    : null;
}

property(
  "how long it lasts is said as its runs have it, and of made-up weather no odds are told",
  (worked) => {
    const plan = worked.value("season.plan") as SeasonInput | null;
    const record = worked.records.find(({ key }) => key === worked.word("weather.record_in_use"));
    // Of a record with a gap, or without one whole season, the season says nothing either, and says why.
    if (!plan || !record || "failed" in prepareSeason(plan, record)) return null;
    const d = dice(worked.seed + 77);
    const days = Array.from({ length: 365 }, (_, day) => record.firstDay + 365 + day).filter((day) =>
      seasonAround(plan, day),
    );
    if (days.length === 0) return null;
    const given = {
      today: d.pick(days),
      drying: "usual" as const,
      dipDoubt: d.pick([0, 0.0127]),
      levels: Object.fromEntries(
        plan.tanks.map(({ id, vessel }) => [id, vessel.height * d.pick([0, 0.1, 0.5, 1])]),
      ),
      charges: {},
      lastSoaked: {},
    };
    for (const madeUp of [true, false]) {
      const from = fromToday(plan, { ...record, key: `${record.key} ${madeUp}`, madeUp }, given);
      const wrong = "failed" in from ? from.failed : wrongOf(from);
      if (wrong !== null) return wrong;
    }
    return null;
  },
  { every: 10 },
);
