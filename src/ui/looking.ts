// What the reader looks at: the open part, the number in hand, the answer asked after, the season and the day.
// It belongs to the page alone and is never kept with the worksheet.

import type { Accessor } from "solid-js";
import type { Begun } from "./begin/beginning.ts";

/** One column on a phone; a list of parts beside the open one; answers and place beside it; and the working beside that. */
export type Width = "phone" | "list" | "bench" | "wide";

/** Where a working stands open: under the answer that was pressed, or under its row. */
export type OpenedAt = "answers" | "row";

/** What stands in the place of time: the year's water and the seasons, plans beside the sheet, or what to buy next. */
export type InTime = "year" | "beside" | "money";

export type Looking = {
  /** Where somebody is who begins a place of his own; null: nobody does. */
  readonly beginning: Accessor<Begun | null>;
  readonly begin: (to: Begun | null) => void;
  /** Id of the one open card; null: none, as on a phone at rest. */
  readonly part: Accessor<string | null>;
  readonly openPart: (card: string | null) => void;
  /** The card or "card.row" last asked to be shown. */
  readonly sought: Accessor<string | null>;
  /** Opens the part of a card or "card.row", for whoever asks to see it. */
  readonly seek: (id: string) => void;
  /** "card.row" of the number in hand. */
  readonly inHand: Accessor<string | null>;
  /** Takes a number in hand and opens its part; null puts it down. */
  readonly take: (id: string | null) => void;
  /** A number was turned, and no moment has passed since. */
  readonly stirred: Accessor<boolean>;
  readonly stir: () => void;
  /** The quantity that the curve shows. */
  readonly answer: Accessor<string>;
  /** Whether somebody chose it: else it is the lead's. */
  readonly hasChosen: Accessor<boolean>;
  /** What a second panel over the same axis shows. */
  readonly second: Accessor<string | null>;
  readonly chooseAnswer: (id: string, second?: boolean) => void;
  /** The season looked at; null: the worst. */
  readonly year: Accessor<number | null>;
  readonly chooseYear: (year: number | null) => void;
  /** Day of the year that the drawing and the year's water show, from 0 on January 1. */
  readonly day: Accessor<number>;
  /** Null: none is chosen again. */
  readonly setDay: (day: number | null) => void;
  /** Whether somebody has chosen a day; until then the middle of the season is shown. */
  readonly dayChosen: Accessor<boolean>;
  readonly width: Accessor<Width>;
  readonly time: Accessor<InTime>;
  readonly showTime: (what: InTime) => void;
  /** A keyboard is on the screen. */
  readonly typing: Accessor<boolean>;
  /** The quantity whose working is open, where it stands. */
  readonly opened: Accessor<string | null>;
  readonly openedAt: Accessor<OpenedAt>;
  readonly openWorking: (id: string | null, at?: OpenedAt) => void;
};
