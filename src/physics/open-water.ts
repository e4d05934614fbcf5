// Water lost from an open tank or a pan, and what a pan tells of the reference.

/** Shallow open water over reference grass [-]: FAO-56 Table 12, less than 2 m deep. */
export const OPEN_WATER_COEFFICIENT = 1.05;
