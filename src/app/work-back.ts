// Works a number back from an answer by the workers, and says what it comes to; loaded when somebody asks.

import { nodeOf } from "../graph/nodes.ts";
import { numberIn } from "../graph/readers.ts";
import { labelOf, shownOf } from "../graph/shown.ts";
import type { NumberGiven, Result } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { STARTS } from "../kinds/starts.ts";
import type { Bound } from "../network/bounds.ts";
import { moversOf } from "../studies/moved-by.ts";
import { sheetToTry, valueTrials } from "../studies/try.ts";
import { type Turn, turnOf } from "../studies/turn.ts";
import { inRoundValues, type Met, type WorkedBack as Worked, workBack } from "../studies/work-back.ts";
import { type AtEnds, helping, moving } from "../studies/worth-turning.ts";
import { answerName } from "../telling/answer-names.ts";
import {
  alreadySaid,
  alsoSaid,
  boundsBehind,
  foundSaid,
  likelyWish,
  neverSaid,
} from "../telling/work-back.ts";
import type { WorkBackTools, WorkedBack } from "../ui/work-back/work-back.ts";
import type { MeasureName } from "../units/measures.ts";
import type { Scale } from "../units/scale.ts";
import { showQuantity } from "../units/show.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { askAll } from "./asking.ts";
import { recordsInUse } from "./engine.ts";
import type { InHandTools } from "./turned.ts";

/** Figures of what one begins from. */
const WISH_FIGURES = 2;

/** What gives out first; none while it is not known. */
export type Mended = () => readonly Bound[];

type Turned = { readonly turn: Turn; readonly row: NumberGiven; readonly scale: Scale };

/** The sentences, and what sets each value. */
function saidOf(
  worked: Worked,
  { scale }: Turned,
  answerText: (answer: number) => string,
  valueText: (value: number) => string,
): WorkedBack {
  const told = ({ value, answer }: Met) => ({ value: valueText(value), answer: answerText(answer) });
  if (worked.state === "already") return { said: alreadySaid(answerText(worked.answer)), values: [] };
  if (worked.state === "never") {
    const ends = [scale.low, scale.high].map(valueText) as [string, string];
    return { said: neverSaid(ends, worked.best && told(worked.best), worked.still), values: [] };
  }
  const { unit } = scale;
  const values = [worked.nearest, ...worked.others].map((met, at) => ({
    said: (at === 0 ? foundSaid : alsoSaid)(told(met)),
    shown: valueText(met.value),
    entry: { value: met.value, unit },
  }));
  return { said: "", values };
}

/** What only the grower knows of a part is mostly what is turned. */
function isFirstOf(kind: string | undefined, id: string): boolean {
  return STARTS[kind ?? ""]?.asks?.[0]?.field?.row === id.split(".")[1];
}

function createReaders({ session, looking, options }: InHandTools, mended: Mended) {
  const { view } = session.engine;
  const measureOf = (id: string): MeasureName | null => {
    const [cardId, name] = id.split(".");
    const kind = view().worksheet.cards.find((card) => card.id === cardId)?.kind ?? "";
    const row = CARD_KINDS[kind]?.rows.find((one) => one.name === name);
    if (!row || !("measure" in row) || !row.measure) return null;
    return row.measure === "text" || row.measure === "series" ? null : row.measure;
  };
  return {
    /** Numbers that matter and are behind it, the likeliest to be turned for it first. */
    numbers: (answer: string): readonly string[] => {
      const { worksheet } = view();
      const all = moversOf(view(), worksheet.cards, answer);
      const kindOf = new Map(worksheet.cards.map(({ id, kind }) => [id, kind]));
      const partOf = (id: string): string => id.split(".")[0] ?? "";
      const kindAt = (id: string) => CARD_KINDS[kindOf.get(partOf(id)) ?? ""];
      const bounds = boundsBehind(answer) ?? mended();
      const mends = (id: string): boolean => bounds.some((bound) => kindAt(id)?.mends?.includes(bound));
      // Of what there is in a place, as how high its ground is, little can be turned.
      const first = (id: string): number => {
        if (isFirstOf(kindOf.get(partOf(id)), id)) return 0;
        return kindAt(id)?.local?.includes(id.split(".")[1] ?? "") ? 2 : 1;
      };
      const rank = (id: string): number => {
        if (id === looking.inHand()) return 0;
        if (mends(id)) return 1;
        if (partOf(id) === partOf(answer)) return 2;
        return partOf(id) === looking.part() ? 3 : 4;
      };
      return [...all].sort((a, b) => rank(a) - rank(b) || first(a) - first(b));
    },
    wish: (answer: string): ReturnType<WorkBackTools["wish"]> => {
      const [measure, now] = [measureOf(answer), numberIn(view().results.get(answer))];
      const likely = measure && now !== null ? likelyWish(answer, measure, now) : null;
      if (!measure || !likely) return null;
      const text = showQuantity(likely.target, measure, { ...options(), figures: WISH_FIGURES });
      return { ...likely, text };
    },
  };
}

/** Which numbers are worth turning for an answer; one without a value to begin from is not. */
function createWorth(
  numbers: (answer: string) => readonly string[],
  view: () => { readonly results: { readonly get: (id: string) => Result | undefined } },
  ends: (id: string, answer: string) => Promise<readonly (number | null)[]>,
): Pick<WorkBackTools, "helping" | "moving"> {
  const endsOf =
    (answer: string): AtEnds =>
    async (id) => {
      const isThere = numberIn(view().results.get(id)) !== null;
      return isThere ? ends(id, answer) : [];
    };
  const nowOf = (answer: string) => numberIn(view().results.get(answer));
  return {
    helping: async (answer, wish) => {
      const now = nowOf(answer);
      return now === null ? null : helping(numbers(answer), wish, now, endsOf(answer));
    },
    moving: async (answer) => {
      const now = nowOf(answer);
      return now === null ? [] : moving(numbers(answer), now, endsOf(answer));
    },
  };
}

/** @param askers the first for what is worked back, the other for which numbers are worth turning */
export function createWorkBack(
  tools: InHandTools,
  [asker, other]: readonly [Asker, Asker],
  mended: Mended,
): WorkBackTools {
  const { session, options, edits } = tools;
  const { view } = session.engine;
  const turned = (id: string): Turned => {
    const { worksheet, results } = view();
    const turn = turnOf(worksheet, CARD_KINDS, id, [results]);
    if (turn?.row.row !== "given" || turn.axis?.form !== "number")
      throw new Error("This number has no value to begin from.");
    return { turn, row: turn.row, scale: turn.axis.scale };
  };
  const answersAt = ({ turn, row, scale }: Turned, answer: string, by = asker) => {
    const { worksheet } = view();
    const records = recordsInUse(session.engine);
    const trialsOf = (values: readonly number[]) => valueTrials(turn.target, values, scale.unit);
    const [first] = trialsOf([scale.low]);
    const sheet = first ? sheetToTry(worksheet, CARD_KINDS, row, first) : worksheet;
    return async (values: readonly number[]) => {
      const runs = trialsOf(values).map(({ change }) => [change]);
      const all = await askAll(by, {
        worksheet: sheet,
        records,
        runs,
        wanted: [answer],
      });
      return all.map((answers) => numberIn(answers?.[answer]));
    };
  };
  const readers = createReaders(tools, mended);
  return {
    ...readers,
    ...createWorth(readers.numbers, view, (id, answer) => {
      const of = turned(id);
      return answersAt(of, answer, other)([of.scale.low, of.scale.high]);
    }),
    work: async ({ answer, number, sense, target }) => {
      const { worksheet, graph, results } = view();
      const [of, now, node] = [turned(number), numberIn(results.get(number)), nodeOf(graph, answer)];
      if (now === null || !node) throw new Error("This number has no value to begin from.");
      const { units, locale, currency } = options();
      const { unit } = of.scale;
      const present = tidy(fromSi(now, unit));
      const name = answerName(answer) ?? labelOf(graph, worksheet, answer);
      // A bare count says of what it is.
      const named = (shown: string) => (Number.isNaN(Number(shown)) ? shown : `${name} ${shown}`);
      const wish = { sense, target };
      const answerAt = answersAt(of, answer);
      const worked = await workBack(answerAt, of.scale, present, wish);
      return saidOf(
        await inRoundValues(answerAt, of.scale, wish, worked),
        of,
        (value) => named(shownOf(worksheet, node, value, options())),
        // As it will stand there once it is set, never rounded.
        (value) => showQuantity(toSi(value, unit), of.row.measure, { units, locale, currency, unit }),
      );
    },
    set: (number, entry) => {
      const { turn, row } = turned(number);
      const card = session.worksheet().cards.find(({ id }) => id === turn.target.card);
      if (!card) return;
      if (turn.target.part === "measured") edits().measured(card, row, { ...entry, from: "measured" });
      else edits().given(card, row, entry);
    },
    callOff: asker.callOff,
  };
}
