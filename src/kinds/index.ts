// Every kind of card there is, in the order in which they stand on the page. A new kind is one room and one line here.

import { battery } from "./battery/index.ts";
import { bed } from "./bed/index.ts";
import { carry } from "./carry/index.ts";
import { cost } from "./cost/index.ts";
import { delivery } from "./delivery/index.ts";
import { draw } from "./draw/index.ts";
import { filter } from "./filter/index.ts";
import { type Kind, type Kinds, kindsFrom } from "./kind.ts";
import { line } from "./line/index.ts";
import { own } from "./own/index.ts";
import { panel } from "./panel/index.ts";
import { pump } from "./pump/index.ts";
import { roof } from "./roof/index.ts";
import { season } from "./season/index.ts";
import { site } from "./site/index.ts";
import { tank } from "./tank/index.ts";
import { tee } from "./tee/index.ts";
import { weather } from "./weather/index.ts";
import { wire } from "./wire/index.ts";

const ROOMS: readonly Kind[] = [
  weather,
  site,
  roof,
  tank,
  line,
  tee,
  filter,
  draw,
  delivery,
  carry,
  pump,
  wire,
  battery,
  panel,
  bed,
  season,
  cost,
  own,
];

export const CARD_KINDS: Kinds = kindsFrom(ROOMS);

/** All kinds, and some more of one's own. */
export const kindsWith = (...more: readonly Kind[]): Kinds => kindsFrom([...ROOMS, ...more]);
