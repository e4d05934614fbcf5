// What a card kind is to the network and the season: how it hangs together with others, what the run takes of it, and
// what it gives back. Each kind says it once, in `season.ts` of its room; `kinds/season` gathers.

import type { EdgeKind, Role } from "../network/network.ts";

/** An end of a tie: the card itself, or the first of these link rows that leads to a card. */
type TieEnd = "itself" | readonly string[];

/** An edge of the network that a card's links make. */
export type Tie = {
  readonly kind: EdgeKind;
  readonly from: TieEnd;
  readonly to: TieEnd;
  /**
   * Rows of a line: why nothing ever passes (a word; none where it runs), what the water must stand over [m], and the
   * brim of the tank it starts at [m] (none at a joint).
   */
  readonly passes?: { readonly blocked: string; readonly over: string; readonly brim: string };
};

export type SeasonShare = {
  /** What it is to the network; left out: not a part that water or power stops at. */
  readonly role?: Role;
  readonly ties?: readonly Tie[];
};
