// The year's other moments in words, of a whole worksheet: for the page and the command line alike.

import { inForce } from "../document/note-order.ts";
import type { Card } from "../document/worksheet.ts";
import { numberIn, valueIn, wordIn } from "../graph/readers.ts";
import type { CardKinds } from "../graph/types.ts";
import type { Words } from "../graph/words.ts";
import type { Show } from "../telling/bed-day.ts";
import { type FirstFill, firstFill } from "../telling/first-fill.ts";
import { doneSince, frostSaid, frostTasks } from "../telling/frost-jobs.ts";
import { tankFullSaid } from "../telling/tank-full.ts";
import { thisYearTold } from "../telling/this-year.ts";
import type { FillingSteps, FrostLine, ToldMoments } from "../telling/told-moments.ts";
import { parseIsoDate } from "../units/calendar.ts";
import type { Whole } from "./work-out.ts";
import type { YearMoments } from "./year-moments.ts";

type Room = { readonly kinds: CardKinds; readonly words: Words };

const titlesOf = ({ worksheet }: Whole): ((id: string) => string) => {
  const titles = new Map(worksheet.cards.map(({ id, title }) => [id, title]));
  return (id) => titles.get(id) ?? id;
};

/** Cards at the ends of a card's link rows, by row. */
function linksOf({ results }: Whole, { id, kind }: Card, { kinds }: Room): ReadonlyMap<string, string> {
  const rows = (kinds[kind]?.rows ?? []).filter(({ row }) => row === "link");
  return new Map(
    rows.flatMap(({ name }) => {
      const end = wordIn(results.get(`${id}.${name}`));
      return end === "" ? [] : [[name, end] as const];
    }),
  );
}

function fillingOf(whole: Whole, card: Card, links: ReadonlyMap<string, string>, can: number | null) {
  const number = (row: string) => numberIn(whole.results.get(`${card.id}.${row}`));
  const holds = number("hose_holds");
  if (holds === null) return null;
  const titleOf = titlesOf(whole);
  const [from, to] = ["from", "to"].map((row) => links.get(row));
  const fill: FirstFill = {
    from: from === undefined ? null : titleOf(from),
    to: to === undefined ? null : titleOf(to),
    hasFloat: number("valve_bore") !== null,
    holds,
    flow: number("flow"),
    clearsFrom: number("purge_flow"),
    comesAfter: number("comes_after"),
    highs: valueIn(whole.results.get(`${card.id}.high_points`)) as FirstFill["highs"],
    can,
  };
  return fill;
}

function fillings(whole: Whole, room: Room, show: Show): readonly FillingSteps[] {
  const { cards } = whole.worksheet;
  const cans = cards.flatMap(({ id }) => numberIn(whole.results.get(`${id}.can_volume`)) ?? []);
  return cards.flatMap((card) => {
    const fill = fillingOf(whole, card, linksOf(whole, card, room), cans[0] ?? null);
    const steps = fill ? firstFill(fill, show) : [];
    return steps.length === 0 ? [] : [{ id: card.id, title: card.title, steps }];
  });
}

function frostLines(whole: Whole, room: Room, { frosts, today }: YearMoments): readonly FrostLine[] {
  const { cards, notes = [] } = whole.worksheet;
  const since = doneSince(frosts, today);
  const drained = new Map(
    inForce(notes)
      .filter(({ what, day }) => what === "drained" && (parseIsoDate(day) ?? 0) >= since)
      .map(({ where, id }) => [where, id]),
  );
  const parts = cards.map((card) => ({ ...card, linked: new Set(linksOf(whole, card, room).keys()) }));
  return frostTasks(parts, room.words).map((task) => ({ ...task, done: drained.get(task.id) ?? null }));
}

/** @param show a number as its reader reads it */
export function toldMoments(whole: Whole, moments: YearMoments, room: Room, show: Show): ToldMoments {
  const titleOf = titlesOf(whole);
  const { full, thisYear } = moments;
  return {
    fillings: fillings(whole, room, show),
    frost: { by: frostSaid(moments.frosts), lines: frostLines(whole, room, moments) },
    full: (full?.tanks ?? []).map((tank) => ({
      id: tank.id,
      title: titleOf(tank.id),
      said: full ? tankFullSaid(tank, full) : "",
    })),
    thisYear: thisYear && thisYearTold(thisYear, titleOf, show),
  };
}
