// The numbers of each card that nobody but the grower knows: what a fresh worksheet still waits for.

/** A row to be filled in, unless another row of the card answers already or is given. */
export type FirstNumber = {
  readonly row: string;
  readonly unlessReady?: string;
  readonly unlessGiven?: string;
};

/** By kind of card, in the order in which one would walk and measure. */
export const FIRST_NUMBERS: Readonly<Record<string, readonly FirstNumber[]>> = {
  site: [{ row: "latitude" }],
  roof: [{ row: "footprint" }],
  tank: [{ row: "capacity" }, { row: "ground_height" }],
  line: [{ row: "length" }],
  carry: [{ row: "distance" }],
  battery: [{ row: "rated_capacity" }],
  delivery: [{ row: "bucket_volume" }, { row: "bucket_time" }, { row: "current", unlessReady: "current" }],
  bed: [{ row: "length" }, { row: "width" }],
  weather: [{ row: "normal_rain", unlessGiven: "record" }],
};
