// How long the water lasts, as the pages of the season read it. The app provides it.

import type { Accessor } from "solid-js";
import type { Expected, Forecast, FromToday } from "../../telling/from-today.ts";

export type Lasting = {
  /** The newest answer, perhaps of a few years so far; null while there is none. */
  readonly now: Accessor<FromToday | null>;
  /** The newest one of all years. */
  readonly settled: Accessor<FromToday | null>;
  /** With only that bed watered from today on. */
  readonly alone: Accessor<{ readonly bed: string; readonly from: FromToday } | null>;
  readonly working: Accessor<boolean>;
  /** Why there is no answer; "" where nothing stands in the way. */
  readonly failure: Accessor<string>;
  /** From now on it is asked, until what is returned is called. */
  readonly look: () => () => void;
  /** The day that counts as today [days since 1970-01-01]. */
  readonly today: Accessor<number>;
  /** What is expected of the coming days, kept on this device. */
  readonly expected: Accessor<Forecast>;
  readonly expect: (day: number, what: Expected | null) => void;
};
