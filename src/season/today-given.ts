// What is known of today.

import type { Happened } from "../happened/happened.ts";
import type { Drying } from "./coming-days.ts";
import type { UsualMorning } from "./usual-morning.ts";

/** What is known of today. */
export type TodayGiven = {
  /** [days since 1970-01-01] */
  readonly today: number;
  readonly drying: Drying;
  /** Depth of water above each tank's floor [m], by id. */
  readonly levels: Readonly<Record<string, number>>;
  /** Day on which a level was read, by id, left out: today. */
  readonly dippedOn?: Readonly<Record<string, number>>;
  /** Charge of each battery, of what can be used, by id [-]. */
  readonly charges: Readonly<Record<string, number>>;
  /** Day on which each bed was last soaked through, by id [days since 1970-01-01]. */
  readonly lastSoaked: Readonly<Record<string, number>>;
  /** All that was noted, in order; of a part that is not in it what is said above. */
  readonly happened?: readonly Happened[];
  /** Beds that their grower holds back today. */
  readonly heldBack?: readonly string[];
  /**
   * When a level of today was read of which nobody knows the minute, after midnight [s]: the lines run from what was seen
   * until the hour of watering. Left out: what is told of today is as it stands then.
   */
  readonly dawn?: number;
};

/** How things usually stand on the morning of a date. */
export type Usual = (date: number) => UsualMorning;
