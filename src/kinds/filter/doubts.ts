// How well a filter's numbers are known, and what measures them.

import roofs from "../../../shared/roofs.json";
import { type Doubtful, spreadAt } from "../doubtful.ts";

const TABLE = { filter_efficiency: roofs.filter_efficiency };

export const doubts: Doubtful = { spreads: { clean_passes: spreadAt("roofs", TABLE, "filter_efficiency") } };
