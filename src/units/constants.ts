// Exact spans of time and the standard pull of gravity, for code that would otherwise repeat bare numbers.

/** [s] */
export const MINUTE = 60;
/** [s] */
export const HOUR = 3600;
/** [s] */
export const DAY = 86_400;
/** Minutes of a day on the clock. */
export const MINUTES_A_DAY: number = DAY / MINUTE;
/** Days of a year on the mean, of the Julian one; and of one without a leap day, for what is booked by the day of a year. */
export const DAYS_A_YEAR = 365.25;
export const COMMON_YEAR = 365;
/** Standard acceleration of gravity [m/s2], exact by definition (3rd CGPM, 1901). */
export const GRAVITY = 9.80665;
/** Offset of the Celsius scale [K], exact by definition. */
export const ZERO_CELSIUS = 273.15;
/** [m], exact; empirical relations that are published in millimetres are read with it. */
export const MILLIMETRE = 0.001;
/** [m], exact by definition (international inch, 1959). */
export const INCH = 0.0254;
/** [m], exact by definition (international mile, 1959). */
export const MILE = 1609.344;
/** [J] */
export const MEGAJOULE = 1e6;
