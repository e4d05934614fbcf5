// What the sentences of today say: every number in them is the line's own.

import { optionsOf } from "../../../src/cli/report.ts";
import type { WeekSpan } from "../../../src/kinds/season/week.ts";
import type { DayLine } from "../../../src/season/day-lines.ts";
import {
  amountOf,
  daysOf,
  leadOf,
  lineWhy,
  lineWords,
  refusalWords,
  type Voice,
} from "../../../src/telling/today.ts";
import { parseIsoDate } from "../../../src/units/calendar.ts";
import { showQuantity } from "../../../src/units/show.ts";
import { isLong } from "../../tries.ts";
import { property } from "../harness.ts";
import { type Place, placeOf } from "../place.ts";
import { type Worked, workedOut } from "../worked.ts";

const UNITS: Readonly<Record<string, number>> = {
  gal: 0.003785411784,
  "imp gal": 0.00454609,
  "fl oz": 0.0000295735295625,
  L: 0.001,
  mL: 0.000001,
  "m³": 1,
  "ft³": 0.028316846592,
};
const TIMES: Readonly<Record<string, number>> = { day: 86400, days: 86400, h: 3600, min: 60, s: 1 };

/** After the hour of watering [s]. */
const LATE = 3 * 3600;

const plain = (text: string): string => text.replaceAll("\u00a0", " ");

/** Volumes in a text, in order [m3]; "40 of 75 gal" is two of them. */
function volumesIn(text: string): readonly number[] {
  const found = plain(text).matchAll(/([\d.,]+)(?: of ([\d.,]+))? (imp gal|gal|fl oz|mL|L|m³|ft³)(?![a-z])/g);
  return [...found].flatMap(([, first, second, unit = ""]) =>
    [first, second].flatMap((number) =>
      number === undefined ? [] : [Number(number.replaceAll(",", "")) * (UNITS[unit] ?? Number.NaN)],
    ),
  );
}

/** Times in a text, in order [s]. */
function timesIn(text: string): readonly number[] {
  const found = plain(text).matchAll(/(?<![\d.:])((?:[\d.,]+ (?:days?|h|min|s)(?![a-z])(?: (?=\d))?)+)/g);
  return [...found].map(([all]) =>
    [...all.matchAll(/([\d.,]+) (days?|h|min|s)(?![a-z])/g)].reduce(
      (sum, [, number = "", unit = ""]) =>
        sum + Number(number.replaceAll(",", "")) * (TIMES[unit] ?? Number.NaN),
      0,
    ),
  );
}

const tripsIn = (text: string): readonly number[] =>
  [...plain(text).matchAll(/([\d.,]+) trips?(?![a-z])/g)].map(([, count = ""]) =>
    Number(count.replaceAll(",", "")),
  );

/** As near as three figures, water in round steps, or half a minute, can be. */
const near = (said: number | undefined, is: number, least = 0): boolean =>
  said !== undefined && Math.abs(said - is) <= Math.max(0.0251 * is, least);

const isAll = (said: readonly number[], are: readonly number[], least = 0): boolean =>
  said.length === are.length && are.every((one, at) => near(said[at], one, least));

/** What the words after the name of a line's bed must tell, in order. */
function expectedOf(line: DayLine, amount: string) {
  const { goes, volume, asked, why } = line;
  const many = goes.length > 1;
  // Where both read alike it is told what is wanting.
  const gives = amount.startsWith("all but") ? asked - volume : volume;
  return {
    volumes: [gives, ...(why === null ? [] : [asked]), ...goes.flatMap((go) => (many ? [go.volume] : []))],
    times: goes.flatMap(({ wait, time }) => (wait > 0 ? [wait, time] : [time])),
    trips: goes.flatMap(({ trips }) => (trips > 0 ? [trips] : [])),
  };
}

function voiceOf(worked: Worked, span: WeekSpan): Voice {
  return {
    show: (si, measure) => showQuantity(si, measure, optionsOf(worked)),
    locale: "en-US",
    titleOf: (id) => worked.worksheet.cards.find((card) => card.id === id)?.title ?? id,
    driverOf: (bed) => span.drivers[bed] ?? "either",
    tanksOf: (bed) => span.tanks[bed],
    tankBy: (by) => span.tankBy[by],
  };
}

const spanOf = (worked: Worked): WeekSpan | null =>
  worked.value("season.week_span") as unknown as WeekSpan | null;

const OF_WATER: ReadonlySet<unknown> = new Set(["storage", "loss", "rain"]);

/** Whether a reason names just the tanks whose water comes to its bed, where there are others beside them. */
function wrongTanks(
  span: WeekSpan,
  bed: string,
  why: string | null,
  said: string,
  voice: Voice,
): string | null {
  const tanks = span.tanks[bed];
  if (!tanks) return `${bed} has no tanks`;
  const all = new Set(Object.values(span.tanks).flatMap(({ reach }) => reach));
  const words = said.slice(voice.titleOf(bed).length);
  const named = [...all].filter((id) => words.includes(voice.titleOf(id)));
  const strange = named.find((id) => !tanks.reach.includes(id));
  if (strange !== undefined) return `${bed} takes nothing from ${strange}: ${said}`;
  const wanted = OF_WATER.has(why) && tanks.others && tanks.reach.length <= 2 ? tanks.reach : [];
  const missing = wanted.find((id) => !named.includes(id));
  return missing === undefined ? null : `${missing} is not named: ${said}`;
}

function wrongLine(line: DayLine, voice: Voice): string | null {
  const title = `${voice.titleOf(line.bed)}: `;
  const whole = lineWords(line, voice);
  if (!whole.startsWith(title)) return `the bed is not named: ${whole}`;
  // Why it gets less is words of its own, after it.
  const said = whole.slice(title.length).replace(/ \([^()]*\)$/, "");
  const { volumes, times, trips } = expectedOf(line, amountOf(line, voice.show));
  if (!isAll(volumesIn(said), volumes)) return `${volumes} m3, but: ${said}`;
  if (!isAll(timesIn(said), times, 30)) return `${times} s, but: ${said}`;
  if (!isAll(tripsIn(said), trips)) return `${trips} trips, but: ${said}`;
  return null;
}

/** Its own place as of a day in its season, where none is given. */
const dayed = (place: Place): Place => ({
  ...place,
  worksheet: {
    ...place.worksheet,
    cards: place.worksheet.cards.map((card) =>
      card.kind === "site"
        ? { ...card, givens: { ...card.givens, today: { value: "2002-07-10", unit: "" } } }
        : card,
    ),
  },
});

const withDay = (worked: Worked): Worked =>
  spanOf(worked) ? worked : workedOut(dayed(placeOf(worked.seed)));

property(
  "every amount, time, wait and trip in a sentence of today is its line's own",
  (own) => {
    const worked = withDay(own);
    const span = spanOf(worked);
    if (!span) return null;
    const voice = voiceOf(worked, span);
    for (const line of span.lines) {
      const wrong =
        wrongLine(line, voice) ?? wrongTanks(span, line.bed, line.why, lineWhy(line, voice), voice);
      if (wrong) return wrong;
    }
    for (const one of span.refused) {
      const wrong = wrongTanks(span, one.bed, one.why, refusalWords(one, voice), voice);
      if (wrong) return wrong;
    }
    return wrongLead(span, voice) ?? wrongDays(span, voice) ?? wrongDays(span, voice, span.waterAt + LATE);
  },
  { every: isLong ? 3 : 6 },
);

const COUNTS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

function wrongLead(span: WeekSpan, voice: Voice): string | null {
  const today = parseIsoDate(span.first) ?? 0;
  const said = leadOf(span, today, voice);
  const own = span.lines.filter(({ day }) => day === today);
  const refused = span.refused.some(({ day }) => day === today);
  if (own.length === 0) {
    if (/^Today /.test(said) !== refused) return `refused ${refused}, but: ${said}`;
    const [next] = span.lines;
    if (!refused && next && !near(volumesIn(said)[0], next.volume)) return `${next.volume} m3, but: ${said}`;
    return null;
  }
  const all = own.reduce((sum, { volume }) => sum + volume, 0);
  if (own.length > 3)
    return said.startsWith(`Today ${COUNTS[own.length] ?? own.length} beds`) && near(volumesIn(said)[0], all)
      ? null
      : `${all} m3 for ${own.length} beds, but: ${said}`;
  const volumes = own.flatMap(({ volume, asked, why }) => (why === null ? [volume] : [volume, asked]));
  const little = /all but/.test(said);
  if (!little && !isAll(volumesIn(said).slice(0, volumes.length), volumes))
    return `${volumes} m3, but: ${said}`;
  const [only] = own;
  if (own.length > 1 || !only) return null;
  if (only.tankfuls > 1 !== / goes:/.test(said)) return `${only.tankfuls} tankfuls, but: ${said}`;
  if (only.tankfuls <= 1) return null;
  if (!said.includes(`in ${COUNTS[only.tankfuls] ?? only.tankfuls} goes`))
    return `${only.tankfuls} tankfuls, but: ${said}`;
  return near(volumesIn(said).at(-1), only.goes[0]?.volume ?? 0) ? null : `the first go, but: ${said}`;
}

/** A day's head is the sum of one's own time; each go has its row, and none is begun before its tank is full again, or before now. */
function wrongDays(span: WeekSpan, voice: Voice, now = 0): string | null {
  const [first, last] = [parseIsoDate(span.first) ?? 0, parseIsoDate(span.last) ?? 0];
  for (const { day, said, rows } of daysOf(span, first, last, voice, now)) {
    const own = span.lines.filter((line) => line.day === day);
    const hands = own.reduce((sum, line) => sum + line.hands, 0);
    if (own.length > 0 && !near(timesIn(said)[0], hands, 30)) return `${hands} s of hands, but: ${said}`;
    const goes = rows.flatMap((row) => (row.kind === "go" ? [row] : []));
    if (goes.length !== own.reduce((sum, line) => sum + line.goes.length, 0))
      return `${goes.length} rows on day ${day - first}`;
    const begins = day === first ? Math.max(span.waterAt, now) : span.waterAt;
    let free = begins;
    for (const { at, timed, amount, said: words } of goes) {
      if (at < free - 1e-6 || at < begins + timed.go.wait - 1e-6) return `begun at ${at}, free from ${free}`;
      free = at + timed.go.setUp + timed.go.time;
      if (!near(timesIn(words)[0], timed.go.time, 30)) return `${timed.go.time} s, but: ${words}`;
      if (!amount.startsWith("a little") && !near(volumesIn(amount)[0], timed.go.volume))
        return `${timed.go.volume} m3, but: ${amount}`;
    }
    const waits = rows.filter(({ kind }) => kind === "wait");
    for (const row of waits) {
      const after = rows[rows.indexOf(row) + 1];
      if (after?.kind !== "go" || !near(timesIn(row.said)[0], after.timed.filling, 30))
        return `not its wait: ${row.said}`;
    }
  }
  return null;
}
