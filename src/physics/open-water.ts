// How fast open water dries, by the reference.

/** Shallow open water over reference grass [-]: FAO-56 Table 12, less than 2 m deep. */
export const OPEN_WATER_COEFFICIENT = 1.05;
