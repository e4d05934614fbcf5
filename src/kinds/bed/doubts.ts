// How well a bed's numbers are known, and what measures them.

import climates from "../../../shared/climates.json";
import methods from "../../../shared/water-methods.json";
import { type Doubtful, spreadBy } from "../doubtful.ts";
import { tableSpread } from "../table-doubt.ts";

const METHODS = { doubts: methods.doubts, methods: methods.methods };
const TUNNEL = tableSpread("climates", { covers: climates.covers }, "covers.tunnel.factor");

export const doubts: Doubtful = {
  spreads: {
    efficiency: spreadBy("method", "water-methods", METHODS, "methods", "efficiency"),
    cover_factor: { by: "cover", spreadOf: (word) => (word === "covered" ? TUNNEL : null) },
  },
  measuring: {
    root_depth: { with: "tape", how: "dig beside a grown plant and measure" },
    can_volume: { with: "label", how: "read it off the can" },
  },
};
