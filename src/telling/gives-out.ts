// What gives out first: one sentence with whole days of all seasons in it, and a short one for the top of the page.

import type { Driver } from "../network/bounds.ts";
import type { GivesOut, Relief, ShortDays } from "../season/relief.ts";
import { type Piece, type Sentence, value } from "./asked.ts";
import { boundThing } from "./words/bounds.ts";
import { capital, inSeasons, listed, shortDays, wholeDays } from "./words/lists.ts";

const RAIN: Readonly<Record<number, string>> = {
  0.75: "with three quarters of the rain",
  0.5: "with half of the rain",
};

function ofAll(saved: number, { days: all, seasons }: ShortDays): string {
  const span = inSeasons(seasons);
  if (saved === all) return all === 1 ? `the only short day ${span}` : `all ${shortDays(all)} ${span}`;
  return `${saved} of ${shortDays(all)} ${span}`;
}

/** What one or two of them take away at most: of ten days or fewer a tenth is no whole day, so none. */
function tooLittle({ days: all }: ShortDays): string {
  if (all === 1) return "does not take away the only short day";
  return all <= 10
    ? `takes away none of ${shortDays(all)}`
    : `takes away less than a tenth of ${shortDays(all)}`;
}

function single(first: readonly Relief[], short: ShortDays, driver: Driver): string {
  const things = first.map(({ bounds }) => boundThing(bounds[0] ?? "", driver));
  const cost = ofAll(first[0]?.saved ?? 0, short);
  return things.length === 1
    ? `${things[0]} gives out first: it costs ${cost}.`
    : `${listed(things)} give out first alike: each costs ${cost}.`;
}

function pairs(first: readonly Relief[], short: ShortDays, driver: Driver): string {
  const said = first.map(({ bounds }) => listed(bounds.map((bound) => boundThing(bound, driver))));
  const cost = ofAll(first[0]?.saved ?? 0, short);
  return `${said.join(", or ")} give out together: only both mended take away ${cost}.`;
}

/** "Storage gives out first: it costs 12 of 14 short days in 4 seasons." */
export function givesOutSaid(answer: GivesOut, driver: Driver): string {
  if (answer.state === "never") return "Nothing gives out: no day is short, not even with half of the rain.";
  const { rain, short } = answer;
  const said =
    answer.state === "first"
      ? single(answer.first, short, driver)
      : answer.state === "pair"
        ? pairs(answer.first, short, driver)
        : `several things give out at once: mending one or two of them ${tooLittle(short)}.`;
  return rain === 1 ? capital(said) : `No day is short; ${RAIN[rain] ?? "with less rain"}, ${said}`;
}

/** "6 of the 8 days" of the worst season; where the worst gains nothing by it, of all seasons. */
function daysOf(first: readonly Relief[], short: ShortDays): string {
  const [{ saved, savedInWorst } = { saved: 0, savedInWorst: 0 }] = first;
  const worst = short.bySeason[short.worst] ?? 0;
  const alike = first.every((relief) => relief.savedInWorst === savedInWorst);
  if (!alike || savedInWorst < 1) return `${saved} of ${wholeDays(short.days)} ${inSeasons(short.seasons)}`;
  if (savedInWorst < worst) return `${savedInWorst} of the ${wholeDays(worst)}`;
  return worst === 1 ? "the only day" : `all ${wholeDays(worst)}`;
}

type Found = Extract<GivesOut, { first: unknown }>;

const thingsOf = ({ first }: Found, driver: Driver): readonly string[] =>
  first.map(({ bounds }) => listed(bounds.map((bound) => boundThing(bound, driver))));

const boundsSaid = (found: Found, driver: Driver): string =>
  found.state === "pair" ? thingsOf(found, driver).join(", or ") : listed(thingsOf(found, driver));

function subjectOf(found: Found, driver: Driver): string {
  const { state } = found;
  const said = thingsOf(found, driver);
  if (state === "pair") return `${said.join(", or ")} give out together`;
  return said.length === 1 ? `${said[0]} gives out first` : `${listed(said)} give out first alike`;
}

/** "all 43" beside "all 41 days", "power, 3 of the 8 days" where something else gave out; undefined where none of it moved. */
function wasFirst(answer: Found, before: GivesOut | null, driver: Driver): string | undefined {
  if (before === null || before.state === "never" || before.state === "several") return undefined;
  // How much less rain it took is said in front, and is another question.
  if (answer.rain !== before.rain) return undefined;
  const [now, then] = [daysOf(answer.first, answer.short), daysOf(before.first, before.short)];
  const things = boundsSaid(before, driver);
  if (things !== boundsSaid(answer, driver)) return `${things}, ${then}`;
  if (now === then) return undefined;
  return now.endsWith(" days") ? then.replace(/ days$/, "") : then;
}

/**
 * "Storage gives out first: 6 of the 8 days", of the worst season; its working is the whole sentence.
 * @param before what gave out before the last change, or as held
 */
export function givesOutFirst(answer: GivesOut, driver: Driver, before: GivesOut | null = null): Sentence {
  const said = (...pieces: readonly Piece[]): Sentence => ({ id: "gives_out", lead: false, pieces });
  if (answer.state === "never") return said("Nothing gives out, not even with half of the rain");
  const start = answer.rain === 1 ? "" : `No day is short; ${RAIN[answer.rain] ?? "with less rain"}, `;
  const head = (text: string): string => (start === "" ? capital(text) : `${start}${text}`);
  if (answer.state === "several") return said(head("several things give out at once"));
  const tone = answer.rain === 1 ? "trouble" : "plain";
  const text = daysOf(answer.first, answer.short);
  const was = wasFirst(answer, before, driver);
  const more = was === undefined ? {} : { before: was };
  return said(
    head(`${subjectOf(answer, driver)}: `),
    value("season.binding", tone, { text, was: null, ...more }),
  );
}
