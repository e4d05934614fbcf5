// Which givens belong to one place: what somebody else's worksheet cannot know of yours.

const LOCAL: Readonly<Record<string, readonly string[]>> = {
  weather: ["record", "normal_rain", "normal_wet_days", "normal_highs", "normal_lows", "monthly_eto"],
  site: ["latitude", "elevation"],
  roof: ["footprint", "length", "width"],
  tank: ["ground_height", "stand_height", "level_today"],
  tee: ["height"],
  delivery: ["outlet_height"],
};

/** Names of the givens of a card kind that a received worksheet has from its maker's place. */
export const localNumbers = (kind: string): readonly string[] => LOCAL[kind] ?? [];
