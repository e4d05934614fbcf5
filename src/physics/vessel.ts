// Level to volume and back for one tank, or several alike that are joined at the base.

/**
 * A vessel by its inside height [m] and its volume when full [m3].
 * `upright` has one cross-section all the way up; `lying` is a cylinder on its side (height is its diameter).
 */
export type Vessel = {
  readonly form: "upright" | "lying";
  readonly height: number;
  readonly volume: number;
};
