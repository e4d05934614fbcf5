// What is shared by every worksheet that is opened on the page: where things are kept, and the one warm worker.

import type { Accessor } from "solid-js";
import type { Worksheet } from "../document/worksheet.ts";
import type { Words } from "../graph/words.ts";
import type { DailyRecord } from "../rainfall/record.ts";
import type { Bundle } from "../storage/bundle.ts";
import type { InstantStore } from "../storage/instant-store.ts";
import type { Journal } from "../storage/journal.ts";
import type { RecordShelf } from "../storage/record-shelf.ts";
import type { Shelf } from "../storage/shelf.ts";
import type { TypedTexts } from "../storage/typed-texts.ts";
import type { Begun } from "../ui/begin/beginning.ts";
import type { OtherTabs } from "./other-tabs.ts";
import type { createReadOnce } from "./read-once.ts";
import type { WorkerHub } from "./worker-hub.ts";

/** A worksheet laid open, with the records it names. */
export type Laid = {
  readonly id: string;
  readonly revision: number;
  readonly worksheet: Worksheet;
  readonly records: readonly DailyRecord[];
  /** Something the reader must be told on opening. */
  readonly notice: string;
  readonly readOnly: boolean;
  /** The worksheet as somebody else sent it, before what is of his place was marked. */
  readonly received?: Worksheet;
  /** Opened because nothing is kept on this device: somebody is here for the first time. */
  readonly first?: boolean;
  /** Laid out just now: its numbers are asked for. */
  readonly begun?: Begun | undefined;
  /** Found as a note that the slow store refused: still to be kept. */
  readonly unkept?: boolean;
};

/** A worksheet thrown away last. */
export type Thrown = { readonly id: string; readonly worksheet: Worksheet };

export type PageShared = {
  /** What is kept on this device and in no worksheet. */
  readonly device: InstantStore;
  /** Cautions read once on this device. */
  readonly readOnce: ReturnType<typeof createReadOnce>;
  /** What rows and cautions mean, once it is loaded. */
  readonly words: Accessor<Words>;
  readonly shelf: Shelf;
  readonly recordShelf: RecordShelf;
  readonly journal: Journal;
  /** What stands typed in fields and is not entered. */
  readonly typed: TypedTexts;
  readonly otherTabs: OtherTabs;
  /** What a reload of this tab shall open. */
  readonly shows: (sheet: string) => void;
  /** The page goes, all of it noted; and is there again. */
  readonly leaves: () => void;
  readonly returns: () => void;
  /** How what is open now is kept at once; said by each worksheet as it opens. */
  readonly setFlush: (flush: () => Promise<void>) => void;
  /** The records that a worksheet names, out of those kept. */
  readonly recordsOf: (worksheet: Worksheet) => Promise<readonly DailyRecord[]>;
  readonly hub: WorkerHub;
  /** Opens a worksheet that is not kept yet. */
  readonly lay: (
    worksheet: Worksheet,
    records?: readonly DailyRecord[],
    notice?: string,
    begun?: Begun,
  ) => void;
  /** Opens beside the user's own what came by file. */
  readonly receive: (bundle: Bundle) => void;
  readonly titlesKept: () => Promise<ReadonlySet<string>>;
  /** Something said whatever worksheet is open. */
  readonly said: () => string;
  readonly setSaid: (text: string) => void;
  readonly thrown: () => Thrown | null;
  readonly setThrown: (thrown: Thrown | null) => void;
  /** Opens the kept one worked on last, or the demo. */
  readonly openAnother: () => Promise<void>;
  /** Opens a kept one; false where there is none. */
  readonly open: (id: string) => Promise<boolean>;
};
