// What the components know of trying a tank in other sizes. The app provides it.

import type { Accessor } from "solid-js";
import type { SizeCurve } from "../../scene/size-curve.ts";

/** One card tried in other sizes. */
export type SizeStudy = {
  /** The card. */
  readonly card: string;
  /** Sizes run so far; while the place changed since, those of the place before. */
  readonly curve: SizeCurve;
  /** Sizes run and to be run. */
  readonly done: number;
  readonly of: number;
  readonly state: "working" | "old" | "ready" | "failed";
  /** Why there is no answer. */
  readonly reason: string;
};

export type Sizes = {
  readonly study: Accessor<SizeStudy | null>;
  /** Tries a card in other sizes; the one tried before is closed. */
  readonly ask: (card: string) => void;
  readonly close: () => void;
};
