// What the sentences on top claim, read back from their text and set against the numbers.

import { shownValue } from "../../../src/graph/shown.ts";
import { answers } from "../../../src/telling/answers.ts";
import type { Asked } from "../../../src/telling/asked.ts";
import type { Room } from "../../../src/telling/lead.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked } from "../worked.ts";

const askedOf = ({ results, worksheet }: Worked): Asked => ({
  result: (id) => results.get(id),
  cards: worksheet.cards,
});

const ROOMS: readonly Room[] = [{}, { short: true }, { brief: true }, { short: true, brief: true }];

const leadsOf = (worked: Worked) =>
  ROOMS.flatMap((room) => answers(askedOf(worked), room).filter(({ lead }) => lead));

const shown = ({ graph, worksheet, results }: Worked, id: string): string =>
  shownValue(graph, worksheet, results, id, OPTIONS);

/** Numbers that a lead on beds claims; null where it does not claim that. */
function claimsOf(text: string) {
  const number = (pattern: RegExp, group = 1): number | null => {
    const found = pattern.exec(text)?.[group];
    return found === undefined ? null : Number(found.replaceAll(",", ""));
  };
  const never = /[Nn]ever (go )?short/.test(text);
  return {
    short: never ? 0 : number(/[Ss](?:hort in|hort in) (\d+) of/),
    seasons: number(/of (\d+) (?:made-up )?seasons/) ?? number(/ever (?:go )?short in (\d+) /),
    year: number(/(?:worst, |seasons: )(\d{4})/),
    days: number(/ on ([\d,]+) days?/) ?? (never ? 0 : null),
    one: /in this one (made-up )?year/.test(text),
  };
}

function wrongIn(worked: Worked, text: string): string | null {
  const claims = claimsOf(text);
  const of = {
    short: worked.number("season.seasons_short"),
    seasons: worked.number("season.seasons"),
    year: worked.number("season.worst_season"),
    days: worked.number("season.worst_season_days_short"),
  };
  for (const claim of ["short", "seasons", "year", "days"] as const)
    if (claims[claim] !== null && claims[claim] !== of[claim])
      return `${claim}: ${claims[claim]} is said, ${of[claim]} worked out`;
  if (claims.one !== (of.seasons === 1)) return `${of.seasons} seasons`;
  if (claims.one) return claims.days === null ? "no days" : null;
  const all = claims.short !== null && claims.seasons !== null;
  return all && (claims.short === 0 || (claims.year !== null && claims.days !== null))
    ? null
    : "a number is left out";
}

property(
  "the lead says in how many seasons beds go short, and how badly in the worst, as worked out",
  (worked) => {
    if (worked.value("season.seasons") === null) return null;
    for (const lead of leadsOf(worked)) {
      if (lead.id !== "lead" || worked.cardsOf("bed").length === 0) continue;
      const text = worked.textOf(lead);
      const wrong = wrongIn(worked, text);
      if (wrong !== null) return `${wrong}, in: ${text}`;
      const full = /Full tanks last ([^.]*?(?:\.\d[^.]*?)?)( without rain)?\.$/.exec(text)?.[1];
      const has = worked.number("season.days_of_autonomy") !== null;
      if ((full !== undefined) !== has || (has && full !== shown(worked, "season.days_of_autonomy")))
        return `${full} is not ${shown(worked, "season.days_of_autonomy")}, in: ${text}`;
    }
    return null;
  },
);

property(
  "the lead names no part unless one stops the water or is left out, and then has a way to it",
  (worked) => {
    for (const lead of leadsOf(worked)) {
      if (lead.id === "stopped" || (lead.acts?.length ?? 0) > 0) {
        const at = lead.acts?.[0]?.at;
        if (at !== undefined && !worked.worksheet.cards.some(({ id }) => id === at.split(".")[0]))
          return `${at} is no place to go to`;
        continue;
      }
      // A title that is a word of the sentence is no name in it.
      const named = worked.worksheet.cards.find(
        ({ title }) => title.length > 6 && worked.textOf(lead).includes(title),
      );
      if (named) return `${named.title}, in: ${worked.textOf(lead)}`;
    }
    return null;
  },
);

property("red is said only of what is short or missing, and never of nothing", (worked) => {
  for (const { pieces } of worked.onTop)
    for (const piece of pieces) {
      if (typeof piece === "string" || piece.tone !== "trouble") continue;
      const number = worked.number(piece.quantity);
      if (number === 0) return `${piece.quantity} is 0, in red`;
      if (!/short|left_out|unmetered|refill_after_watering/.test(piece.quantity))
        return `${piece.quantity} is no shortage, in red`;
    }
  return null;
});

property("under the lead stand three sentences at the most, each of a number that is there", (worked) => {
  const [, ...rest] = worked.onTop;
  if (rest.length > 3) return `${rest.length} sentences`;
  for (const { pieces } of rest)
    for (const piece of pieces)
      if (typeof piece !== "string" && worked.number(piece.quantity) === null)
        return `${piece.quantity} is ${worked.results.get(piece.quantity)?.state}`;
  return null;
});

/** Counts with a word behind them. */
const ONES =
  /(^|[^\d.,])1 (days|times|trips|parts|pumps|seasons)\b|(^|\s)(0|[2-9]|\d\d+) (day|time|trip|part|pump)\b/;

property(
  "one is one and many are many in every sentence on top",
  (worked) => worked.onTop.map(worked.textOf).find((text) => ONES.test(text)) ?? null,
);
