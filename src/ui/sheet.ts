// What the components may know and do: the worksheet, its results, and the edits. The app provides it.

import { type Accessor, createContext, useContext } from "solid-js";
import type { Card, Entry, ToBeNoted, UnitSystemName, Worksheet } from "../document/worksheet.ts";
import type { ShownCaution } from "../graph/cautions.ts";
import type { Explanation } from "../graph/explain.ts";
import type { Movement } from "../graph/moved.ts";
import type { LinkGiven, Problem, Result, Row } from "../graph/types.ts";
import type { Kind, Kinds } from "../kinds/kind.ts";
import type { StoredSeries } from "../scene/stored-water.ts";
import type { Trouble } from "../scene/trouble.ts";
import type { Sentence } from "../telling/asked.ts";
import type { Room } from "../telling/lead.ts";
import type { ReadOptions } from "../units/read.ts";
import type { ShowOptions } from "../units/show.ts";
import type { Beginning } from "./begin/beginning.ts";
import type { Plans } from "./beside/plans.ts";
import type { Keeping } from "./dialogs/keeping.ts";
import type { DrierYears, RainEdits, RainImport } from "./dialogs/rain-import.ts";
import type { Lasting } from "./field/lasting.ts";
import type { SeasonAnswers } from "./field/season-answers.ts";
import type { Doubting } from "./hand/doubting.ts";
import type { Hand, Since } from "./hand/hand.ts";
import type { Looking } from "./looking.ts";
import type { Money } from "./money/money.ts";
import type { WorkBackTools } from "./work-back/work-back.ts";

export type SavedSheet = {
  readonly id: string;
  readonly title: string;
  readonly when: string;
  /** The one on the page now. */
  readonly open: boolean;
};

export type Template = {
  readonly id: string;
  readonly title: string;
  readonly forWhom: string;
  /** What to put one's own number in first. */
  readonly changeFirst: string;
};

export type Sheet = {
  readonly kinds: Kinds;
  readonly worksheet: Accessor<Worksheet>;
  readonly showOptions: Accessor<ShowOptions>;
  readonly readOptions: Accessor<ReadOptions>;
  readonly result: (id: string) => Result | undefined;
  readonly shown: (id: string) => string;
  readonly moved: (id: string) => Movement | null;
  readonly explain: (id: string) => Explanation | null;
  readonly label: (id: string) => string;
  /** What a row means; "" until the words are loaded. */
  readonly help: (card: Card, row: Row) => string;
  /** Card and label: "Two totes: each holds". */
  readonly place: (id: string) => string;
  /** Unit in which a quantity is shown, for reading a bare number. */
  readonly unitOf: (id: string) => string;
  /** "default", "guessed" ...; null for an entry that says nothing of where it comes from. */
  readonly originOf: (id: string) => string | null;
  /** The reader's sentence for a quantity that failed by itself. */
  readonly failure: (id: string) => string | null;
  readonly cautions: Accessor<readonly ShownCaution[]>;
  /** Those that stand beside one quantity; the same ones as long as they say the same. */
  readonly cautionsAt: (id: string) => readonly ShownCaution[];
  /** Which cautions have been read once on this device. */
  readonly readOnce: {
    readonly isRead: (caution: string) => boolean;
    readonly markRead: (caution: string) => void;
  };
  readonly problems: Accessor<readonly Problem[]>;
  /** Parts in trouble, with the number that the drawing and the lists show. */
  readonly troubles: Accessor<readonly Trouble[]>;
  /** The sentences on top, the leading one first and as long as there is room for. */
  readonly answers: (room?: Room) => readonly Sentence[];
  /** What the working of a number in them says beside it. */
  readonly beside: (id: string) => readonly Sentence[];
  /** What gives out first, in few words; `old` while the next answer is worked out. */
  readonly givesOutFirst: Accessor<{ readonly sentence: Sentence; readonly old: boolean } | null>;
  /** What gives out first, as a sentence; null while it is not known. */
  readonly givesOut: Accessor<string | null>;
  readonly working: Accessor<boolean>;
  /** A number is being turned, or what it comes to is not in yet: sentences and drawing keep their arrangement meanwhile. */
  readonly moving: Accessor<boolean>;
  /** The day it is here by the clock of the device, `YYYY-MM-DD`. */
  readonly today: () => string;
  /** The time of day by that clock [s after midnight]. */
  readonly timeOfDay: () => number;
  readonly stored: Accessor<StoredSeries | null>;
  readonly held: Accessor<boolean>;
  /** What was held for comparison; nothing while nothing is. */
  readonly heldResult: (id: string) => Result | undefined;
  readonly heldCards: Accessor<readonly Card[]>;
  /** Says that place or weather are made up, or null. */
  readonly madeUp: Accessor<string | null>;
  /** Whether this is one of the made-up places, not the reader's own. */
  readonly starter: Accessor<boolean>;
  /** What lays out a place of one's own and asks for its numbers. */
  readonly beginning: () => Promise<Beginning>;
  readonly saved: Accessor<string>;
  readonly canUndo: Accessor<string | null>;
  readonly canRedo: Accessor<string | null>;
  readonly sheets: Accessor<readonly SavedSheet[]>;
  readonly templates: readonly Template[];
  readonly rain: Accessor<RainImport>;
  /** The record in use with less rain, where it is of few years. */
  readonly drier: Accessor<DrierYears>;
  readonly opened: Accessor<string | null>;
  readonly looking: Looking;
  /** The number in hand. */
  readonly hand: Hand;
  readonly since: Since;
  /** What is not sure; null until it is asked for and here. */
  readonly doubting: Accessor<Doubting | null>;
  /** How long the water lasts from today, fetched when it is first asked for. */
  readonly lasting: () => Promise<Lasting>;
  /** What the next money buys, fetched when it is first asked for. */
  readonly nextMoney: () => Promise<Money>;
  /** The means to work back from an answer, fetched when somebody asks. */
  readonly workBack: () => Promise<WorkBackTools>;
  /** What pages of the season ask of the whole sheet, fetched when one is first opened. */
  readonly seasonAnswers: () => Promise<SeasonAnswers>;
  /** Plans beside the sheet, fetched when they are first asked for. */
  readonly plans: () => Promise<Plans>;
  /** What stands typed in a field and is not entered, as when the page was left or it could not be read; null: nothing. */
  readonly typed: (field: string) => string | null;
  readonly edit: Edits;
  readonly keep: Keeping;
  /** The same for drawings: it wakes them once an edit's own numbers have been painted; its own `late` yet a task later. */
  readonly late: () => Sheet;
};

export type Edits = {
  readonly given: (card: Card, row: Row, entry: Entry | null, merge?: boolean) => void;
  readonly measured: (card: Card, row: Row, entry: Entry | null, merge?: boolean) => void;
  /** Keeps what a measured row taught, under the lesson's own row, in place of what was measured. */
  readonly keepLesson: (card: Card, row: Row, lesson: Row, entry: Entry) => void;
  /** Says what stands typed in a field and is not entered; null: nothing any more. */
  readonly typed: (field: string, text: string | null) => void;
  /** An edit of one field ends here; the next one is a step of its own. */
  readonly settle: () => void;
  readonly addCard: (kind: Kind) => void;
  /** Puts a card of another kind in the place of those that a link row names. */
  readonly swapLink: (card: Card, row: LinkGiven, swap: NonNullable<LinkGiven["swaps"]>[number]) => void;
  readonly removeCard: (card: Card) => void;
  readonly copyCard: (card: Card) => void;
  readonly renameCard: (card: Card, title: string) => void;
  readonly moveCard: (card: Card, by: number) => void;
  readonly page: (change: Partial<Pick<Worksheet, "title" | "datum" | "made_by">>) => void;
  /** Says what money is counted in; nothing is converted. */
  readonly currency: (currency: string) => void;
  readonly units: (units: UnitSystemName) => void;
  /**
   * Writes down what was seen or done just now, in the place of another note where one is named; `stored` tells once it is on
   * the disk, or that it could not be.
   */
  readonly note: (
    said: ToBeNoted,
    instead?: string,
  ) => {
    readonly id: string;
    readonly stored: Promise<boolean>;
  };
  /** Says that today is the day it is here. */
  readonly today: () => void;
  readonly undo: () => void;
  readonly redo: () => void;
  readonly hold: () => void;
  readonly openWorking: (id: string | null) => void;
  /** Brings a card or quantity into view and focuses it. */
  readonly goTo: (id: string) => void;
  /** Brings the field in which a quantity is typed into view, ready for typing. */
  readonly askFor: (id: string) => void;
  readonly openSheet: (id: string) => void;
  readonly start: (template: string | null) => void;
  readonly openFile: (file: File) => void;
  readonly saveFile: () => void;
} & RainEdits;

export const SheetContext = createContext<Sheet>();

/** The sheet that the app provides. */
export function useSheet(): Sheet {
  const sheet = useContext(SheetContext);
  if (!sheet) throw new Error("A component stands outside the sheet.");
  return sheet;
}
