// What of a day was used by waterings that were noted: its reckoning is in used-today.ts.

/** One's own time, and how long each delivery ran, by its id [s]. */
export type Used = { hands: number; readonly running: Record<string, number> };

export const nothingUsed = (): Used => ({ hands: 0, running: {} });
