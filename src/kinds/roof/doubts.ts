// How well a roof's numbers are known, and what measures them.

import roofs from "../../../shared/roofs.json";
import { type Doubtful, spreadAt, spreadBy } from "../doubtful.ts";

const TABLE = { doubts: roofs.doubts, materials: roofs.materials, first_flush: roofs.first_flush };

export const doubts: Doubtful = {
  spreads: {
    runoff_coefficient: spreadBy("material", "roofs", TABLE, "materials", "runoff_coefficient"),
    wetting_loss: spreadBy("material", "roofs", TABLE, "materials", "wetting_loss"),
    first_flush: spreadAt("roofs", TABLE, "first_flush.default"),
  },
  measuring: {
    runoff_coefficient: {
      with: "dip",
      how: "dip the tank before and after a good rain",
      into: ["dip_catch"],
    },
    first_flush: { with: "bucket", how: "empty its pipe into a bucket after a rain" },
  },
};
