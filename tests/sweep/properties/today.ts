// What holds of today's and the week's lines, whatever is in the tanks: no line promises more than there is.

import { dryWeather } from "../../../src/season/coming-days.ts";
import type { DayLine } from "../../../src/season/day-lines.ts";
import type { BedDay } from "../../../src/season/day-log.ts";
import { type Forecast, NO_FORECAST, recordedForecast } from "../../../src/season/forecast.ts";
import { STEPPING } from "../../../src/season/gravity.ts";
import type { SeasonInput } from "../../../src/season/input.ts";
import { goingOn } from "../../../src/season/moment.ts";
import { knownBeds, momentToday } from "../../../src/season/moment-today.ts";
import { owedToday } from "../../../src/season/owed.ts";
import { prepareSeason, runDays } from "../../../src/season/run.ts";
import { seasonAround } from "../../../src/season/spans.ts";
import type { SeasonState } from "../../../src/season/state.ts";
import { usualMorning } from "../../../src/season/usual-morning.ts";
import { waysOf } from "../../../src/season/ways.ts";
import { type WeekAnswer, type WeekGiven, weekPlan } from "../../../src/season/week-plan.ts";
import { expecting, isLikely } from "../../../src/season/years-ahead.ts";
import { DAY, HOUR } from "../../../src/units/constants.ts";
import { type Dice, dice } from "../dice.ts";
import { property } from "../harness.ts";
import type { Worked } from "../worked.ts";

const DAYS = 7;

/** A random day of the season, with some tanks dipped and some beds soaked. */
function givenOf(d: Dice, plan: SeasonInput, firstDay: number): WeekGiven | null {
  const days = Array.from({ length: 365 }, (_, day) => firstDay + 365 + day).filter((day) =>
    seasonAround(plan, day),
  );
  if (days.length === 0) return null;
  const today = d.pick(days);
  const some = <Part extends { readonly id: string }>(parts: readonly Part[], of: (part: Part) => number) =>
    Object.fromEntries(parts.filter(() => d.chance(0.7)).map((part) => [part.id, of(part)]));
  const gave = plan.beds.filter(() => d.chance(0.2));
  return {
    today,
    days: DAYS,
    ...(d.chance(0.5) && { dawn: d.pick([0, 6 * HOUR]) }),
    happened: gave.map(({ id }) => ({
      date: today,
      minute: d.pick([null, 360, 1200]),
      side: null,
      what: "gave" as const,
      where: id,
      amount: d.pick([0.01, 0.1]),
      by: null,
    })),
    drying: "usual",
    levels: some(plan.tanks, ({ vessel }) => vessel.height * d.pick([0, 0.05, 0.2, 0.5, 1])),
    charges: some(plan.batteries, () => d.pick([0, 0.1, 0.5, 1])),
    lastSoaked: some(plan.beds, () => today - d.whole(0, 20)),
    ...(d.chance(0.5) && { forecast: forecastOf(d, today) }),
  };
}

/** Rain that is expected of some of the days, likely or not. */
function forecastOf(d: Dice, today: number): Forecast {
  const days = Array.from({ length: DAYS }, (_, day) => today + day).filter(() => d.chance(0.4));
  return Object.fromEntries(
    days.map((day) => [
      day,
      { rain: d.pick([0, 0.004, 0.03]), chance: d.pick([null, 0.2, 0.5, 1]), highest: null },
    ]),
  );
}

/** The season engine's own run of the same seven days, apart from the plan. */
function engineWeek(plan: SeasonInput, whole: SeasonState, given: WeekGiven) {
  const { today } = given;
  const { record } = whole;
  const moment = momentToday(whole, given, (date) => usualMorning(plan, record, date));
  const forecast = recordedForecast(given.forecast ?? NO_FORECAST, plan.rainScale);
  const dry = dryWeather(record, whole.eto, { today, last: today + DAYS - 1 }, "usual");
  const weather = expecting(dry, forecast, today, (day) => isLikely(forecast, today + day));
  const going = goingOn(plan, moment, weather, knownBeds(whole));
  going.state.owed = owedToday(whole, given, (date) => usualMorning(plan, record, date), weather);
  runDays(going.state, STEPPING, { first: going.first, last: going.state.length - 1 });
  return { ...going, moment, weather };
}

const over = (is: number, most: number): boolean => is > most * (1 + 1e-9) + 1e-12;

/** What the first goes of a day take of a tank, against what stood in it the evening before. */
function overdrawn(
  { state, first, moment, weather }: ReturnType<typeof engineWeek>,
  day: number,
  goes: readonly Go[],
) {
  // Under use_first what rains that day comes before it is drawn.
  if (state.input.storageRule === "use_first" && weather.rain[day] !== 0) return null;
  for (const [place, { id }] of state.tanks.parts.entries()) {
    const taken = goes
      .filter(({ by, wait }) => wait === 0 && state.sources.find((one) => one.id === by)?.tank === place)
      .reduce((sum, { volume }) => sum + volume, 0);
    const stood =
      day === 0 ? (moment.tanks[id] as number) : (state.stored[place]?.[first + day - 1] as number);
    if (over(taken, stood)) return `${id} gives ${taken} on day ${day}, of ${stood} that stand in it`;
  }
  return null;
}

type Go = { readonly by: string; readonly volume: number; readonly wait: number };

type Week = ReturnType<typeof engineWeek>;
type OnDay = {
  readonly plan: SeasonInput;
  readonly week: Week;
  readonly day: number;
  readonly lines: readonly DayLine[];
  readonly logged: readonly Logged[];
};

const sourceOf = ({ state }: Week, by: string) => state.sources.find(({ id }) => id === by);

/** One person's time, and that of each pump. */
function overworked({ plan, week, day, lines }: OnDay): string | null {
  const hands = lines.reduce((sum, line) => sum + line.hands, 0);
  if (over(hands, plan.minutesPerDay ?? Infinity)) return `${hands} s by hand on day ${day}`;
  const running = new Map<number, number>();
  for (const go of lines.flatMap(({ goes }) => goes)) {
    const pump = sourceOf(week, go.by)?.pump ?? -1;
    if (pump >= 0) running.set(pump, (running.get(pump) ?? 0) + go.time + go.setUp);
  }
  const longest = Math.max(0, ...running.values());
  return over(longest, DAY) ? `a pump runs ${longest} s on day ${day}` : null;
}

/** No go takes more than its tank, full to the brim, gives over what lies too low. */
function tooMuchAtOnce({ week, day, lines }: OnDay): string | null {
  for (const { by, volume } of lines.flatMap(({ goes }) => goes)) {
    const source = sourceOf(week, by);
    const tank = source && week.state.tanks.parts[source.tank];
    if (!tank || over(volume, tank.vessel.volume - source.under))
      return `${by} gives ${volume} at once on day ${day}`;
  }
  return null;
}

function overcharged({ week: { state, first, moment }, day }: OnDay): string | null {
  for (const [place, part] of state.batteries.parts.entries()) {
    const used = state.batteries.books[place]?.used[first + day] as number;
    const held =
      day === 0 ? moment.batteries[part.id]?.charge : state.batteries.books[place]?.stored[first + day - 1];
    if (over(used, held ?? 0)) return `${part.id} gives ${used} J on day ${day}, of ${held}`;
  }
  return null;
}

/** Each bed has one line at most, and it tells what the season's own run gives it, but for goes not worth a walk. */
function notAsRun({ week: { state, first }, day, lines, logged }: OnDay): string | null {
  for (const { id, days } of logged) {
    const bed = state.beds.find(({ part }) => part.id === id);
    const own = lines.filter((line) => line.bed === id);
    if (own.length > 1) return `${id} has ${own.length} lines on day ${day}`;
    const ran = bed?.given[first + day] as number;
    const [noted, told] = [days[day]?.given ?? 0, own[0]?.volume ?? 0];
    if (over(noted, ran) || over(ran, noted))
      return `the week gives ${id} ${noted} on day ${day}, the season ${ran}`;
    if (over(told, ran)) return `${id} is told ${told} on day ${day}, the season gives it ${ran}`;
    const unsaid = ((days[day]?.asked ?? 0) * (days[day]?.from.length ?? 0)) / 20;
    if (ran - told > unsaid + 1e-12) return `${id} is told ${told} on day ${day} of ${ran}`;
    if (own[0] && own[0].volume < own[0].asked / 20) return `${id} has a line of ${told} on day ${day}`;
  }
  return null;
}

/** The minutes of today's first go of each tank are those that the bed's card tells for as much. */
function otherMinutes(
  { week: { state, moment }, day, lines }: OnDay,
  morning: () => SeasonState,
): string | null {
  if (day > 0) return null;
  const touched = new Set(state.draws.map(({ tank }) => tank));
  const ran = new Set<number>();
  for (const { line, go } of lines.flatMap((one) => one.goes.map((each) => ({ line: one, go: each })))) {
    const bed = state.beds.find(({ part }) => part.id === line.bed);
    const source = bed?.sources.find(({ id }) => id === go.by);
    if (!bed || !source) continue;
    // A tank that was drawn from stands lower, and a pump that has run starts later under the sun.
    const isFirst = !touched.has(source.tank) && !(source.sun && ran.has(source.pump));
    touched.add(source.tank);
    ran.add(source.pump);
    if (go.wait > 0 || !isFirst) continue;
    const ways = waysOf(morning(), bed, go.volume, moment.lately.length);
    const card = ways.find(({ id }) => id === go.by);
    if (Math.abs((card?.time ?? Infinity) - go.time) > 1e-6 * go.time)
      return `${line.bed} is told ${go.time} s for ${go.volume}, its card says ${card?.time}`;
  }
  return null;
}

const CHECKS: readonly ((on: OnDay, morning: () => SeasonState) => string | null)[] = [
  ({ week, day, logged }) =>
    overdrawn(
      week,
      day,
      logged.flatMap(({ days }) =>
        (days[day]?.from ?? []).map(({ id, volume, wait }) => ({ by: id, volume, wait })),
      ),
    ),
  tooMuchAtOnce,
  overworked,
  overcharged,
  notAsRun,
  otherMinutes,
];

type Logged = { readonly id: string; readonly days: readonly BedDay[] };

/** A bed's week and its next watering come to what its lines come to, and ask for no less. */
function otherSums({ beds, lines, refused }: WeekAnswer): string | null {
  for (const { id, given, asked, outlook, waterings } of beds) {
    const own = lines.filter(({ bed }) => bed === id);
    const sum = own.reduce((all, { volume }) => all + volume, 0);
    if (over(given, sum) || over(sum, given))
      return `${id} is told ${given} in the week, its lines give ${sum}`;
    if (over(given, asked)) return `${id} gets ${given} of ${asked}`;
    const last = [...own, ...refused.filter(({ bed }) => bed === id)].sort((a, b) => a.day - b.day).at(-1);
    const isAll = last === undefined || (!("volume" in last) ? false : last.why === null);
    if (!["some", "none"].includes(outlook) && !isAll) return `${id} is told it gets ${outlook}`;
    for (const { date, asked: wants, given: gets } of waterings) {
      const begun = [...own, ...refused].find(({ bed, day }) => bed === id && day === date);
      if (over(gets, wants)) return `${id} gets ${gets} of ${wants}`;
      if (date === waterings[0]?.date && begun && (over(wants, begun.asked) || over(begun.asked, wants)))
        return `${id} wants ${wants} on a day on which its line asks for ${begun.asked}`;
    }
  }
  return null;
}

/** A random morning of a place, and the plan from it; null where there is none. */
function askedOf(worked: Worked) {
  const plan = worked.value("season.plan") as SeasonInput | null;
  const record = worked.records.find(({ key }) => key === worked.word("weather.record_in_use"));
  if (!plan || !record) return null;
  const whole = prepareSeason(plan, record);
  const given = givenOf(dice(worked.seed), plan, record.firstDay);
  return "failed" in whole || !given ? null : { plan, record, whole, given };
}

property(
  "no line of today or the week promises more than its tank, charge and hands give that very day",
  (worked) => {
    const asked = askedOf(worked);
    if (!asked) return null;
    const { plan, record, whole, given } = asked;
    const answer = weekPlan(plan, record, given);
    if ("failed" in answer) return answer.failed;
    const sums = otherSums(answer);
    if (sums) return sums;
    const week = engineWeek(plan, whole, given);
    const morning = () => goingOn(plan, week.moment, week.weather, knownBeds(whole)).state;
    for (let day = 0; day < DAYS; day++) {
      const lines = answer.lines.filter((line) => line.day === given.today + day);
      const on = { plan, week, day, lines, logged: answer.beds };
      for (const check of CHECKS) {
        const said = check(on, morning);
        if (said) return said;
      }
    }
    return null;
  },
);
