// Every kind of card there is. A new kind is one file and one line here.

import type { CardKinds } from "../graph/types.ts";
import { battery } from "./battery.ts";
import { bed } from "./bed.ts";
import { carry } from "./carry.ts";
import { cost } from "./cost.ts";
import { delivery } from "./delivery.ts";
import { draw } from "./draw.ts";
import { filter } from "./filter.ts";
import { line } from "./line.ts";
import { own } from "./own.ts";
import { panel } from "./panel.ts";
import { pump } from "./pump.ts";
import { roof } from "./roof.ts";
import { season } from "./season.ts";
import { site } from "./site.ts";
import { tank } from "./tank.ts";
import { tee } from "./tee.ts";
import { weather } from "./weather.ts";
import { wire } from "./wire.ts";

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
