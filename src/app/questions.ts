// Everything that is asked of the whole worksheet again and again while it stands open, each by an asker of its own.

import type { ShowOptions } from "../units/show.ts";
import type { AskingPool } from "../worker/asking-pool.ts";
import { createDrier } from "./drier.ts";
import type { Engine } from "./engine.ts";
import { createGivesOut } from "./gives-out.ts";
import { createSizes } from "./sizes.ts";

export function createQuestions(engine: Engine, pool: AskingPool, options: () => ShowOptions) {
  return {
    drier: createDrier(engine, pool.asker(), options),
    ...createGivesOut(engine, pool.asker()),
    sizes: createSizes(engine, pool.asker()),
  };
}
