// `--next-money AMOUNT`: what to buy next, of what has a price.

import { setOffer } from "../document/edits.ts";
import type { Change, Worksheet } from "../document/worksheet.ts";
import { numberIn } from "../graph/readers.ts";
import type { Kinds } from "../kinds/kind.ts";
import { ask, type Base } from "../studies/ask.ts";
import { type Bought, nextMoney, SHORT_DAYS } from "../studies/next-money.ts";
import { type Buy, buysOf } from "../studies/offers.ts";
import type { Whole } from "../studies/work-out.ts";
import { inAll, nextMoneySaid, noneSaid } from "../telling/next-money.ts";
import type { ShowOptions } from "../units/show.ts";
import { quantityEntry } from "./set-value.ts";
import { UsageError } from "./usage.ts";

export type NextMoneyReport = {
  /** Best first; short days saved are those of a season on the mean, `in_all` those of all seasons together. */
  readonly next_money: readonly {
    readonly buy: readonly string[];
    /** What the cards' rows are then. */
    readonly sets: readonly { readonly quantity: string; readonly value: unknown; readonly unit: string }[];
    readonly cost: number;
    readonly short_days_saved: number;
    readonly in_all: number;
    readonly said: string;
  }[];
  /** Why nothing is suggested; "" where something is. */
  readonly next_money_said: string;
  /** What could be bought and has no price. */
  readonly next_money_unpriced: readonly { readonly name: string; readonly said: string }[];
};

/** The worksheet with a price for something that could be bought: `--offer porch_roof.gutter=40`. */
export function priceOffer(worksheet: Worksheet, kinds: Kinds, name: string, text: string): Worksheet {
  const [id = "", offer = ""] = name.split(".");
  const card = worksheet.cards.find((one) => one.id === id);
  const offers = kinds[card?.kind ?? ""]?.offers ?? [];
  if (!offers.some((one) => one.name === offer)) {
    const known = offers.map((one) => `${id}.${one.name}`).join(", ");
    throw new UsageError(`Nothing called ${name} can be bought${known ? `; for ${id}: ${known}` : ""}.`);
  }
  return setOffer(worksheet, id, offer, amountEntry(name, text, worksheet.currency));
}

/** Money, a bare number in the worksheet's own. */
function amountEntry(name: string, text: string, currency: string) {
  if (/^\s*[-−]/.test(text)) throw new UsageError(`${name} is an amount of money, not "${text}".`);
  const isBare = /^[+\d.]+$/.test(text.trim());
  return quantityEntry(name, isBare ? `${currency}${text.trim()}` : text, "money", currency);
}

/** What could be bought, and the best of it for an amount. */
export async function nextMoneyReport(
  base: Base,
  kinds: Kinds,
  whole: Whole,
  text: string,
): Promise<NextMoneyReport> {
  const { worksheet } = base;
  const amount = amountEntry("--next-money", text, worksheet.currency).value;
  const buys = buysOf(worksheet, kinds, whole.results);
  const now = numberIn(whole.results.get(SHORT_DAYS));
  const seasons = numberIn(whole.results.get("season.seasons")) ?? 0;
  const options: ShowOptions = { units: worksheet.units, locale: "en-US", currency: worksheet.currency };
  const found = now ? await best(base, now, buys, amount) : [];
  const priced = buys.filter(({ cost }) => cost !== null);
  const counts = {
    priced: priced.length,
    affordable: priced.filter(({ cost }) => (cost ?? 0) <= amount).length,
  };
  return {
    next_money: found.map(({ buys: bought, changes, cost, saved }) => ({
      buy: bought.map(({ name }) => name),
      sets: setBy(changes),
      cost,
      short_days_saved: saved,
      in_all: inAll(saved, seasons),
      said: nextMoneySaid(
        { titles: bought.map(({ title }) => title), cost, saved },
        now ?? 0,
        seasons,
        options,
      ),
    })),
    next_money_said: noneSaid(found.length, now, counts),
    next_money_unpriced: buys
      .filter(({ cost }) => cost === null)
      .map(({ name, title }) => ({ name, said: title })),
  };
}

/** What buying it sets: entries, and not those that it takes out. */
const setBy = (changes: readonly Change[]) =>
  changes.flatMap(({ card, row, entry }) =>
    entry ? [{ quantity: `${card}.${row}`, value: entry.value, unit: entry.unit }] : [],
  );

function best(base: Base, now: number, buys: readonly Buy[], amount: number): Promise<readonly Bought[]> {
  return nextMoney(
    async (runs) => runs.map((changes) => numberIn(ask(base, changes, [SHORT_DAYS])[SHORT_DAYS])),
    now,
    buys,
    amount,
  );
}

/** Lines of the readable report. */
const MOST_LINES = 8;

/** The same for reading. */
export function nextMoneyText(report: NextMoneyReport): string {
  const lines = report.next_money.slice(0, MOST_LINES).map(({ said }) => `${said}.`);
  const unpriced = report.next_money_unpriced.map(({ name, said }) => `  ${name}: ${said}`);
  const without = unpriced.length > 0 ? ["", "Without a price (--offer NAME=PRICE):", ...unpriced] : [];
  return `${[report.next_money_said || lines.join("\n"), ...without].join("\n")}\n`;
}
