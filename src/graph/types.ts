// The words of the graph: rows of which a card kind is made, results, problems. Types only, no code.

import type { DailyRecord } from "../rainfall/record.ts";
import type { MeasureName } from "../units/measures.ts";
import type { Caution } from "./caution.ts";
import type { FigureRow } from "./figure.ts";
import type { Measurable } from "./measurable.ts";
import type { Problem } from "./problem.ts";
import type { QuantityId } from "./quantity-id.ts";

export type { Caution } from "./caution.ts";
export type { Problem, ProblemCode } from "./problem.ts";
export type { QuantityId } from "./quantity-id.ts";

/** A number in SI, a word, id, date or text, an array, or a long series. */
export type Value =
  | number
  | string
  | null
  | readonly unknown[]
  | Float64Array
  | Uint8Array
  | Readonly<Record<string, unknown>>;

/** A number with its unit as a reader would type it. */
export type Typed = readonly [value: number, unit: string];

type Named = {
  readonly name: string;
  readonly label: string;
  /** What it means and where its number comes from, where its kind has no words of its own for it. */
  readonly help?: string;
  readonly source?: string;
  /** Kept for other rows to read; shown neither on the card nor by the command line. */
  readonly hidden?: true;
  /** Shown only when the card is opened in full. */
  readonly minor?: true;
  /**
   * On the screen, shown only where that row of the same card is one of these words (or whole numbers);
   * without words, where it is given.
   */
  readonly when?: { readonly row: string; readonly is?: readonly string[] };
  /** On the screen, left out where it is none: its absence says enough. */
  readonly quiet?: true;
  /** A sentence that stands at the head of its card. */
  readonly lead?: true;
  /** It names the most of what that row of its card counts: where that is nought it names nothing, and moves from nothing. */
  readonly mostOf?: string;
  /** Givens of the same card under which this was measured: as they stand when it is typed they are written down. */
  readonly keeps?: readonly string[];
};

/** Default of a number: typed; none (with the row's `absent` reason); worked out; or picked by a choice row's word. */
export type Default =
  | Typed
  | null
  | { readonly formula: string }
  | { readonly by: string; readonly pick: Readonly<Record<string, Typed>> };

export type NumberGiven = Named & {
  readonly row: "given";
  readonly measure: MeasureName;
  readonly default: Default;
  /** Limits in SI, both allowed. */
  readonly min?: number;
  readonly max?: number;
  /** The span that it is turned and tried over: what the trade has, no limit. */
  readonly usual?: readonly [low: Typed, high: Typed];
  /** Why there is no number, when there is none: "not fitted". */
  readonly absent?: string;
  /** May be measured as well; the measured value then stands for the given one. */
  readonly measurable?: Measurable;
  /** A place, a turn, a name: more of it is no more of anything, so that none is enough. */
  readonly sizeless?: true;
  /** Kept on the card itself (its `price` and `life`) instead of among its givens. */
  readonly stored?: "card";
};

export type ChoiceGiven = Named & {
  readonly row: "choice";
  readonly options: readonly { readonly word: string; readonly label: string }[];
  readonly default: string;
};

export type LinkGiven = Named & {
  readonly row: "link";
  readonly kinds: readonly string[];
  readonly many: boolean;
  /** Why nothing is read through it, when it is empty: "drains to nothing". */
  readonly absent: string;
  /**
   * Offers to put a card of kind `to` in the place of those of kind `from`, a new one where there is none, which takes
   * over the link `keep` of the one it stands in for.
   */
  readonly swaps?: readonly {
    readonly from: string;
    readonly to: string;
    readonly keep: string;
    readonly ask: string;
  }[];
};

export type TextGiven = Named & {
  readonly row: "text";
  readonly default: string;
  /** Days of the week, as "mon thu", picked by buttons; or what money is counted in, which the worksheet's head says. */
  readonly of?: "weekdays" | "currency";
};

export type DateGiven = Named & {
  readonly row: "date";
  /** `month_day` is `MM-DD`, `day` is `YYYY-MM-DD`. */
  readonly form: "month_day" | "day";
  readonly default: string | null;
  readonly absent?: string;
};

/** Lists: twelve monthly numbers, points of a curve or route, what grows in a bed. */
export type ListGiven = Named & {
  readonly row: "list";
  readonly of: "months" | "points" | "contents";
  /** One measure for months, two for points (across, up). */
  readonly measures?: readonly MeasureName[];
  /** Limits in SI, one for each of its measures. */
  readonly limits?: readonly { readonly min?: number; readonly max?: number }[];
  /** For contents: the crop words allowed. */
  readonly crops?: readonly {
    readonly word: string;
    readonly label: string;
    /** Has values of its own when trained up a trellis. */
    readonly trains?: true;
    /** What its values are taken from, where no table has it. */
    readonly note?: string;
  }[];
  readonly default: readonly unknown[] | null;
  /** Unit text of the default. */
  readonly unit?: string;
  readonly absent?: string;
};

export type Given = NumberGiven | ChoiceGiven | LinkGiven | TextGiven | DateGiven | ListGiven;

export type Condition = { readonly if: string; readonly reason: string };

export type FormulaRow = Named & {
  readonly row: "formula";
  readonly measure: MeasureName;
  readonly formula: string;
  /** First condition that holds makes the row `none` with its reason. */
  readonly none?: readonly Condition[];
  readonly measurable?: Measurable;
};

export type OutputRow = Named & {
  readonly row: "output";
  /** `name` of a model of the same card, or `card.model` of a single card whose outputs are keyed by quantity id. */
  readonly of: string;
  /** A measure for numbers; `text` for words, ids and dates; `series` for arrays. */
  readonly measure: MeasureName | "text" | "series";
  /** In its text, `{row}` stands for the value of another row of the same card with its unit. */
  readonly fills?: true;
  /** What the words that may come out are called. */
  readonly options?: readonly { readonly word: string; readonly label: string }[];
  /** The answer is a sum over the surveyed cards: the first of these rows over the next, card by card, for its working. */
  readonly adds?: readonly string[];
  /**
   * Formula texts that the model's answer satisfies, to check it with a pencil: the working shows the first whose numbers
   * are all known. Nothing is worked out from them.
   */
  readonly relations?: readonly string[];
  readonly measurable?: Measurable;
};

export type GatherRow = Named & {
  readonly row: "gather";
  readonly measure: MeasureName | "series";
  readonly kind: string;
  /** Link row of that kind that must hold this card's id (or list it). */
  readonly by: string;
  readonly take: string;
  readonly how: "sum" | "max" | "list";
};

/** A number worked out by a formula that the user wrote, over `card_id.row` of any card. */
export type UserFormulaRow = Named & {
  readonly row: "user_formula";
  /** Text given of the same card that holds the formula. */
  readonly formula: string;
  /** Text given of the same card that holds the unit wanted; empty: whatever results. */
  readonly unit: string;
  /** Text given of the same card that says what the number is; it stands in for the label. */
  readonly called?: string;
};

export type Row = Given | FormulaRow | OutputRow | GatherRow | UserFormulaRow;

export type Outcome =
  | { readonly value: Value }
  | { readonly none: string }
  /** `cause` names the quantity at which the trouble began, when it is another one. */
  | {
      readonly failed: string;
      readonly cause?: QuantityId;
      /** The given of the same card that is to be changed, where what it was given shows to be wrong only here. */
      readonly by?: string;
    };

export type Outputs = Readonly<Record<string, Outcome>>;

/** One card as a worksheet-wide model sees it. */
export type CardView = {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly results: Readonly<Record<string, Result>>;
};

export type ModelInput = {
  /** Values of `takes` that are ready, by the text used in `takes`. */
  readonly values: Readonly<Record<string, Value>>;
  /** Results of `takes` for a tolerant model, by the same text. */
  readonly results: Readonly<Record<string, Result>>;
  /** Cards of the kinds in `surveys`, sorted by id. */
  readonly cards: Readonly<Record<string, readonly CardView[]>>;
  readonly record: DailyRecord | null;
};

export type Model = {
  readonly name: string;
  /**
   * Names read: own rows, `link.row` through a link row, `site.row` / `weather.row` / `season.row`, and
   * `measured.row`, the measured value of an own row (none when it was not measured).
   */
  readonly takes: readonly string[];
  /** Rows read of every card of a kind; only single cards may survey. */
  readonly surveys?: Readonly<Record<string, readonly string[]>>;
  /** Of `takes`, those that may be none; one that failed still fails the model. */
  readonly optional?: readonly string[];
  /** Runs even where something it takes failed or is none, and looks at `results` itself. */
  readonly tolerant?: true;
  /**
   * Row whose value is a record's content key: the record itself is handed over. A tolerant model runs with `null`
   * where it is not here; any other fails.
   */
  readonly record?: string;
  /**
   * Runs in the worker; its inputs must be plain data and become the key under which the answer is kept. It sees
   * `values` and the record only: what it needs of other cards, a light model puts together for it.
   */
  readonly heavy?: true;
  readonly outputs: readonly string[] | "by quantity id";
  readonly run: (input: ModelInput) => Outputs;
};

export type CardKind = {
  readonly kind: string;
  readonly label: string;
  /** What it is for, one sentence. */
  readonly purpose: string;
  /** Exists exactly once, under its own name as id. */
  readonly single?: true;
  /** Text row that holds the rain record's content key; the screen offers to bring one in. */
  readonly record?: string;
  /** Charts and tables that the card shows, each out of a hidden row. */
  readonly figures?: readonly FigureRow[];
  /** Row that holds the shape of what it stores; the screen offers a dip-stick strip of it. */
  readonly vessel?: string;
  /** Rows whose values stand on the folded card; left out: its first two results. */
  readonly glance?: readonly string[];
  /** Rows that hold what the screen draws or lists: a usual year, its seasons, one season's days, the coming week. */
  readonly views?: {
    readonly year: string;
    readonly seasons: string;
    readonly days: string;
    readonly week: string;
  };
  /** What rows of it were called once, and are called now: older worksheets' own lines are read by it. */
  readonly once?: Readonly<Record<string, string>>;
  readonly rows: readonly Row[];
  readonly models: readonly Model[];
  readonly cautions: readonly Caution[];
};

export type CardKinds = Readonly<Record<string, CardKind>>;

export type Result =
  | { readonly state: "ready"; readonly value: Value; readonly origin: "given" | "computed" | "measured" }
  | { readonly state: "pending"; readonly last: Value | null }
  | { readonly state: "failed"; readonly problem: Problem }
  | { readonly state: "none"; readonly reason: string; readonly cause: QuantityId };

/** A heavy model to be run elsewhere; `key` is its full input text. */
export type Request = {
  readonly key: string;
  /** `card.model` */
  readonly model: string;
  /** Kind of that card. */
  readonly cardKind: string;
  readonly input: Readonly<Record<string, Value>>;
  readonly record: string | null;
  /** Whether it takes so long that nothing quick should wait for it. */
  readonly heavy: boolean;
};

export type Settled = {
  readonly answers: ReadonlyMap<string, Outputs>;
  readonly records: ReadonlyMap<string, DailyRecord>;
  /**
   * Whether the record of a key is at hand where heavy models run. Given, every model that reads such a record day by
   * day is asked for like a heavy one: the page gives it, so that nothing long runs on its own thread.
   */
  readonly elsewhere?: (recordKey: string) => boolean;
};
