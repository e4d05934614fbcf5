// How well a pump's numbers are known, and what measures them. What its label says too much is doubted once: by the share
// of it that is believed, not by the label's figure as well.

import pumps from "../../../shared/pumps.json";
import { type Doubtful, type Measuring, spreadAt, spreadBy } from "../doubtful.ts";
import { tableSpread } from "../table-doubt.ts";

const TABLE = {
  pumps: pumps.pumps,
  believed_share: pumps.believed_share,
  lowest_water: pumps.lowest_water,
};

const BELIEVED = tableSpread("pumps", TABLE, "believed_share");
const TIMED: Measuring = { with: "bucket", how: "time a bucket at the end of its hose" };

const bySize = (column: string) => spreadBy("size", "pumps", TABLE, "pumps", column);

export const doubts: Doubtful = {
  spreads: {
    shutoff_head: bySize("shutoff_head"),
    rated_current: bySize("rated_current"),
    believed_share: {
      by: "figures",
      spreadOf: (word) => (word === "label" ? BELIEVED : null),
    },
    lowest_water: spreadAt("pumps", TABLE, "lowest_water"),
  },
  measuring: {
    believed_share: TIMED,
    open_flow: TIMED,
    shutoff_head: {
      with: "tape",
      how: "lift the end of its hose until no water comes, and measure how high",
    },
    rated_current: { with: "gauge", how: "put a meter in its wire while it runs" },
  },
};
