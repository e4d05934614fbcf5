// Plans beside the sheet, worked out by the workers; loaded when they are first asked for.

import { type Accessor, createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import { type Differences, differences, type Laid, laidOver } from "../document/effective.ts";
import { dropPlan, keepBeside, renamePlan, takeOver } from "../document/plan-edits.ts";
import { withPlans } from "../document/plan-names.ts";
import type { Plan, Worksheet } from "../document/worksheet.ts";
import { differing } from "../graph/differing.ts";
import { nodeOf } from "../graph/nodes.ts";
import { numberIn, shownIn } from "../graph/readers.ts";
import { rolesOf } from "../graph/roles.ts";
import { NOT_YET, shownOf } from "../graph/shown.ts";
import type { Result } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { isPriced } from "../kinds/kind.ts";
import type { Answers } from "../studies/ask.ts";
import {
  bestOf,
  COMPARED_IDS,
  type Compared,
  comparedIn,
  comparedSaid,
  dearerSaid,
  differencesSaid,
  leftOutSaid,
  planNameSaid,
  priceSaid,
} from "../telling/plans.ts";
import type { PlanCell, PlanHead, PlanRow, Plans } from "../ui/beside/plans.ts";
import { type ShowOptions, showQuantity } from "../units/show.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { type Engine, recordsInUse } from "./engine.ts";
import type { Session } from "./session.ts";

/** A number being turned goes on changing; the plans wait until it rests [ms]. */
const REST = 300;
/** Plans beside the sheet at a time. */
const BESIDE = 3;
const TOTAL = "cost.total";
/** What a plan that leads back is called. */
const BACK = "As it was";

const ROLES = rolesOf(CARD_KINDS);
const NO_PLANS: readonly Plan[] = [];

type Tools = { readonly session: Session; readonly options: Accessor<ShowOptions> };

/** One plan laid over the sheet. */
type Column = { readonly plan: Plan; readonly laid: Laid; readonly differs: Differences };

const inSheet = (sheet: Worksheet, planned: Worksheet, differs: Differences, options: ShowOptions) =>
  differing(sheet, planned, differs, CARD_KINDS, options);

/** Which plans stand beside the sheet: those brought last, else those kept last. */
function createShown(session: Session) {
  const [brought, setBrought] = createSignal<readonly string[]>([]);
  const kept = createMemo(() => session.worksheet().plans ?? NO_PLANS);
  const shown = createMemo(() => {
    const at = ({ name }: Plan) => brought().indexOf(name);
    const last = [...kept()].sort((a, b) => at(a) - at(b)).slice(-BESIDE);
    return kept().filter((plan) => last.includes(plan));
  });
  return {
    shown,
    others: createMemo(() => kept().flatMap((plan) => (shown().includes(plan) ? [] : [plan.name]))),
    bring: (name: string): void => {
      setBrought([...brought().filter((one) => one !== name), name]);
    },
    bringLast: (): void => {
      setBrought([]);
    },
  };
}

/** Answers of the plans shown; those of before stay, marked old, until the new ones are in. */
function createAnswers(engine: Engine, asker: Asker, shown: Accessor<readonly Plan[]>) {
  const [known, setKnown] = createSignal<ReadonlyMap<Plan["changes"], Answers>>(new Map());
  const [fresh, setFresh] = createSignal<ReadonlySet<Plan["changes"]>>(new Set());
  const [failure, setFailure] = createSignal("");
  // Asked without its plans: keeping, renaming and dropping one begins nothing anew.
  const worksheet = createMemo(() => withPlans(engine.view().worksheet, []), undefined, {
    equals: (a, b) => a !== undefined && a.cards === b.cards && a.currency === b.currency,
  });
  let timer: ReturnType<typeof setTimeout> | undefined;
  const begin = (): void => {
    const plans = shown().filter(({ changes }) => !fresh().has(changes));
    asker.ask(
      {
        worksheet: worksheet(),
        records: recordsInUse(engine),
        runs: plans.map(({ changes, added, removed }) => ({ changes, added, removed })),
        wanted: [...COMPARED_IDS, TOTAL],
      },
      {
        onAnswers: (at, answers) => {
          const plan = plans[at]?.changes;
          if (!plan) return;
          setKnown(new Map([...known(), [plan, answers]]));
          setFresh(new Set([...fresh(), plan]));
        },
        onEnd: (reason) => {
          setFailure(reason ?? "");
        },
      },
    );
  };
  createEffect(
    on([worksheet, shown], ([sheet, plans], before) => {
      clearTimeout(timer);
      asker.callOff();
      if (before?.[0] !== sheet) setFresh(new Set<Plan["changes"]>());
      if (plans.some(({ changes }) => !fresh().has(changes))) timer = setTimeout(begin, before ? REST : 0);
    }),
  );
  onCleanup(() => {
    clearTimeout(timer);
    asker.callOff();
  });
  return { known, fresh, failure };
}

/** A row of answers, each with its bar on the row's one scale. */
function rowOf(
  engine: Engine,
  options: ShowOptions,
  compared: Compared,
  results: readonly { readonly get: (id: string) => Result | undefined; readonly old: boolean }[],
): PlanRow {
  const { graph, worksheet } = engine.view();
  const { id, better, of } = compared;
  const node = nodeOf(graph, id);
  const numbersOf = (one: string): readonly (number | null)[] =>
    results.map(({ get }) => {
      const value = shownIn(get(one));
      return typeof value === "number" ? value : null;
    });
  const values = numbersOf(id);
  const all = of ? numbersOf(of) : [];
  const shown = values.map((value, at) => {
    if (value !== null && node)
      return comparedSaid(compared, shownOf(worksheet, node, value, options), all[at] ?? null);
    return results[at]?.get(id) === undefined || results[at]?.old ? NOT_YET : "none";
  });
  const most = Math.max(0, ...values.map((value) => value ?? 0));
  const best = bestOf(values, shown, better);
  const cells = values.map(
    (value, at): PlanCell => ({
      shown: shown[at] ?? "",
      share: value === null ? null : most > 0 ? Math.max(0, value) / most : 0,
      best: best.has(at),
      old: results[at]?.old ?? false,
    }),
  );
  return { id, cells };
}

/** The price of all parts, as shown; null where nothing has one. */
const totalSaid = (total: number | null, money: (amount: number) => string): string | null =>
  total === null || total === 0 ? null : money(total);

/** What the plan costs, and how much more than the sheet. What it adds without a price is named where anything has one. */
function dearer({ plan, laid }: Column, total: number | null, planned: number | null, options: ShowOptions) {
  if (total === null && planned === null) return "";
  const by = (planned ?? 0) - (total ?? 0);
  const unpriced = plan.added.filter(({ id, kind }) => {
    const card = laid.worksheet.cards.find((one) => one.id === id);
    const of = CARD_KINDS[kind];
    return of !== undefined && isPriced(of) && card?.price === undefined;
  });
  const money = (amount: number) => showQuantity(amount, "money", options);
  return dearerSaid(by, money(Math.abs(by)), unpriced.length, totalSaid(planned, money));
}

function createEdits({ session, options }: Tools, bringLast: () => void) {
  return {
    keep: (): boolean => {
      const held = session.held()?.typed;
      if (!held) return false;
      const before = session.worksheet();
      session.edit("Keep beside", (now) => {
        const differs = differences(held, now, ROLES);
        const name = planNameSaid(inSheet(held, now, differs, options()));
        return keepBeside(now, held, name, ROLES);
      });
      bringLast();
      return session.worksheet() !== before;
    },
    takeOver: (name: string): void =>
      session.edit(`Take over ${name}`, (now) => takeOver(now, name, BACK, ROLES)),
    rename: (from: string, to: string): void =>
      session.edit(`Name of ${from}`, (now) => renamePlan(now, from, to)),
    drop: (name: string): void => session.edit(`Drop ${name}`, (now) => dropPlan(now, name)),
  };
}

export function createPlans(tools: Tools, asker: Asker): Plans {
  const { session, options } = tools;
  const { engine } = session;
  const { shown, others, bring, bringLast } = createShown(session);
  const { known, fresh, failure } = createAnswers(engine, asker, shown);
  const columns = createMemo<readonly Column[]>(() => {
    const sheet = engine.view().worksheet;
    return shown().map((plan) => {
      const laid = laidOver(sheet, plan, ROLES);
      return { plan, laid, differs: differences(sheet, laid.worksheet, ROLES) };
    });
  });
  const result = (id: string) => engine.view().results.get(id);
  const heads = createMemo<readonly PlanHead[]>(() =>
    columns().map((column) => {
      const { plan, laid, differs } = column;
      const { worksheet } = engine.view();
      const answers = known().get(plan.changes);
      const planned = answers ? numberIn(answers[TOTAL]) : null;
      return {
        name: plan.name,
        differs: differencesSaid(inSheet(worksheet, laid.worksheet, differs, options()), plan.name),
        left: laid.left.map(leftOutSaid),
        dearer: answers ? dearer(column, numberIn(result(TOTAL)), planned, options()) : "",
      };
    }),
  );
  const rows = createMemo<readonly PlanRow[]>(() => {
    const has = (id: string) => typeof shownIn(result(id)) === "number";
    return comparedIn(has).map((compared) =>
      rowOf(engine, options(), compared, [
        { get: result, old: result(compared.id)?.state === "pending" },
        ...shown().map(({ changes }) => ({
          get: (id: string) => known().get(changes)?.[id],
          old: !fresh().has(changes),
        })),
      ]),
    );
  });
  const price = () =>
    priceSaid(totalSaid(numberIn(result(TOTAL)), (sum) => showQuantity(sum, "money", options())));
  return { heads, rows, price, others, bring, failure, ...createEdits(tools, bringLast) };
}
