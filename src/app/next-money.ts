// Next money, worked out by the workers while it is looked at; loaded when it is first asked for.

import { type Accessor, createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { withChanges } from "../document/changes.ts";
import { setOffer } from "../document/edits.ts";
import { addPlan } from "../document/plan-edits.ts";
import { sameData } from "../document/same.ts";
import type { Card, Change, Worksheet } from "../document/worksheet.ts";
import { numberIn } from "../graph/readers.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { isPriced } from "../kinds/kind.ts";
import { type Bought, eachAlone, nextMoney, SHORT_DAYS, type ShortWith } from "../studies/next-money.ts";
import { type Buy, buysOf } from "../studies/offers.ts";
import { aloneSaid, nextMoneySaid, noneSaid } from "../telling/next-money.ts";
import { capital, listed } from "../telling/words/lists.ts";
import type { Money } from "../ui/money/money.ts";
import { readQuantity } from "../units/read.ts";
import { showQuantity } from "../units/show.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { askAll } from "./asking.ts";
import { type Engine, recordsInUse } from "./engine.ts";
import type { InHandTools } from "./turned.ts";

/** A price being typed, or a number being turned, goes on changing [ms]. */
const REST = 400;
/** What one begins from [money]. */
const FIRST_AMOUNT = 100;
/** Best buys that are told. */
const MOST_TOLD = 5;

const NOTHING: readonly Bought[] = [];

/** Without what the season knows nothing of: a price begins nothing anew. */
function bare({ plans: _plans, ...worksheet }: Worksheet): Worksheet {
  const cards = worksheet.cards.map(({ offers: _offers, price: _price, life: _life, ...card }): Card => card);
  return { ...worksheet, cards };
}

/** What stands of the question: what could be bought, and the short days without any of it. */
function createStanding({ session }: InHandTools) {
  const { view } = session.engine;
  const sheet = createMemo(() => bare(view().worksheet), undefined, { equals: sameData });
  const number = (id: string) => createMemo(() => numberIn(view().results.get(id)));
  return {
    sheet,
    buys: createMemo(() => buysOf(view().worksheet, CARD_KINDS, view().results), undefined, {
      equals: sameData,
    }),
    short: number(SHORT_DAYS),
    seasons: number("season.seasons"),
    pending: createMemo(() => view().results.get(SHORT_DAYS)?.state === "pending"),
  };
}

type Standing = ReturnType<typeof createStanding>;

/** Short days of the sheet with each of some changes. */
function shortWith(engine: Engine, asker: Asker, standing: Standing): ShortWith {
  const question = { worksheet: standing.sheet(), records: recordsInUse(engine), wanted: [SHORT_DAYS] };
  return async (runs) => {
    const all = await askAll(asker, { ...question, runs });
    return all.map((answers) => numberIn(answers?.[SHORT_DAYS]));
  };
}

/** Works out what each takes away alone, then the best for the amount; what was known before stays until then. */
function createSearch(
  { session, looking }: InHandTools,
  asker: Asker,
  standing: Standing,
  amount: Accessor<number>,
) {
  const [alone, setAlone] = createSignal(NOTHING);
  const [best, setBest] = createSignal(NOTHING);
  const [working, setWorking] = createSignal(false);
  const [failure, setFailure] = createSignal("");
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  const search = async (base: number, buys: readonly Buy[], most: number): Promise<void> => {
    const own = asked;
    const short = shortWith(session.engine, asker, standing);
    const each = await eachAlone(short, base, buys);
    if (own !== asked) return;
    setAlone(each);
    const found = await nextMoney(short, base, buys, most);
    if (own !== asked) return;
    setBest(found);
    setWorking(false);
  };
  const stop = (): void => {
    clearTimeout(timer);
    asked += 1;
    asker.callOff();
    setWorking(false);
    setFailure("");
  };
  const begin = (base: number): void => {
    search(base, standing.buys(), amount()).catch((error: Error) => {
      setFailure(error.message);
      setWorking(false);
    });
  };
  createEffect(
    on(
      [() => looking.time() === "money", standing.sheet, standing.buys, standing.short, amount],
      ([looked, , , base], before) => {
        stop();
        if (!looked) return;
        if (!base) {
          setAlone(NOTHING);
          setBest(NOTHING);
          return;
        }
        setWorking(true);
        timer = setTimeout(() => begin(base), before?.[0] ? REST : 0);
      },
    ),
  );
  onCleanup(stop);
  return { alone, best, working, failure };
}

/** What buying changes, the price of the part among it: what is bought belongs to what all parts cost. */
function changesOf(worksheet: Worksheet, { buys, changes }: Bought): readonly Change[] {
  const prices = new Map<string, number>();
  for (const { card, cost } of buys) prices.set(card, (prices.get(card) ?? 0) + (cost ?? 0));
  const priced = [...prices].flatMap(([id, cost]): readonly Change[] => {
    const card = worksheet.cards.find((one) => one.id === id);
    const kind = card && CARD_KINDS[card.kind];
    if (!kind || !isPriced(kind)) return [];
    const before = typeof card.price?.value === "number" ? card.price.value : 0;
    const entry = { value: before + cost, unit: card.price?.unit ?? "money" };
    return [{ card: id, part: "price", row: "price", entry }];
  });
  return [...changes, ...priced];
}

const titleOf = ({ buys }: Bought): string => capital(listed(buys.map(({ title }) => title)));

const nameOf = ({ buys }: Bought): string => buys.map(({ name }) => name).join("+");

function createActs({ session }: InHandTools, best: Accessor<readonly Bought[]>) {
  const edit = (name: string, change: (sheet: Worksheet, bought: Bought) => Worksheet): void => {
    const bought = best().find((one) => nameOf(one) === name);
    if (bought) session.edit(`Buy ${titleOf(bought).toLowerCase()}`, (sheet) => change(sheet, bought));
  };
  return {
    take: (name: string) => edit(name, (sheet, bought) => withChanges(sheet, changesOf(sheet, bought))),
    keep: (name: string) =>
      edit(name, (sheet, bought) => addPlan(sheet, titleOf(bought), changesOf(sheet, bought))),
  };
}

/** What can be bought, those that help most first, and what is told of the best. */
function createRows(
  standing: Standing,
  { alone, best }: Pick<ReturnType<typeof createSearch>, "alone" | "best">,
  options: InHandTools["options"],
) {
  const shown = (cost: number): string => showQuantity(cost, "money", options()).replaceAll("\u00a0", " ");
  const share = (saved: number): number => Math.max(0, Math.min(1, saved / (standing.short() || 1)));
  const rowOf = (buy: Buy) => {
    const saved = alone().find(({ buys }) => buys[0]?.name === buy.name)?.saved;
    const counted = saved !== undefined && standing.short() !== null;
    return {
      name: buy.name,
      title: buy.title,
      price: buy.said && buy.cost !== null ? shown(buy.cost) : "",
      apiece: !buy.said && buy.cost !== null ? shown(buy.cost) : "",
      alone: counted ? aloneSaid(saved, standing.seasons() ?? 0) : "",
      share: counted ? share(saved) : 0,
    };
  };
  const rows = createMemo(() => {
    const order = alone().map(({ buys }) => buys[0]?.name);
    const at = ({ name }: Buy): number => (order.includes(name) ? order.indexOf(name) : order.length);
    return [...standing.buys()].sort((a, b) => at(a) - at(b)).map(rowOf);
  });
  const told = createMemo(() =>
    best()
      .slice(0, MOST_TOLD)
      .map((bought) => {
        const { buys, cost, saved } = bought;
        const titles = buys.map(({ title }) => title);
        const said = nextMoneySaid(
          { titles, cost, saved },
          standing.short() ?? 0,
          standing.seasons() ?? 0,
          options(),
        );
        return { name: nameOf(bought), said, share: share(saved) };
      }),
  );
  return { rows, told, shown };
}

export function createNextMoney(tools: InHandTools, asker: Asker): Money {
  const { session, options } = tools;
  const [amount, setAmount] = createSignal(FIRST_AMOUNT);
  const standing = createStanding(tools);
  const { alone, best, working, failure } = createSearch(tools, asker, standing, amount);
  const { rows, told, shown } = createRows(standing, { alone, best }, options);
  const read = (text: string) => {
    const { locale, currency } = session.worksheet();
    const found = readQuantity(text, { measure: "money", locale, currency, defaultUnit: "money" });
    if (!found.ok) return { wrong: found.message };
    return found.value < 0 ? { wrong: "an amount of money" } : { value: found.value, unit: found.unit };
  };
  const none = createMemo(() => {
    if (failure()) return failure();
    if (working() || standing.pending()) return "";
    const priced = standing.buys().flatMap(({ cost }) => (cost === null ? [] : [cost]));
    const affordable = priced.filter((cost) => cost <= amount()).length;
    return noneSaid(best().length, standing.short(), { priced: priced.length, affordable });
  });
  return {
    amount: () => shown(amount()),
    setAmount: (text) => {
      const found = read(text);
      if (found.wrong !== undefined) return found.wrong;
      setAmount(found.value);
      return "";
    },
    rows,
    best: told,
    none,
    working: () => working() || standing.pending(),
    price: (name, text) => {
      const buy = standing.buys().find((one) => one.name === name);
      const found = text.trim() === "" ? null : read(text);
      if (found?.wrong !== undefined) return found.wrong;
      if (buy) session.edit(`Price of ${buy.title}`, (sheet) => setOffer(sheet, buy.card, buy.offer, found));
      return "";
    },
    ...createActs(tools, best),
  };
}
