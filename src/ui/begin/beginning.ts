// What beginning a place of one's own needs of the app; fetched when somebody begins.

import type { UnitSystemName, Worksheet } from "../../document/worksheet.ts";
import type { Result } from "../../graph/types.ts";
import type { Starts, Told } from "../../kinds/asking.ts";
import type { Wish } from "../../kinds/lay-out.ts";

/** A place as it would be laid out. */
export type Preview = { readonly worksheet: Worksheet; readonly result: (id: string) => Result | undefined };

export type Beginning = {
  readonly starts: Starts;
  /** Lays a place out on a sheet of its own; or in place of what stands here, which keeps what was said of its parts. */
  readonly lay: (wish: Wish, units: UnitSystemName, here: boolean) => void;
  readonly preview: (wish: Wish, units: UnitSystemName) => Preview;
  /** Tells what was answered, by card; answers to one question in a row are one step. */
  readonly tell: (told: Readonly<Record<string, Told>>, label: string, merge: string) => void;
};

/** What somebody who begins is at: counting what there is, or answering one number after the other. */
export type Begun = {
  readonly step: "count" | "ask";
  /** What was counted; null where that is not known any more. */
  readonly wish: Wish | null;
  /** Whether what is counted is laid out on this very sheet. */
  readonly here: boolean;
};

/** Begins a place on a sheet of its own; what stands here stays. */
export const beginAnew = ({ looking }: { readonly looking: { readonly begin: (to: Begun) => void } }): void =>
  looking.begin({ step: "count", wish: null, here: false });
