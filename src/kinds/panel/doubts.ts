// How well a panel's numbers are known, and what measures them.

import panels from "../../../shared/panels.json";
import { type Doubtful, spreadAt } from "../doubtful.ts";

export const doubts: Doubtful = {
  spreads: { losses: spreadAt("panels", panels, "losses"), dirt: spreadAt("panels", panels, "dirt") },
  measuring: {
    health: { with: "gauge", how: "short it at a clear noon through a meter", into: ["noon_current"] },
    rated_power: { with: "label", how: "read the plate on its back" },
  },
};
