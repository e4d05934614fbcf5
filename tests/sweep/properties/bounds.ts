// What holds of the blame: a short watering is told by what let least through, and power by what drives the pump.

import { shownValue } from "../../../src/graph/shown.ts";
import type { DayNotes } from "../../../src/kinds/bed/gets.ts";
import type { BedYear } from "../../../src/kinds/bed/years.ts";
import type { WeekOfBed } from "../../../src/kinds/season/week.ts";
import { BOUNDS } from "../../../src/network/bounds.ts";
import { seasonCalendar } from "../../../src/season/bed-calendar.ts";
import type { BedDay } from "../../../src/season/day-log.ts";
import type { SeasonInput } from "../../../src/season/input.ts";
import { dayNote } from "../../../src/telling/bed-day.ts";
import { outlookWords } from "../../../src/telling/week.ts";
import { whyShortThen } from "../../../src/telling/words/bounds.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked } from "../worked.ts";

const WATER = ["storage", "loss", "rain", "unroofed"];

/** The allowance under a bound's name: the four of water in reach are one, and daylight is of power. */
function placeOf(bound: string): number {
  if (WATER.includes(bound)) return 0;
  return BOUNDS.indexOf(bound === "daylight" ? "energy" : (bound as "rule"));
}

/** What is wrong with a logged day: another allowance was less by more than a hundredth of the shortfall. */
function wrongWith({ asked, given, bound, allowances }: BedDay, sources: number): string | null {
  if (!allowances || bound === null || bound === "unwatered") return null;
  const least = Math.min(...allowances);
  const blamed = allowances[placeOf(bound)] ?? asked;
  if (blamed - least > 0.0101 * (asked - least))
    return `${bound} let ${blamed} through, ${least} was the least`;
  if (sources === 1 && given - least > 1e-6 * asked) return `${given} was given, ${least} was allowed`;
  return null;
}

property(
  "what is blamed for a short watering let least of it through",
  (worked) => {
    const plan = worked.value("season.plan") as SeasonInput | null;
    const record = worked.records.find(({ key }) => key === worked.word("weather.record_in_use"));
    const years = (worked.value(`${worked.cardsOf("bed")[0]}.by_year`) ?? []) as readonly {
      readonly year: number;
    }[];
    const year = years.at(-1)?.year;
    if (!plan || !record || year === undefined) return null;
    const calendar = seasonCalendar(plan, record, year);
    if ("failed" in calendar) return null;
    for (const { id, days } of calendar.beds) {
      const sources = plan.beds.find((bed) => bed.id === id)?.wateredBy.length ?? 0;
      for (const day of days) {
        const wrong = wrongWith(day, sources);
        if (wrong !== null) return `${id} on day ${day.date}: ${wrong}`;
      }
    }
    return null;
  },
  { every: 3 },
);

/** Rows that are shown as a text of the season's or a bed's own. */
const TEXT_ROWS = ["needs_today", "lacked_by", "goes_short_by", "binding", "short_first"];

const show = (si: number) => String(si);

/** What a bed's days say, of the record and of the coming week. */
function daysOf(worked: Worked, id: string): readonly string[] {
  const notes = worked.value(`${id}.day_notes`) as DayNotes | null;
  const week = worked.value(`${id}.week`) as WeekOfBed | null;
  const titleOf = (other: string) => other;
  const named = { title: id, ways: ["one", "two", "three"] };
  const said = notes
    ? Array.from(notes.lacked, (_, day) => dayNote({ ...named, notes }, day, show) ?? "")
    : [];
  return week ? [...said, outlookWords(week, show, titleOf)] : said;
}

/** All that the sheet says of what is short: the sentences, every bed's rows, days and week, and the paper. */
function texts(worked: Worked): readonly string[] {
  const shown = (id: string) => shownValue(worked.graph, worked.worksheet, worked.results, id, OPTIONS);
  const cards = ["season", ...worked.cardsOf("bed"), ...worked.cardsOf("draw")];
  const years = worked.cardsOf("bed").flatMap((id) => {
    const each = (worked.value(`${id}.by_year`) ?? []) as readonly BedYear[];
    return each.flatMap(({ binding, driver }) => (binding === null ? [] : [whyShortThen(binding, driver)]));
  });
  const all = [
    ...worked.sentences.map(worked.textOf),
    ...cards.flatMap((id) => TEXT_ROWS.map((row) => `${id}.${row}`)).map(shown),
    ...worked.cardsOf("bed").flatMap((id) => daysOf(worked, id)),
    ...years,
  ];
  // That a pump has neither is no blame of either.
  return all.map((text) => text.replaceAll("no battery and no panel", "nothing"));
}

property("no battery is blamed where there is none", (worked) => {
  if (worked.cardsOf("battery").length > 0) return null;
  return texts(worked).find((text) => /battery|charge/i.test(text)) ?? null;
});

property("no sun on a panel and no daylight is blamed where no panel drives a pump", (worked) => {
  if (worked.cardsOf("panel").length > 0) return null;
  return texts(worked).find((text) => /\bpanel\b|daylight/i.test(text)) ?? null;
});

property("no roof is said to bring too little where none leads to anything", (worked) => {
  const roofs = worked.worksheet.cards.filter(
    ({ kind, givens }) => kind === "roof" && givens["drains_to"]?.value,
  );
  if (roofs.length > 0) return null;
  return texts(worked).find((text) => /roofs bring|want of rain/i.test(text)) ?? null;
});

property("nobody is told of a bed that is never short while it was", (worked) => {
  for (const id of worked.cardsOf("bed")) {
    const short = worked.number(`${id}.days_short`) ?? 0;
    const text = worked.word(`${id}.needs_today`);
    if (/never short/.test(text) && short > 0) return `${id} was short on ${short} days: ${text}`;
  }
  const short = worked.number("season.driest_year_days_short") ?? 0;
  const none = worked.sentences
    .map(worked.textOf)
    .find((text) => /\bno bed( that[^,]*)? went short/.test(text));
  return none !== undefined && short > 0 ? none : null;
});

property("the names of all parts that are left out stand in the sentence that counts them", (worked) => {
  const sentence = worked.sentences.find(({ id }) => id === "without");
  const listed = (worked.value("season.left_out_list") ?? []) as readonly { readonly id: string }[];
  if (listed.length === 0) return sentence ? worked.textOf(sentence) : null;
  const text = sentence ? worked.textOf(sentence) : "";
  const title = (id: string) => worked.worksheet.cards.find((card) => card.id === id)?.title ?? id;
  const missing = listed.find(({ id }) => !text.includes(title(id)));
  return missing && worked.sentences.every(({ id }) => id !== "empty")
    ? `${missing.id} is not named: ${text}`
    : null;
});
