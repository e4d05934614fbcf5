// One seed for every property test, so that a run can be repeated; FC_SEED=random (or a number) looks elsewhere.

import fc from "fast-check";

const USUAL_SEED = 20_261_125;
const wanted = process.env.FC_SEED;

const seed = wanted === "random" ? Date.now() % 2 ** 31 : Number(wanted ?? USUAL_SEED);

fc.configureGlobal({ seed });
