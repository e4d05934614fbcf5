// Places by their latitude, to find one's own by: from memory, each within a degree of the figure before it. What hangs on
// the latitude is the length of the days, which a degree hardly moves.

/** Latitude [deg], north above nought, and places that lie there. */
export const PLACES: readonly (readonly [latitude: number, names: string])[] = [
  [64, "Fairbanks, Reykjavik"],
  [60, "Oslo, Helsinki"],
  [56, "Edinburgh, Copenhagen"],
  [51, "Calgary, Brussels"],
  [48, "Seattle, Munich, Vienna"],
  [45, "Minneapolis, Portland in Oregon, Bordeaux"],
  [42, "Boston, Chicago, Rome"],
  [39, "Kansas City, Cincinnati, Lisbon"],
  [36, "Nashville, Tulsa, Las Vegas"],
  [34, "Los Angeles, Atlanta"],
  [30, "Austin, New Orleans, Cairo"],
  [26, "Miami, Brownsville"],
  [21, "Honolulu, Guadalajara"],
  [15, "Dakar, Manila, Guatemala City"],
  [0, "Quito, Singapore, Kampala"],
  [-18, "Cairns, Harare, Suva"],
  [-27, "Brisbane, Johannesburg"],
  [-34, "Sydney, Cape Town, Buenos Aires"],
  [-37, "Auckland, Melbourne"],
  [-43, "Christchurch, Hobart"],
];
