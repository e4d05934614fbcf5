// What the components may know and do about keeping, handing on and taking along: worksheets, links, files, versions.

import type { Accessor } from "solid-js";

/** A worksheet ready to be handed on. */
export type ShareMade =
  | {
      readonly ok: true;
      readonly address: string;
      /** Whether a rain record of one's own travels in it. */
      readonly hasRecord: boolean;
      readonly leftOut: readonly string[];
    }
  | { readonly ok: false; readonly reason: string };

/** What goes into a link. */
export type LinkWish = {
  /** The latitude as typed, not rounded. */
  readonly exactPlace: boolean;
  /** Monthly figures in the stead of the record. */
  readonly withoutRecord: boolean;
  /** What was noted goes along. */
  readonly withNotes: boolean;
};

/** From where a link to this page opens; a file's page has none that leads anywhere. */
export type Reach = "anywhere" | "house" | "computer" | "file";

export type TableName = "quantities" | "shopping" | "days" | "rain" | "notes";

/** A worksheet that somebody sent. */
export type Received = {
  /** "" where nobody gave a name. */
  readonly by: string;
  /** As a date is shown, "" where none was given. */
  readonly on: string;
  /** Whether there is one of one's own to go back to. */
  readonly hasOwn: boolean;
};

export type Keeping = {
  /** What somebody sent and the reader has not said yet to keep. */
  readonly received: Accessor<Received | null>;
  readonly keepReceived: () => void;
  /** Opens the one's own that was worked on last; what was received stays among the worksheets. */
  readonly backToMine: () => void;
  /** Nothing was kept here before, and nothing changed yet. */
  readonly firstVisit: Accessor<boolean>;
  /** Something to be told and put away again; a refused save stays until it works. */
  readonly notice: Accessor<string>;
  readonly refused: Accessor<boolean>;
  /** Ids of the numbers that still belong to the maker's place. */
  readonly borrowed: Accessor<readonly string[]>;
  /** Saves that could not be read, kept whole. */
  readonly aside: Accessor<readonly string[]>;
  /** Title of what was thrown away last, while it can be brought back. */
  readonly thrown: Accessor<string | null>;
  readonly version: string;
  /** What is needed for the page to open again, to follow its version. */
  readonly opens: Accessor<string>;
  readonly waiting: Accessor<boolean>;
  readonly update: () => void;
  readonly dismiss: () => void;
  /** The place is the user's own: nothing is borrowed. */
  readonly mine: () => void;
  /** Reads anew what is kept on this device. */
  readonly lookAgain: () => void;
  readonly renameSheet: (id: string, title: string) => void;
  readonly copySheet: (id: string) => void;
  readonly removeSheet: (id: string) => void;
  readonly bringBack: () => void;
  readonly saveAside: (key: string) => void;
  readonly link: (wish: LinkWish) => Promise<ShareMade>;
  readonly reach: Reach;
  /** Saves the page with the worksheet in it as one file; resolves to what became of it. */
  readonly savePage: () => Promise<string>;
  /** The device's own way to pass things on; null where it has none. */
  readonly passOn: ((address: string) => void) | null;
  readonly passFileOn: (() => void) | null;
  readonly copyText: (text: string) => Promise<boolean>;
  readonly saveTable: (table: TableName) => void;
  readonly saveCharts: () => void;
};
