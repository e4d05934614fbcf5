// What a mulch does to a crop's coefficients.

import type { CropCurve } from "./crop-coefficient.ts";
import { requireWithin } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/** Basal coefficients of a crop: what it uses while the ground between is dry [-]. */
export type BasalCurve = { readonly middle: number; readonly end: number };

/**
 * Coefficients under a plastic film with drip below it.
 * initial as given; Kc middle (1 - cut); Kc end (1 - cut)
 * @param curve - coefficients of the bare bed and days of the stages [-]
 * @param cut - share by which the film cuts them, 0 to 0.5 [-]
 * @param initial - coefficient of the initial stage under film, 0.10 in the source [-]
 * @returns coefficients under film, none above that of the bare bed [-]
 * @throws DomainError when the cut is outside 0 to 0.5 or the initial coefficient outside 0 to 1.2
 * @validity film over most of the bed
 * @source FAO-56 ch. 10, example 45
 */
export function filmedCurve(curve: CropCurve, cut: number, initial: number): CropCurve {
  requireWithin("cut by the film", cut, [0, 0.5], `${BOOK}, p. 195`);
  requireWithin("initial coefficient under film", initial, [0, 1.2], `${BOOK}, p. 195`);
  return {
    kcInitial: Math.min(initial, curve.kcInitial),
    kcMiddle: curve.kcMiddle * (1 - cut),
    kcEnd: curve.kcEnd * (1 - cut),
    stages: curve.stages,
  };
}

/**
 * Coefficients under an organic mulch, which keeps the ground from drying but not the plant from drinking.
 * Kc initial (1 - cut); Kcb + (Kc - Kcb) (1 - cut) in the middle and at the end; cut = cut per cover times cover
 * @param curve - coefficients of the bare bed and days of the stages [-]
 * @param basal - basal coefficients; one above the crop coefficient counts as equal to it [-]
 * @param cover - share of the ground covered, 0 to 1 [-]
 * @param cutPerCover - cut in evaporation per share covered, 0.5 in the source [-]
 * @returns coefficients under mulch, none above that of the bare bed [-]
 * @throws DomainError when a share is outside 0 to 1
 * @validity loose layers that let rain and water through
 * @source FAO-56 ch. 10, p. 196-197
 */
export function mulchedCurve(
  curve: CropCurve,
  basal: BasalCurve,
  cover: number,
  cutPerCover: number,
): CropCurve {
  requireWithin("ground covered", cover, [0, 1], `${BOOK}, p. 196`);
  requireWithin("cut per cover", cutPerCover, [0, 1], `${BOOK}, p. 196`);
  const left = 1 - cover * cutPerCover;
  const kept = (coefficient: number, base: number) =>
    coefficient - Math.max(0, coefficient - base) * (1 - left);
  return {
    kcInitial: curve.kcInitial * left,
    kcMiddle: kept(curve.kcMiddle, basal.middle),
    kcEnd: kept(curve.kcEnd, basal.end),
    stages: curve.stages,
  };
}
