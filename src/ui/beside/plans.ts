// What the components know of plans beside the sheet, and what may be done with them.

import type { Accessor } from "solid-js";

/** One answer of the sheet or of a plan. */
export type PlanCell = {
  readonly shown: string;
  /** Length of its bar, of the longest in its row: 0 to 1; null where there is no number. */
  readonly share: number | null;
  readonly best: boolean;
  /** A new one is being worked out. */
  readonly old: boolean;
};

export type PlanRow = { readonly id: string; readonly cells: readonly PlanCell[] };

/** A plan that stands beside the sheet. */
export type PlanHead = {
  readonly name: string;
  /** What differs from the sheet as it is now. */
  readonly differs: readonly string[];
  /** What of it does not count, and why. */
  readonly left: readonly string[];
  /** "$340 in all, $40 more", or nothing where no price is known. */
  readonly dearer: string;
};

export type Plans = {
  readonly heads: Accessor<readonly PlanHead[]>;
  /** What the sheet's own parts cost; "" where no price is known. */
  readonly price: Accessor<string>;
  /** Answers, the sheet's first. */
  readonly rows: Accessor<readonly PlanRow[]>;
  /** Names of plans that are kept and do not stand beside the sheet. */
  readonly others: Accessor<readonly string[]>;
  /** Puts one of the others beside the sheet. */
  readonly bring: (name: string) => void;
  /** Why the plans could not be worked out; "" where they could. */
  readonly failure: Accessor<string>;
  /** Keeps what was turned since holding as a plan; the sheet goes back to what is held. False where nothing was. */
  readonly keep: () => boolean;
  readonly takeOver: (name: string) => void;
  readonly rename: (from: string, to: string) => void;
  readonly drop: (name: string) => void;
};
