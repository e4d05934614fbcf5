// Works a number back from an answer by the workers, and says what it comes to; loaded when somebody asks.

import { nodeOf } from "../graph/nodes.ts";
import { numberIn } from "../graph/readers.ts";
import { labelOf, shownOf } from "../graph/shown.ts";
import type { NumberGiven } from "../graph/types.ts";
import { CARD_KINDS } from "../kinds/index.ts";
import { STARTS } from "../kinds/starts.ts";
import { moversOf } from "../studies/moved-by.ts";
import { sheetToTry, valueTrials } from "../studies/try.ts";
import { type Turn, turnOf } from "../studies/turn.ts";
import { type Met, type WorkedBack as Worked, workBack } from "../studies/work-back.ts";
import { answerName } from "../telling/answer-names.ts";
import { alreadySaid, alsoSaid, foundSaid, neverSaid } from "../telling/work-back.ts";
import type { WorkBackTools, WorkedBack } from "../ui/work-back/work-back.ts";
import { MEASURES, type Measure, type MeasureName } from "../units/measures.ts";
import type { Scale } from "../units/scale.ts";
import { showQuantity } from "../units/show.ts";
import { fromSi, toSi } from "../units/unit.ts";
import type { Asker } from "../worker/asking-pool.ts";
import { askAll } from "./asking.ts";
import { recordsInUse } from "./engine.ts";
import { FIGURES, type InHandTools } from "./turned.ts";

/** Forms of a measure of which less is mostly wished; of the rest more is. */
const LESS: ReadonlySet<Form> = new Set<Form>(["count", "money", "duration"]);
/** What one begins from: half as much, or half as much again. */
const HALF = 0.5;
/** Figures of what one begins from. */
const WISH_FIGURES = 2;

type Form = Measure["form"];

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

/** What one begins from: of what less is wished half as much, else half as much again, of a share half way to all. */
function wished(now: number, form: Form): number {
  if (form === "count") return Math.floor(now * HALF);
  if (LESS.has(form)) return now * HALF;
  return form === "share" ? now + (1 - now) * HALF : now * (1 + HALF);
}

function createReaders({ session, looking, options }: InHandTools) {
  const { view } = session.engine;
  const measureOf = (id: string): MeasureName | null => {
    const [cardId, name] = id.split(".");
    const kind = view().worksheet.cards.find((card) => card.id === cardId)?.kind ?? "";
    const row = CARD_KINDS[kind]?.rows.find((one) => one.name === name);
    if (!row || !("measure" in row) || !row.measure) return null;
    return row.measure === "text" || row.measure === "series" ? null : row.measure;
  };
  return {
    numbers: (answer: string) => {
      const { worksheet } = view();
      const all = moversOf(view(), worksheet.cards, answer);
      const kindOf = (card: string) => worksheet.cards.find(({ id }) => id === card)?.kind;
      // What only the grower knows of a part is mostly what is turned.
      const isFirst = (id: string): boolean => {
        const [card = "", name] = id.split(".");
        return STARTS[kindOf(card) ?? ""]?.asks?.[0]?.field?.row === name;
      };
      const ofPart = all.filter((id) => id.split(".")[0] === looking.part());
      const likely = [all.find((id) => id === looking.inHand()), ofPart.find(isFirst), all.find(isFirst)];
      return { all, first: likely.find((id) => id !== undefined) ?? all[0] ?? null };
    },
    wish: (answer: string): ReturnType<WorkBackTools["wish"]> => {
      const [measure, now] = [measureOf(answer), numberIn(view().results.get(answer))];
      if (!measure || now === null) return { sense: "at most", text: "" };
      const { form } = MEASURES[measure];
      const text = showQuantity(wished(now, form), measure, { ...options(), figures: WISH_FIGURES });
      return { sense: LESS.has(form) ? "at most" : "at least", text };
    },
  };
}

export function createWorkBack(tools: InHandTools, asker: Asker): WorkBackTools {
  const { session, options, edits } = tools;
  const { view } = session.engine;
  const turned = (id: string): Turned => {
    const { worksheet, results } = view();
    const turn = turnOf(worksheet, CARD_KINDS, id, [results]);
    if (turn?.row.row !== "given" || turn.axis?.form !== "number")
      throw new Error("This number has no value to begin from.");
    return { turn, row: turn.row, scale: turn.axis.scale };
  };
  const answersAt = ({ turn, row, scale }: Turned, answer: string) => {
    const { worksheet } = view();
    const records = recordsInUse(session.engine);
    const trialsOf = (values: readonly number[]) => valueTrials(turn.target, values, scale.unit);
    const [first] = trialsOf([scale.low]);
    const sheet = first ? sheetToTry(worksheet, CARD_KINDS, row, first) : worksheet;
    return async (values: readonly number[]) => {
      const runs = trialsOf(values).map(({ change }) => [change]);
      const all = await askAll(asker, {
        worksheet: sheet,
        records,
        runs,
        wanted: [answer],
      });
      return all.map((answers) => numberIn(answers?.[answer]));
    };
  };
  return {
    ...createReaders(tools),
    work: async ({ answer, number, sense, target }) => {
      const { worksheet, graph, results } = view();
      const [of, now, node] = [turned(number), numberIn(results.get(number)), nodeOf(graph, answer)];
      if (now === null || !node) throw new Error("This number has no value to begin from.");
      const { units, locale, currency } = options();
      const { unit } = of.scale;
      const present = Number(fromSi(now, unit).toPrecision(FIGURES));
      const name = answerName(answer) ?? labelOf(graph, worksheet, answer);
      // A bare count says of what it is.
      const named = (shown: string) => (Number.isNaN(Number(shown)) ? shown : `${name} ${shown}`);
      const worked = await workBack(answersAt(of, answer), of.scale, present, { sense, target });
      return saidOf(
        worked,
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
