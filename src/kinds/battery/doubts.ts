// How well a battery's numbers are known, and what measures them.

import batteries from "../../../shared/batteries.json";
import { type Doubtful, type Measuring, spreadBy } from "../doubtful.ts";

const BURNED: Measuring = {
  with: "clock",
  how: "burn its test lamp from full and look at the clock",
  into: ["test_time"],
};

const TABLE = { chemistries: batteries.chemistries };

const byKind = (column: string) => spreadBy("chemistry", "batteries", TABLE, "chemistries", column);

export const doubts: Doubtful = {
  spreads: {
    round_trip_efficiency: byKind("round_trip_efficiency"),
    peukert: byKind("peukert"),
    self_discharge: byKind("self_discharge"),
    inner_resistance: byKind("inner_resistance"),
  },
  measuring: { health: BURNED, rated_capacity: BURNED },
};
