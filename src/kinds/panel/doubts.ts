// How well a panel's numbers are known, and what measures them.

import panels from "../../../shared/panels.json";
import { type Doubtful, spreadAt } from "../doubtful.ts";

const TABLE = { losses: panels.losses, dirt: panels.dirt };

export const doubts: Doubtful = {
  spreads: { losses: spreadAt("panels", TABLE, "losses"), dirt: spreadAt("panels", TABLE, "dirt") },
  measuring: {
    health: { with: "gauge", how: "short it at a clear noon through a meter", into: ["noon_current"] },
    rated_power: { with: "label", how: "read the plate on its back" },
  },
};
