// How well a tank's numbers are known, and what measures them.

import tanks from "../../../shared/tanks.json";
import { type Doubtful, spreadBy } from "../doubtful.ts";

const TABLE = { doubts: tanks.doubts, tanks: tanks.tanks };

const bySize = (column: string) => spreadBy("start_from", "tanks", TABLE, "tanks", column);

export const doubts: Doubtful = {
  spreads: {
    water_height: bySize("water_height"),
    diameter: bySize("diameter"),
    length: bySize("length"),
    width: bySize("width"),
  },
  measuring: {
    capacity: { with: "bucket", how: "fill it by the bucket and count" },
    start_share: { with: "dip", how: "dip it" },
    leak: { with: "dip", how: "dip it on two dry days while nothing is drawn" },
  },
};
