// Over what its numbers are turned and tried: what the trade has, common practice, no source. Limits are the rows' own.

import type { Spans } from "../kind.ts";

export const BATTERY_SPANS: Spans = {
  rated_capacity: [
    [5, "Ah"],
    [200, "Ah"],
  ],
  nominal_voltage: [
    [6, "V"],
    [48, "V"],
  ],
  health: [
    [20, "%"],
    [100, "%"],
  ],
  depth_of_discharge: [
    [20, "%"],
    [90, "%"],
  ],
  round_trip_efficiency: [
    [50, "%"],
    [98, "%"],
  ],
  carried_every: [
    [1, "1"],
    [30, "1"],
  ],
  temperature: [
    [-10, "degC"],
    [40, "degC"],
  ],
  peukert: [
    [1, "1"],
    [1.4, "1"],
  ],
  self_discharge: [
    [1, "%"],
    [20, "%"],
  ],
  inner_resistance: [
    [2, "mohm"],
    [30, "mohm"],
  ],
  other_power: [
    [0, "W"],
    [20, "W"],
  ],
  other_time: [
    [0, "h"],
    [24, "h"],
  ],
};
