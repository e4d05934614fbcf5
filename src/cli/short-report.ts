// The readable report: the sentences of the page, then what matters of each part, within a screen or two. `--all` has the rest.

import { cautionsOf } from "../graph/cautions.ts";
import { isReady } from "../graph/readers.ts";
import { labelOf, shownValue, textOrDate, titleOf } from "../graph/shown.ts";
import type { Kinds } from "../kinds/kind.ts";
import { KIND_WORDS } from "../kinds/words.ts";
import type { Whole } from "../studies/work-out.ts";
import { answers } from "../telling/answers.ts";
import { type Asked, type Sentence, textOf } from "../telling/asked.ts";
import { allBeside } from "../telling/beside.ts";
import { printedFoot } from "../telling/printed.ts";
import { byDanger, saidOnce } from "../telling/said-once.ts";
import { withinLine } from "../telling/words/lists.ts";
import { optionsOf } from "./report.ts";

/** Lines of a whole report, as far as what can hurt somebody leaves room. */
const MOST_LINES = 60;
const ALL = "Every number by its name: --all. What gives out first: --gives-out.";

/** A sentence on top says some of these already, or more shortly. */
const SAID: Readonly<Record<string, readonly string[]>> = {
  storage: ["lead", "storage"],
  keeping_up: ["keeping_up"],
  power_unknown: ["power_unknown"],
};

const stopped = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

type Telling = Asked & {
  readonly whole: Whole;
  readonly kinds: Kinds;
  readonly shown: (id: string) => string;
  readonly label: (id: string) => string;
};

function tellingOf(whole: Whole, kinds: Kinds): Telling {
  const { graph, worksheet, results } = whole;
  const options = optionsOf(whole);
  return {
    whole,
    kinds,
    cards: worksheet.cards,
    result: (id) => results.get(id),
    shown: (id) => shownValue(graph, worksheet, results, id, options),
    label: (id) => labelOf(graph, worksheet, id),
  };
}

/** What the page says on top, and what its workings say beside that. */
function sentences(telling: Telling): readonly string[] {
  const top = answers(telling);
  const ids = new Set(top.map(({ id }) => id));
  const isNew = ({ id }: Sentence): boolean => !(SAID[id] ?? []).some((said) => ids.has(said));
  const beside = ids.has("empty") ? [] : allBeside(telling).filter(isNew);
  const named = new Set(beside.map(({ id }) => id));
  const said = top.filter(({ id }) => !(id === "left_out" && named.has("without")));
  return [...said, ...beside].map((sentence) => stopped(textOf(sentence, telling.shown)));
}

/** "Barn roof: in a usual year 3,500 gal; in the driest year 2,200 gal", as the list of parts has it. */
function parts({ cards, kinds, result, label, shown }: Telling): readonly string[] {
  return cards.flatMap(({ id, kind, title }) => {
    const said = (kinds[kind]?.glance ?? [])
      .map((row) => `${id}.${row}`)
      .filter((row) => isReady(result(row)))
      .map((row) => `${withinLine(label(row))} ${shown(row)}`);
    return said.length > 0 ? [`${title}: ${said.join("; ")}`] : [];
  });
}

/** What each bed wants, and by what it is watered. */
function beds({ cards, kinds, result, shown }: Telling): readonly string[] {
  const ready = (id: string): string => (isReady(result(id)) ? shown(id) : "");
  return cards.flatMap(({ id, kind, title }) => {
    const { watered, rows = [] } = kinds[kind] ?? {};
    if (!watered) return [];
    const leads = rows.filter((row) => row.row === "output" && row.lead === true);
    const said = leads.map((row) => ready(`${id}.${row.name}`)).join(" ");
    const by = ready(`${id}.${watered.by}`) || "nobody yet";
    return said === "" ? [] : [`${title}, by ${by}: ${said}`];
  });
}

/** What can hurt somebody, all of it; of the rest as much as there is room for. */
function cautions({ whole }: Telling, room: number): readonly string[] {
  const { graph, worksheet, results } = whole;
  const sorted = byDanger(cautionsOf(graph, worksheet, results, optionsOf(whole), KIND_WORDS));
  const lines = (of: typeof sorted): readonly string[] =>
    saidOnce(of.map(({ card, text }) => ({ place: titleOf(worksheet, card), text }))).map(
      ({ places, text }) => `${places}: ${text}`,
    );
  const all = lines(sorted);
  const harms = lines(sorted.filter(({ weight }) => weight === "harm")).length;
  const most = Math.max(harms, room);
  if (all.length <= most) return all;
  const left = all.length - most + 1;
  return [...all.slice(0, most - 1), `${left} more, less dangerous: --all.`];
}

const under = (head: string, items: readonly string[]): readonly string[] =>
  items.length > 0 ? ["", head, ...items.map((item) => `  ${item}`)] : [];

/** The report for reading. */
export function shortReport(whole: Whole, kinds: Kinds): string {
  const telling = tellingOf(whole, kinds);
  const { title, datum, made_by, made_on } = whole.worksheet;
  const above = [
    title,
    "",
    ...sentences(telling),
    ...under("Part by part", parts(telling)),
    ...under("Each bed", beds(telling)),
    ...under(
      "Wrong",
      whole.results.problems.map(({ at, text }) => `${at}: ${text}`),
    ),
  ];
  const foot = [
    "",
    printedFoot({ datum, madeBy: made_by, madeOn: textOrDate(made_on, optionsOf(whole).locale) }),
    ALL,
  ];
  const room = MOST_LINES - above.length - foot.length - 2;
  return `${[...above, ...under("Cautions", cautions(telling, room)), ...foot].join("\n")}\n`;
}
