// What holds of today's and the week's lines, whatever is in the tanks: no line promises more than there is.

import { dryWeather } from "../../../src/season/coming-days.ts";
import { linesOf } from "../../../src/season/day-lines.ts";
import type { BedDay } from "../../../src/season/day-log.ts";
import { STEPPING } from "../../../src/season/gravity.ts";
import type { SeasonInput } from "../../../src/season/input.ts";
import { goingOn } from "../../../src/season/moment.ts";
import { knownBeds, momentToday } from "../../../src/season/moment-today.ts";
import { prepareSeason, runDays } from "../../../src/season/run.ts";
import { seasonAround } from "../../../src/season/spans.ts";
import type { SeasonState } from "../../../src/season/state.ts";
import { usualMorning } from "../../../src/season/usual-morning.ts";
import { type WeekGiven, weekPlan } from "../../../src/season/week-plan.ts";
import { type Dice, dice } from "../dice.ts";
import { property } from "../harness.ts";

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
  return {
    today,
    days: DAYS,
    drying: "usual",
    levels: some(plan.tanks, ({ vessel }) => vessel.height * d.pick([0, 0.05, 0.2, 0.5, 1])),
    charges: some(plan.batteries, () => d.pick([0, 0.1, 0.5, 1])),
    lastSoaked: some(plan.beds, () => today - d.whole(0, 20)),
  };
}

/** The season engine's own run of the same seven days, apart from the plan. */
function engineWeek(plan: SeasonInput, whole: SeasonState, given: WeekGiven) {
  const { today } = given;
  const { record } = whole;
  const moment = momentToday(whole, given, (date) => usualMorning(plan, record, date));
  const weather = dryWeather(record, whole.eto, { today, last: today + DAYS - 1 }, "usual");
  const going = goingOn(plan, moment, weather, knownBeds(whole));
  runDays(going.state, STEPPING, { first: going.first, last: going.state.length - 1 });
  return { ...going, moment };
}

const over = (is: number, most: number): boolean => is > most * (1 + 1e-9) + 1e-12;

/** What the first goes of a day take of a tank, against what stood in it the evening before. */
function overdrawn(
  { state, first, moment }: ReturnType<typeof engineWeek>,
  day: number,
  goes: readonly Go[],
) {
  for (const [place, { id }] of state.tanks.parts.entries()) {
    const taken = goes
      .filter(({ by, wait }) => wait === 0 && state.sources.find((one) => one.id === by)?.tank === place)
      .reduce((sum, { volume }) => sum + volume, 0);
    const stood =
      day === 0 ? (moment.tanks[id] as number) : (state.stored[place]?.[first + day - 1] as number);
    // What rains that day comes first only under use_first; these days are dry.
    if (over(taken, stood)) return `${id} gives ${taken} on day ${day}, of ${stood} that stand in it`;
  }
  return null;
}

type Go = { readonly by: string; readonly volume: number; readonly wait: number };

function wrongOf(
  plan: SeasonInput,
  week: ReturnType<typeof engineWeek>,
  beds: readonly Logged[],
): string | null {
  const { state, first, moment } = week;
  for (let day = 0; day < DAYS; day++) {
    const goes = beds.flatMap(({ days }) =>
      (days[day]?.from ?? []).map(({ id, volume, wait }) => ({ by: id, volume, wait })),
    );
    const said = overdrawn(week, day, goes);
    if (said) return said;
    const lines = linesOf(beds).filter(({ day: on }) => on === moment.date + day);
    const byHand = lines.filter(({ trips }) => trips > 0).reduce((sum, { time }) => sum + time, 0);
    if (over(byHand, plan.minutesPerDay ?? Infinity)) return `${byHand} s of carrying on day ${day}`;
    for (const [place, part] of state.batteries.parts.entries()) {
      const used = state.batteries.books[place]?.used[first + day] as number;
      const held =
        day === 0 ? moment.batteries[part.id]?.charge : state.batteries.books[place]?.stored[first + day - 1];
      if (over(used, held ?? 0)) return `${part.id} gives ${used} J on day ${day}, of ${held}`;
    }
    for (const { id, days } of beds) {
      const bed = state.beds.find(({ part }) => part.id === id);
      const ran = bed?.given[first + day] as number;
      const told = lines.filter((line) => line.bed === id).reduce((sum, { volume }) => sum + volume, 0);
      const asked = days[day]?.asked ?? 0;
      if (over(told, ran)) return `${id} is told ${told} on day ${day}, the season gives it ${ran}`;
      const means = bed?.sources.length ?? 0;
      if (ran - told > (asked * means) / 20 + 1e-12) return `${id} is told ${told} on day ${day} of ${ran}`;
    }
  }
  return null;
}

type Logged = { readonly id: string; readonly days: readonly BedDay[] };

property(
  "no line of today or the week promises more than its tank, charge and hands give that very day",
  (worked) => {
    const plan = worked.value("season.plan") as SeasonInput | null;
    const record = worked.records.find(({ key }) => key === worked.word("weather.record_in_use"));
    if (!plan || !record) return null;
    const whole = prepareSeason(plan, record);
    const given = givenOf(dice(worked.seed), plan, record.firstDay);
    if ("failed" in whole || !given) return null;
    const answer = weekPlan(plan, record, given);
    if ("failed" in answer) return answer.failed;
    return wrongOf(plan, engineWeek(plan, whole, given), answer.beds);
  },
);
