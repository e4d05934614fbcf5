// What is said on the screen, on paper and in the readable report: nothing that its numbers do not bear out, no slip of
// grammar, and no number finer than a grower says it.

import { optionsOf } from "../../../src/cli/report.ts";
import { shortReport } from "../../../src/cli/short-report.ts";
import { cautionsOf } from "../../../src/graph/cautions.ts";
import { nodeOf } from "../../../src/graph/nodes.ts";
import { entryOfNode, shownValue, titleOf } from "../../../src/graph/shown.ts";
import { shownMeasure } from "../../../src/graph/unit-of.ts";
import { CARD_KINDS } from "../../../src/kinds/index.ts";
import type { WeekOfBed, WeekSpan } from "../../../src/kinds/season/week.ts";
import { KIND_WORDS } from "../../../src/kinds/words.ts";
import { baseOf } from "../../../src/studies/ask.ts";
import { givesOut } from "../../../src/studies/gives-out.ts";
import { answers } from "../../../src/telling/answers.ts";
import { type Sentence, textOf } from "../../../src/telling/asked.ts";
import type { Show } from "../../../src/telling/bed-day.ts";
import { allBeside } from "../../../src/telling/beside.ts";
import { givesOutFirst, givesOutSaid } from "../../../src/telling/gives-out.ts";
import {
  CAUTIONS_FOLLOW,
  printedFoot,
  printedLevels,
  printedWatering,
} from "../../../src/telling/printed.ts";
import { saidOnce } from "../../../src/telling/said-once.ts";
import { daysOf, leadOf, lineWords, openTitle, openWords } from "../../../src/telling/today.ts";
import { headline, outlookWords } from "../../../src/telling/week.ts";
import { type Printing, partsOnPaper, settings, shopping, waterings } from "../../../src/ui/page/printed.ts";
import { parseIsoDate } from "../../../src/units/calendar.ts";
import { MEASURES } from "../../../src/units/measures.ts";
import { type ShowOptions, showQuantity } from "../../../src/units/show.ts";
import { property } from "../harness.ts";
import type { Worked } from "../worked.ts";

const SAID_FIGURES = 2;

const shownOf = (worked: Worked, id: string): string =>
  shownValue(worked.graph, worked.worksheet, worked.results, id, optionsOf(worked));

const printingOf = (worked: Worked): Printing => ({
  kinds: CARD_KINDS,
  cards: worked.worksheet.cards,
  result: (id) => worked.results.get(id),
  shown: (id) => shownOf(worked, id),
  label: (id) => id,
});

const showOf =
  (worked: Worked): Show =>
  (si, measure) =>
    showQuantity(si, measure, { ...optionsOf(worked), figures: SAID_FIGURES });

const sentenceTexts = (worked: Worked, sentences: readonly Sentence[]): readonly string[] =>
  sentences.map((sentence) => textOf(sentence, (id) => shownOf(worked, id)));

const weeksOf = (worked: Worked) =>
  worked.cardsOf("bed").flatMap((id) => {
    const week = worked.value(`${id}.week`) as unknown as WeekOfBed | null;
    return week ? [{ id, week }] : [];
  });

/** The coming week as its page has it. */
function weekTexts(worked: Worked): readonly string[] {
  const show = showOf(worked);
  const titles = (id: string): string => titleOf(worked.worksheet, id);
  const span = worked.value("season.week_span") as unknown as WeekSpan | null;
  return weeksOf(worked).flatMap(({ id, week }) => {
    const lines = span?.lines.filter(({ bed }) => bed === id) ?? [];
    const said = headline({ week, lines, titleOf: titles }, show);
    return [...(said === "" ? [] : [said]), outlookWords(week, show, titles)];
  });
}

/** Today and the week, line by line, as the screen, paper and the command line have it. */
function todayTexts(worked: Worked): readonly string[] {
  const span = worked.value("season.week_span") as unknown as WeekSpan | null;
  if (!span) return [];
  const voice = {
    show: showOf(worked),
    locale: "en-US",
    titleOf: (id: string) => titleOf(worked.worksheet, id),
    driverOf: (bed: string) => span.drivers[bed] ?? ("either" as const),
    tanksOf: (bed: string) => span.tanks[bed],
    tankBy: (by: string) => span.tankBy[by],
  };
  const [first, last] = [parseIsoDate(span.first) ?? 0, parseIsoDate(span.last) ?? 0];
  const days = daysOf(span, first, last, voice);
  return [
    leadOf(span, first, voice),
    ...span.opens.flatMap((one) => [openTitle(one.line, voice), openWords(one, voice)]),
    ...span.lines.map((line) => lineWords(line, voice)),
    ...days.flatMap(({ said, rows }) => [said, ...rows.map((row) => row.said)]),
  ];
}

const cautionTexts = (worked: Worked): readonly string[] =>
  cautionsOf(worked.graph, worked.worksheet, worked.results, optionsOf(worked), KIND_WORDS).map(
    ({ text }) => text,
  );

function paperTexts(worked: Worked): readonly string[] {
  const printing = printingOf(worked);
  const { datum, made_by, made_on } = worked.worksheet;
  return [
    ...shopping(printing).map(({ price }) => price),
    ...settings(printing).map((card) => card.settings),
    ...partsOnPaper(printing).map((part) => `${part.price} ${part.settings}`.trim()),
    CAUTIONS_FOLLOW,
    ...[true, false].map(printedLevels),
    ...waterings(printing).map((bed) => printedWatering({ ...bed, from: shownOf(worked, "site.today") })),
    ...saidOnce(cautionTexts(worked).map((text) => ({ place: "a part", text }))).map(({ text }) => text),
    printedFoot({ datum, madeBy: made_by, madeOn: made_on }),
  ];
}

function screenTexts(worked: Worked): readonly string[] {
  const asked = { result: (id: string) => worked.results.get(id), cards: worked.worksheet.cards };
  return [
    ...sentenceTexts(worked, answers(asked)),
    ...sentenceTexts(worked, answers(asked, { short: true, brief: true })),
    ...sentenceTexts(worked, allBeside(asked)),
    ...worked.cardsOf("bed").map((id) => shownOf(worked, `${id}.needs_today`)),
    ...weekTexts(worked),
    ...todayTexts(worked),
    ...cautionTexts(worked),
  ];
}

const reportLines = (worked: Worked): readonly string[] => shortReport(worked, CARD_KINDS).split("\n");

const SLIPS: readonly (readonly [what: string, slip: RegExp])[] = [
  ["a hole", /undefined|NaN|Infinity|\[object|\bnull\b|\{[a-z_.]+\}|\(not known: \)/],
  ["less than nothing by nothing", /(^|[\s(])[-−]0(?![.,]?\d)/],
  ["empty brackets", /\(\s*\)|\[\s*\]/],
  ["two spaces", /\S {2}\S/],
  ["a stray mark", /\s[,.;:](\s|$)|[,;:]\.|\.\.(?!\.)|,,|: *$/],
  [
    "one of many",
    /(^|[^\d.,/])1[\s\u00a0](days|times|trips|parts|pumps|seasons|cans|goes|tankfuls|hoses|years|beds|gallons|numbers)\b/,
  ],
  [
    "many of one",
    /(^|[^\d.,/])(0|[2-9]|\d\d+|\d+\.\d+)[\s\u00a0](day|time|trip|part|pump|season|bed|tankful)\b(?!['’-])/,
  ],
  ["a where an is said", /\ba (8|11|18)\b/i],
];

function slipIn(texts: readonly string[]): string | null {
  for (const text of texts)
    for (const [what, slip] of SLIPS) if (slip.test(text)) return `${what}, in: ${text}`;
  return null;
}

property("nothing on the screen has a slip of grammar or a hole", (worked) => slipIn(screenTexts(worked)));
property("nothing on paper has a slip of grammar or a hole", (worked) => slipIn(paperTexts(worked)));
property("nothing in the readable report has a slip of grammar or a hole", (worked) =>
  slipIn(reportLines(worked).map((line) => line.trimStart())),
);

/** Dates and years stand apart; so do hours of the clock. */
const DATES = /[A-Z][a-z]{2} \d{1,2}(, \d{4})?|\b(19|20)\d\d\b|\d{1,2}:\d\d/g;
const NUMBERS = /\d[\d,]*(?:\.\d+)?/g;
const MOST = 3;

/** Figures of a number as it is written: noughts behind count only after a point. */
function figuresOf(number: string): number {
  const digits = number.replaceAll(",", "");
  const plain = digits.includes(".") ? digits.replace(".", "") : digits.replace(/0+$/, "");
  return plain.replace(/^0+/, "").length;
}

const isCents = (number: string): boolean => /\.\d\d$/.test(number);

/** What was typed is never rounded, wherever it stands. */
function typedNumbers(worked: Worked): ReadonlySet<string> {
  const typed = worked.graph.nodes.filter((node) => entryOfNode(worked.worksheet, node) !== undefined);
  return new Set(typed.flatMap(({ id }) => shownOf(worked, id).match(NUMBERS) ?? []));
}

function tooFine(text: string, besides: ReadonlySet<string>): string | null {
  const numbers = text.replace(DATES, "").match(NUMBERS) ?? [];
  return numbers.find((number) => figuresOf(number) > MOST && !besides.has(number)) ?? null;
}

/** A whole count is exact, and is said so; so is a sum of money to the cent. */
const EXACT = new Set(["count", "year", "clock", "money"]);

/** A number of a share, of days or of water is rounded as the design has it. */
function wrongStep(shown: string, measure: keyof typeof MEASURES): string | null {
  const [text = ""] = shown.match(NUMBERS) ?? [];
  const number = Number(text.replaceAll(",", ""));
  const { form } = MEASURES[measure];
  if (form === "share" && number >= 1 && !Number.isInteger(number)) return "a share that is not whole";
  if (form === "count" && number >= 10 && !Number.isInteger(number)) return "a count that is not whole";
  if (
    form === "span" &&
    /days?$/.test(shown) &&
    number >= 1 &&
    !Number.isInteger(number * (number < 10 ? 2 : 1))
  )
    return "days that are not whole from ten, or halves below";
  if (form === "duration" && /\d\D*min\D+\d+\D*s$/.test(shown) && number >= 5)
    return "seconds from five minutes on";
  if (!/\d\s(imp )?gal$/.test(shown)) return null;
  const step = number >= 10_000 ? 1 : number >= 500 ? 10 : number >= 100 ? 5 : 0;
  return step > 0 && number % step !== 0 ? "gallons between the steps" : null;
}

property("no result shows more figures than a grower says, outside its working", (worked) => {
  const { graph, worksheet, results } = worked;
  for (const id of results.ids) {
    const node = nodeOf(graph, id);
    const result = results.get(id);
    const measure = node && shownMeasure(node);
    if (!node?.row || !measure || node.row.hidden || result?.state !== "ready") continue;
    if (typeof result.value !== "number" || entryOfNode(worksheet, node)) continue;
    const shown = shownOf(worked, id);
    const own = node.work.kind === "formula" && node.work.userUnit;
    const wrong = own ? null : wrongStep(shown, measure);
    if (wrong) return `${id} is ${shown}: ${wrong}`;
    const fine = tooFine(shown, new Set());
    if (fine !== null && !EXACT.has(MEASURES[measure].form)) return `${id} is ${shown}: too many figures`;
    if (fine !== null && !Number.isInteger(Number(fine.replaceAll(",", ""))) && !isCents(fine))
      return `${id} is ${shown}: neither whole nor to the cent`;
  }
  return null;
});

property("no sentence, caution or line of the report shows more figures than a grower says", (worked) => {
  const typed = typedNumbers(worked);
  const exact = worked.results.ids.flatMap((id) => {
    const node = nodeOf(worked.graph, id);
    const measure = node && shownMeasure(node);
    return measure && EXACT.has(MEASURES[measure].form) ? (shownOf(worked, id).match(NUMBERS) ?? []) : [];
  });
  const besides = new Set([...typed, ...exact]);
  for (const text of [...screenTexts(worked), ...paperTexts(worked), ...reportLines(worked)]) {
    const fine = tooFine(text, besides);
    if (fine !== null) return `${fine}, in: ${text}`;
  }
  return null;
});

/** "12 gal of 12 gal", "12 gal, but only 12 gal": less that reads as much. */
const SAME = [/(\d[\d.,]*\s\S+) of (\d[\d.,]*\s\S+?)[:.,]/, /: (\d[\d.,]*\s\S+), but only (\d[\d.,]*\s\S+)$/];

property("what falls short never reads as much as what was asked for", (worked) => {
  for (const text of weekTexts(worked))
    for (const same of SAME) {
      const [, got, asked] = same.exec(text) ?? [];
      if (got !== undefined && got === asked) return text;
    }
  return null;
});

property(
  "the week says that there is enough exactly where every watering gets what it asks for",
  (worked) => {
    const show = showOf(worked);
    for (const { id, week } of weeksOf(worked)) {
      if (week.waterings.length === 0) continue;
      const short = week.waterings.some(({ asked, given, bound }) => bound !== null && given < asked);
      const late = week.waterings.some(({ over }) => over > 1);
      const text = outlookWords(week, show, (one) => titleOf(worked.worksheet, one));
      if (/enough for all of it\.$/.test(text) === (short || late)) return `${id}: ${text}`;
      if (/not always/.test(text) && (!(short || late) || week.given < week.asked)) return `${id}: ${text}`;
      if (/will be nothing/.test(text) !== (short && week.given === 0)) return `${id}: ${text}`;
    }
    return null;
  },
);

/** Numbers that a bed's sentence of usual seasons claims. */
property("a bed is told the days and the share that were worked out, or that it is never short", (worked) => {
  for (const id of worked.cardsOf("bed")) {
    const text = shownOf(worked, `${id}.needs_today`).replaceAll("\u00a0", " ");
    const found = /short on ([\d.,]+) days? and gets ([\d.,]+ %)/.exec(text);
    if (!found) continue;
    const [days, share] = [shownOf(worked, `${id}.days_short`), shownOf(worked, `${id}.share_met`)];
    if (found[1] !== days) return `${id} is short on ${days}: ${text}`;
    if (found[2] !== share.replaceAll("\u00a0", " ")) return `${id} gets ${share}: ${text}`;
  }
  return null;
});

property(
  "no caution shows a number's name in its place",
  (worked) => cautionTexts(worked).find((text) => /\(not known: [a-z_]+\.[a-z_]+\)/.test(text)) ?? null,
);

/** Two numbers that a caution sets against each other, by the condition that sets it off. */
property("a caution that sets two numbers against each other shows them apart", (worked) => {
  const { graph, worksheet, results } = worked;
  const full: ShowOptions = { ...optionsOf(worked), rounded: false };
  const texts = cautionsOf(graph, worksheet, results, optionsOf(worked), KIND_WORDS);
  for (const { id, card, text } of texts) {
    const held = graph.cautions().find((one) => one.card === card && one.caution.id === id)?.caution.if;
    const [, left, , right] = /^([a-z_.]+) (<|>|>=|<=) ([a-z_.]+)$/.exec(held ?? "") ?? [];
    if (left === undefined || right === undefined) continue;
    const of = (name: string, options: ShowOptions) =>
      shownValue(graph, worksheet, results, name.includes(".") ? name : `${card}.${name}`, options);
    const [a, b] = [of(left, optionsOf(worked)), of(right, optionsOf(worked))];
    // Where even the full values read alike they are the same number but for the last bits.
    if (a === b && of(left, full) !== of(right, full) && text.split(a).length > 2) return `${card}: ${text}`;
  }
  return null;
});

property(
  "what gives out first costs no more short days than there are, and all of them where it says all",
  (worked) => {
    const days = worked.number("season.days_short");
    if (days === null) return null;
    const answer = givesOut(baseOf(worked.worksheet, CARD_KINDS, worked.records));
    if ("failed" in answer) return null;
    const driver = "either" as const;
    const texts = [givesOutSaid(answer, driver), ...sentenceTexts(worked, [givesOutFirst(answer, driver)])];
    const slip = slipIn(texts);
    if (slip) return slip;
    const [said = ""] = texts;
    if (answer.state === "never") return days > 0 ? `${days} short days a season: ${said}` : null;
    const { bySeason, days: all, seasons } = answer.short;
    if (bySeason.reduce((sum, each) => sum + each, 0) !== all) return `${bySeason}: ${said}`;
    if (answer.rain === 1 && Math.abs(days * seasons - all) > 1e-6) return `${days} a season: ${said}`;
    if (answer.rain < 1 !== /^No day is short;/.test(said)) return said;
    if (answer.state === "several") return null;
    const saved = answer.first.map((relief) => relief.saved);
    if (saved.some((each) => each < 1 || each > all)) return `${saved} of ${all}: ${said}`;
    const claim = /(\d+) of (\d+) short days/.exec(said);
    if (claim && (Number(claim[1]) !== saved[0] || Number(claim[2]) !== all))
      return `${saved} of ${all}: ${said}`;
    return /\b(all|the only)\b/.test(said) === (saved[0] === all) ? null : `${saved} of ${all}: ${said}`;
  },
  { every: 20 },
);

property("the readable report begins with the sentences of the page", (worked) => {
  const lines = reportLines(worked);
  const asked = { result: (id: string) => worked.results.get(id), cards: worked.worksheet.cards };
  const bare = (text: string | undefined): string => (text ?? "").replace(/\.$/, "");
  const [lead = ""] = sentenceTexts(worked, answers(asked));
  return bare(lines[2]) === bare(lead) ? null : `${lines[2]} instead of ${lead}`;
});
