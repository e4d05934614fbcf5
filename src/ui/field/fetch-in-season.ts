/** The pages of the season, in a script of their own; apart from their names, which each of them knows. */
export const fetchInSeason = async () => (await import("./InSeason.tsx")).InSeason;
