// The words of all kinds together: what the page loads when it stands, and the command line has at once.

import type { Words } from "../graph/words.ts";
import { words as battery } from "./battery/words.ts";
import { words as bed } from "./bed/words.ts";
import { words as carry } from "./carry/words.ts";
import { words as cost } from "./cost/words.ts";
import { words as delivery } from "./delivery/words.ts";
import { words as draw } from "./draw/words.ts";
import { words as filter } from "./filter/words.ts";
import { words as line } from "./line/words.ts";
import { words as own } from "./own/words.ts";
import { words as panel } from "./panel/words.ts";
import { words as pump } from "./pump/words.ts";
import { words as roof } from "./roof/words.ts";
import { words as season } from "./season/words.ts";
import { words as site } from "./site/words.ts";
import { words as tank } from "./tank/words.ts";
import { words as tee } from "./tee/words.ts";
import { words as weather } from "./weather/words.ts";
import { words as wire } from "./wire/words.ts";

export const KIND_WORDS: Words = {
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
};
