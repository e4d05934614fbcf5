// Every kind of card there is. A new kind is one file and one line here.

import type { CardKinds } from "../graph/types.ts";
import { battery } from "./battery/index.ts";
import { bed } from "./bed/index.ts";
import { carry } from "./carry/index.ts";
import { cost } from "./cost/index.ts";
import { delivery } from "./delivery/index.ts";
import { draw } from "./draw/index.ts";
import { filter } from "./filter/index.ts";
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

/** So that a card whose kind is called like something every object has, as "constructor", is of no known kind. */
function withoutInherited(kinds: CardKinds): CardKinds {
  return Object.assign(Object.create(null), kinds);
}

export const CARD_KINDS: CardKinds = withoutInherited({
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
});
