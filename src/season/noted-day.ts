// What is noted of a day that is being run.

import type { Happened } from "../happened/happened.ts";
import type { Source } from "./sources.ts";
import type { Used } from "./used.ts";

/** What is noted of a day that is being run. */
export type NotedDay = {
  /** Beds that got what was noted and nothing else. */
  readonly beds: ReadonlySet<string>;
  /** Waterings, and what was seen and moved between and after them, in order. */
  readonly noon: readonly Happened[];
  /** Of the waterings what their tanks could not give at once; filled as the day is run. */
  readonly left: Left[];
  /** What the waterings took of the day; filled as it is run. */
  readonly used: Used;
  /** Called before each of them is taken in; null: they follow each other at once. */
  readonly before?: (one: Happened) => void;
};

/** Water of a watering that is still to be found [m3], and where it may come from. */
export type Left = { readonly sources: readonly Source[]; volume: number };
