// Rain of one reading or one day that can hardly be right: it is asked about wherever it is said.

/** More rain than this is asked about [m]: our definition. */
const MUCH_RAIN = 0.3;

export const isMuchRain = (depth: number): boolean => depth > MUCH_RAIN;

/** "12 in of rain in the gauge is more than falls in weeks in most places. Is the unit right?" */
export const muchRainSaid = (depth: string, where: string): string =>
  `${depth} of rain ${where} is more than falls in weeks in most places. Is the unit right?`;
