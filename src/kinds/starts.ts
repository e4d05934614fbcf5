// How all kinds start, together: fetched when somebody lays out a place of their own or a number of it is still to be said.

import type { Starts } from "./asking.ts";
import { start as battery } from "./battery/start.ts";
import { start as bed } from "./bed/start.ts";
import { start as carry } from "./carry/start.ts";
import { start as delivery } from "./delivery/start.ts";
import { start as line } from "./line/start.ts";
import { start as panel } from "./panel/start.ts";
import { start as pump } from "./pump/start.ts";
import { start as roof } from "./roof/start.ts";
import { start as site } from "./site/start.ts";
import { start as tank } from "./tank/start.ts";
import { start as weather } from "./weather/start.ts";

/** In the order in which the water runs, which is that of the page. */
export const STARTS: Starts = {
  weather,
  site,
  roof,
  tank,
  line,
  delivery,
  carry,
  pump,
  battery,
  panel,
  bed,
};
