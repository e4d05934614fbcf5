// What to water today and in the week, in words: the same on the screen, on paper and on the command line.

import type { DayBound, Driver } from "../network/bounds.ts";
import type { BedTanks } from "../season/bed-tanks.ts";
import type { ByHand } from "../season/by-hand.ts";
import { hoursOf, type TimedGo } from "../season/day-hours.ts";
import type { DayLine, Go, Refusal } from "../season/day-lines.ts";
import type { Opening } from "../season/openings.ts";
import type { Spared } from "../season/spared.ts";
import type { WeekAnswer } from "../season/week-plan.ts";
import { weekday } from "../units/calendar.ts";
import { SHORT_WEEKDAYS } from "../units/calendar-names.ts";
import { clockText } from "../units/clock.ts";
import type { Show } from "./bed-day.ts";
import { whyNot } from "./named-tanks.ts";
import { listed } from "./words/lists.ts";

/** What words are made with. */
export type Voice = {
  readonly show: Show;
  readonly locale: string;
  readonly titleOf: (id: string) => string;
  readonly driverOf: (bed: string) => Driver;
  /** Where a bed's water comes from, and the tank of a delivery or carry; undefined: not known. */
  readonly tanksOf: (bed: string) => BedTanks | undefined;
  readonly tankBy: (by: string) => string | undefined;
};

/** What is told of a plan. */
export type ToldPlan = {
  readonly spared: readonly Spared[];
  readonly lines: readonly DayLine[];
  readonly refused: readonly Refusal[];
  readonly opens: readonly Opening[];
  readonly waterAt: number;
};

type ToldLines = Pick<ToldPlan, "lines" | "refused">;

const NO_BREAK = "\u00a0";
const COUNTS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const counted = (count: number): string => COUNTS[count] ?? String(count);

/** "40 of 75 gal"; "all but 0.3 gal of 75 gal" where both read alike. */
export function partOf(given: number, asked: number, show: Show): string {
  const [has, wants] = [show(given, "volume"), show(asked, "volume")];
  if (has === wants) return `all but ${show(asked - given, "volume")} of ${wants}`;
  const unit = wants.slice(wants.indexOf(NO_BREAK));
  return has.endsWith(unit) ? `${has.slice(0, -unit.length)} of ${wants}` : `${has} of ${wants}`;
}

/** What a line gives, and of how much where it is not all. */
export const amountOf = ({ volume, asked, why }: DayLine, show: Show): string =>
  why === null ? show(volume, "volume") : partOf(volume, asked, show);

/** What a plan gives a bed on a day: "40 of 110 gal", "none of 75 gal"; "" where nothing is asked for. */
export function onDay({ lines, refused }: ToldLines, bed: string, day: number, show: Show): string {
  const isNow = (one: { readonly bed: string; readonly day: number }) => one.bed === bed && one.day === day;
  const line = lines.find(isNow);
  if (line) return amountOf(line, show);
  const none = refused.find(isNow);
  return none ? `none of ${show(none.asked, "volume")}` : "";
}

/** What another plan gave a bed on that day where it was other than now, "nothing" where that asked for nothing; "" where it was the same. */
export function wasOnDay(
  before: ToldLines | null,
  now: ToldLines,
  bed: string,
  day: number,
  show: Show,
): string {
  if (!before) return "";
  const [was, is] = [before, now].map((plan) => onDay(plan, bed, day, show));
  return was === is ? "" : was || "nothing";
}

/** "Pump and wand, 10 min", "Two cans, 5 trips, 12 min". */
function meansOf({ by, time, trips }: Go, { show, titleOf }: Voice): string {
  const rounds = trips > 0 ? `, ${show(trips, "count")} ${trips === 1 ? "trip" : "trips"}` : "";
  return `${titleOf(by)}${rounds}, ${show(time, "duration")}`;
}

const whyOf = (bed: string, why: DayBound | null, { driverOf, tanksOf, titleOf }: Voice): string =>
  whyNot(why, { driver: driverOf(bed), tanks: tanksOf(bed), titleOf });

/** The tank by its title. */
function tankWords(by: string, { tankBy, titleOf }: Voice): string {
  const tank = tankBy(by);
  return tank === undefined ? "the tank" : titleOf(tank);
}

/** "wait 2 h for Tub by the tunnel to fill" */
const waitWords = ({ go, filling }: TimedGo, voice: Voice): string =>
  `wait ${voice.show(filling, "duration")} for ${tankWords(go.by, voice)} to fill`;

/** "Tub by the tunnel at 1.5 in, full 1 h 50 min later". */
export const openWords = ({ tank, level, time }: Opening, { show, titleOf }: Voice): string =>
  `${titleOf(tank)} at ${show(level, "depth")}, full ${show(time, "duration")} later`;

export const openTitle = (line: string, { titleOf }: Voice): string => `Open ${titleOf(line)}`;

/** "Long bed gets none of its 75 gal: the tanks run out." */
export const refusalWords = ({ bed, asked, why }: Refusal, voice: Voice): string =>
  `${voice.titleOf(bed)} gets none of its ${voice.show(asked, "volume")}: ${whyOf(bed, why, voice)}.`;

/** "Long bed: 65 of 110 gal: 23 gal with Pump and wand, 6 min; 42 gal 2 h later with ..." */
export function lineWords(line: DayLine, voice: Voice): string {
  const isOne = line.goes.length === 1;
  const goes = line.goes.map((go) => {
    const amount = isOne ? "" : `${voice.show(go.volume, "volume")} `;
    const later = go.wait > 0 ? `${voice.show(go.wait, "duration")} later ` : "";
    return `${amount}${later}with ${meansOf(go, voice)}`;
  });
  const why = line.why === null ? "" : ` (${whyOf(line.bed, line.why, voice)})`;
  const parts = line.goes.length > 1 ? `: ${goes.join("; ")}` : ` ${goes.join("")}`;
  return `${voice.titleOf(line.bed)}: ${amountOf(line, voice.show)}${parts}${why}`;
}

/** Why a line gives less than is asked for; "" where it gives all. */
export const lineWhy = (line: DayLine, voice: Voice): string =>
  line.why === null
    ? ""
    : `It asks for ${voice.show(line.asked, "volume")}: ${whyOf(line.bed, line.why, voice)}.`;

const NOTHING_ASKS = "Nothing asks for water in the coming week.";
/** Where there is no bed, or parts are so wrong that none is left. */
export const NO_BED_LEFT =
  "No bed is left to speak of: none stands on the sheet, or something is wrong with it.";

/** How many beds are named one by one. */
const NAMED = 3;

/** "Today Long bed, 75 gal in two goes: 42 gal at once from Tub by the tunnel." */
export function leadOf({ lines, refused, spared, opens }: ToldPlan, today: number, voice: Voice): string {
  const own = lines.filter(({ day }) => day === today);
  const [only] = own;
  if (!only) return withoutLines({ refused, spared, lines }, today, voice);
  if (own.length > NAMED) {
    const all = own.reduce((sum, { volume }) => sum + volume, 0);
    return `Today ${counted(own.length)} beds, ${voice.show(all, "volume")} in all.`;
  }
  if (own.length > 1)
    return `Today ${listed(own.map((line) => `${voice.titleOf(line.bed)} ${amountOf(line, voice.show)}`))}.`;
  const said = `Today ${voice.titleOf(only.bed)}, ${amountOf(only, voice.show)}`;
  if (only.tankfuls > 1) {
    const [first] = only.goes;
    const from = first ? ` from ${tankWords(first.by, voice)}` : "";
    return `${said} in ${counted(only.tankfuls)} goes: ${voice.show(first?.volume ?? 0, "volume")} at once${from}.`;
  }
  if (only.why !== null) return `${said}: ${whyOf(only.bed, only.why, voice)}.`;
  return opens.length > 0 ? `${said}, once the hose has filled the tank.` : `${said}.`;
}

/** As leadOf, once something of today is done. */
export function leadAfter(plan: ToldPlan, today: number, voice: Voice): string {
  const left = plan.lines.some(({ day }) => day === today);
  return left ? leadOf(plan, today, voice).replace(/^Today /, "Still ") : "What today asks for is done.";
}

function withoutLines(
  { refused, spared, lines }: Pick<ToldPlan, "refused" | "spared" | "lines">,
  today: number,
  voice: Voice,
): string {
  const none = refused.find(({ day }) => day === today);
  if (none) return `Today ${refusalWords(none, voice)}`;
  const rained = spared.find(({ day }) => day === today);
  if (rained) return `Nothing asks for water today. ${sparedWords(rained, voice)}`;
  const [next] = lines;
  if (!next) return NOTHING_ASKS;
  return `Nothing asks for water today; next ${voice.titleOf(next.bed)}, ${amountOf(next, voice.show)}.`;
}

/** "20 min of yours, done 10:40 am"; "nothing asks". */
function dayWords(goes: readonly TimedGo[], isRefused: boolean, { show, locale }: Voice): string {
  const last = goes[goes.length - 1];
  if (!last) return isRefused ? "no water" : "nothing asks";
  const hands = goes.reduce((sum, { go }) => sum + go.hands, 0);
  return `${show(hands, "duration")} of yours, done ${clockText(last.until, locale)}`;
}

export type ToldRow =
  | { readonly kind: "wait"; readonly said: string }
  | { readonly kind: "spared"; readonly said: string }
  | { readonly kind: "none"; readonly said: string; readonly bed: string; readonly day: number }
  | {
      readonly kind: "go";
      readonly at: number;
      readonly timed: TimedGo;
      readonly amount: string;
      readonly said: string;
    };

/** The rows of a day, in order. */
function rowsOf(
  goes: readonly TimedGo[],
  { refused, spared }: Pick<ToldPlan, "refused" | "spared">,
  voice: Voice,
): readonly ToldRow[] {
  const rows = goes.flatMap((timed): readonly ToldRow[] => {
    const { line, go, from, filling } = timed;
    const isLast = line.goes[line.goes.length - 1] === go;
    const short = isLast && line.why !== null ? `; ${whyOf(line.bed, line.why, voice)}` : "";
    const amount = line.goes.length === 1 ? amountOf(line, voice.show) : voice.show(go.volume, "volume");
    const all = short !== "" && line.goes.length > 1 ? `; ${amountOf(line, voice.show)} in all` : "";
    const wait = filling > 0 ? [{ kind: "wait" as const, said: waitWords(timed, voice) }] : [];
    return [...wait, { kind: "go", at: from, timed, amount, said: `${meansOf(go, voice)}${all}${short}` }];
  });
  const none = refused.map((one) => ({
    kind: "none" as const,
    said: refusalWords(one, voice),
    bed: one.bed,
    day: one.day,
  }));
  const rained = spared.map((one) => ({ kind: "spared" as const, said: sparedWords(one, voice) }));
  return [...rows, ...none, ...rained];
}

export type ToldDay = { readonly day: number; readonly said: string; readonly rows: readonly ToldRow[] };

/**
 * Every day of a plan, in order, those on which nothing asks too.
 *
 * @param now time of the first day before which nothing of it can be done any more [s after midnight]
 */
export function daysOf(
  plan: ToldPlan,
  first: number,
  last: number,
  voice: Voice,
  now = 0,
): readonly ToldDay[] {
  return Array.from({ length: last - first + 1 }, (_, place) => {
    const day = first + place;
    const goes = hoursOf(
      plan.lines.filter((line) => line.day === day),
      place === 0 ? Math.max(plan.waterAt, now) : plan.waterAt,
    );
    const refused = plan.refused.filter((one) => one.day === day);
    const spared = plan.spared.filter((one) => one.day === day);
    return {
      day,
      said: dayWords(goes, refused.length > 0, voice),
      rows: rowsOf(goes, { refused, spared }, voice),
    };
  });
}

const dayOf = (date: number): string => SHORT_WEEKDAYS[weekday(date) - 1] ?? "";

/** "Small tunnel can wait to Sat: 0.8 in of rain expected Thu." */
export function sparedWords({ bed, until, rain, rainOn }: Spared, { titleOf, show }: Voice): string {
  const waits = until === null ? "needs none this week" : `can wait to ${dayOf(until)}`;
  return `${titleOf(bed)} ${waits}: ${show(rain, "rain")} of rain expected ${dayOf(rainOn)}.`;
}

/** Which rain the plan reckons with. */
export function rainsWords(rains: WeekAnswer["rains"], { show }: Voice): string {
  if (rains.length === 0)
    return "If no rain comes. After a good rain that is not noted yet, leave the next watering out.";
  const days = rains.map(({ day, rain }) => `${show(rain, "rain")} on ${dayOf(day)}`);
  return `Reckons with the rain that you expect: ${listed(days)}. If it stays away, take it out of your forecast.`;
}

/** What the plan does without; "" where nothing is broken. */
export function brokenWords(broken: readonly string[], { titleOf }: Pick<Voice, "titleOf">): string {
  if (broken.length === 0) return "";
  const [are, them] = broken.length === 1 ? ["is", "it"] : ["are", "them"];
  return `${listed(broken.map(titleOf))} ${are} noted broken: planned without ${them} until noted mended.`;
}

/** What the plan counts on its grower for: "Counts on Battery being charged in the house each night." */
export function byHandWords(
  byHand: readonly ByHand[],
  { titleOf }: Pick<Voice, "titleOf">,
): readonly string[] {
  return byHand.flatMap(({ battery, way, days }) => {
    if (way === "mains") return [`Counts on ${titleOf(battery)} being charged in the house each night.`];
    if (way === "swapped")
      return [`Counts on ${titleOf(battery)} being swapped in the evening for the one at the panel.`];
    const on = listed(days.map(dayOf));
    return days.length === 0 ? [] : [`Counts on ${titleOf(battery)} being carried to the panel on ${on}.`];
  });
}

/** What is said of a note: "Long bed, 42 gal". */
export const gaveWords = (bed: string, volume: string): string => `${bed}, ${volume}`;

export const openedWords = (line: string): string => `${line} opened`;
