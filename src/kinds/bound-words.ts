// What stood in the way of a watering, in a grower's words.

/** As the reason why a bed does not get its water. */
export const BOUND_WORDS: Readonly<Record<string, string>> = {
  rain: "the tanks run out, for want of rain",
  storage: "the tanks run out; water spilled earlier that a bigger one would have kept",
  transfer: "the small tank is not full again in time",
  pump_time: "the pump cannot give so much in the time",
  energy: "the battery is empty",
  hands: "your time is used up",
  held_back: "the water is held back for beds that come first",
};

/** The reason in words, or the word itself. */
export const boundWords = (bound: string | null): string =>
  bound === null ? "there is too little" : (BOUND_WORDS[bound] ?? bound);
