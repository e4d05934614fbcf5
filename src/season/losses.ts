// What a tank loses by itself: open water to the air, and what seeps out.

import { OPEN_WATER_COEFFICIENT } from "../physics/open-water.ts";

/** Open water under 2 m deep against reference evapotranspiration [-]: FAO-56 Table 12. */
export const OPEN_WATER = OPEN_WATER_COEFFICIENT;
