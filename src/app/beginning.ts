// A place of one's own: laid out from a few counts, then asked for what only its grower knows. Fetched when somebody begins.

import { emptyWorksheet } from "../document/blank.ts";
import { addCard } from "../document/card-edits.ts";
import { setGiven, setWorksheet } from "../document/edits.ts";
import type { Card, Entry, UnitSystemName, Worksheet } from "../document/worksheet.ts";
import { buildGraph } from "../graph/build.ts";
import { evaluate } from "../graph/evaluate.ts";
import type { Starts, Told } from "../kinds/asking.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { layOut, type Wish } from "../kinds/lay-out.ts";
import { STARTS } from "../kinds/starts.ts";
import type { Beginning } from "../ui/begin/beginning.ts";
import { today } from "./clock.ts";
import { freeTitle } from "./free-title.ts";
import type { PageShared } from "./page-shared.ts";
import type { Session } from "./session.ts";

/** Puts a whole place on the sheet; what it assumes is marked as usual values. */
export function laidOut(starts: Starts, worksheet: Worksheet, wish: Wish): Worksheet {
  const parts = layOut(starts, wish, worksheet.units);
  const ids = new Map<string, string>();
  let sheet = worksheet;
  for (const { key, kind, title, givens } of parts) {
    const known = new Set(sheet.cards.map((card) => card.id));
    sheet = addCard(sheet, kind, { title, givens });
    const fresh = sheet.cards.find((card) => !known.has(card.id));
    if (fresh) ids.set(key, fresh.id);
  }
  for (const { key, links } of parts) {
    for (const [given, target] of Object.entries(links)) {
      const value =
        typeof target === "string" ? (ids.get(target) ?? "") : target.map((to) => ids.get(to) ?? "");
      sheet = setGiven(sheet, ids.get(key) ?? "", given, { value, unit: "" });
    }
  }
  return sheet;
}

const isLink = (card: Card, row: string): boolean =>
  CARD_KINDS[card.kind]?.rows.some((one) => one.name === row && one.row === "link") ?? false;

/** What somebody has said of a card: neither taken for him, nor how the place hangs together. */
const saidOf = (card: Card): readonly (readonly [string, Entry])[] =>
  Object.entries(card.givens).filter(
    ([row, entry]) => entry.from !== "default" && row !== "count" && !isLink(card, row),
  );

/** The card that this one was: of the same name, or where another count gave it another name, the same among those of its kind. */
function beforeOf(earlier: readonly Card[], fresh: readonly Card[], id: string): Card | undefined {
  const kind = fresh.find((card) => card.id === id)?.kind;
  const named = earlier.find((card) => card.id === id && card.kind === kind);
  if (named) return named;
  const without = (cards: readonly Card[], others: readonly Card[]) =>
    cards.filter((card) => card.kind === kind && !others.some((other) => other.id === card.id));
  const place = without(fresh, earlier).findIndex((card) => card.id === id);
  return without(earlier, fresh)[place];
}

/** The place laid out anew from other counts, with what was said of the parts that still stand. */
export function laidAnew(starts: Starts, worksheet: Worksheet, wish: Wish): Worksheet {
  const single = worksheet.cards.filter(({ kind }) => CARD_KINDS[kind]?.single);
  const bare: Worksheet = { ...worksheet, cards: single };
  const laid = laidOut(starts, bare, wish);
  const fresh = laid.cards.filter(({ kind }) => !CARD_KINDS[kind]?.single);
  return fresh.reduce((sheet, { id }) => {
    const before = beforeOf(worksheet.cards, fresh, id);
    return (before ? saidOf(before) : []).reduce(
      (next, [row, entry]) => setGiven(next, id, row, entry),
      sheet,
    );
  }, laid);
}

function tell(worksheet: Worksheet, told: Readonly<Record<string, Told>>): Worksheet {
  return Object.entries(told).reduce(
    (sheet, [card, rows]) =>
      Object.entries(rows).reduce((next, [row, entry]) => setGiven(next, card, row, entry), sheet),
    worksheet,
  );
}

export function makeBeginning(session: Session, shared: PageShared): Beginning {
  const blank = (units: UnitSystemName): Worksheet => {
    const { locale, currency } = session.worksheet();
    return emptyWorksheet({ units, locale, currency, made_on: today() });
  };
  return {
    starts: STARTS,
    lay: (wish, units, here) => {
      if (here)
        return session.edit("Lay the place out", (worksheet) =>
          laidAnew(STARTS, setWorksheet(worksheet, { units }), wish),
        );
      const fresh = laidOut(STARTS, blank(units), wish);
      void session.saver
        .flush()
        .then(shared.titlesKept)
        .then((taken) => {
          const worksheet = setWorksheet(fresh, { title: freeTitle(fresh.title, taken) });
          shared.lay(worksheet, [], "", { step: "ask", wish, here: true });
        });
    },
    preview: (wish, units) => {
      const worksheet = laidOut(STARTS, blank(units), wish);
      const results = evaluate(buildGraph(worksheet, CARD_KINDS), worksheet, {
        answers: new Map(),
        records: new Map(),
      });
      return { worksheet, result: (id) => results.get(id) };
    },
    tell: (told, label, merge) => session.edit(label, (worksheet) => tell(worksheet, told), merge),
  };
}
