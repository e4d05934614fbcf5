// What is said of a record without one whole season; apart from the run, of which the page has no more than the names.

/** Said wherever a record is too short for anything to be told of a season. */
export const NO_WHOLE_SEASON = "The record does not hold one whole season.";
