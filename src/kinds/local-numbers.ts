// Which givens belong to one place: what somebody else's worksheet cannot know of yours.

/** A map, so that a card of a kind named like an inherited word finds nothing. */
const LOCAL: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    weather: ["record", "normal_rain", "normal_wet_days", "normal_highs", "normal_lows", "monthly_eto"],
    site: ["latitude", "elevation"],
    roof: ["footprint", "length", "width"],
    tank: ["ground_height", "stand_height", "level_today"],
    tee: ["height"],
    delivery: ["outlet_height"],
  }),
);

/** Names of the givens of a card kind that a received worksheet has from its maker's place. */
export const localNumbers = (kind: string): readonly string[] => LOCAL.get(kind) ?? [];
