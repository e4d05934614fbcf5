// Radiation from sunshine hours, which the published examples of Penman-Monteith start from.

import { DomainError } from "../../src/physics/domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/**
 * Sunshine at the ground from the hours of bright sun.
 * Rs = (0.25 + 0.50 n / N) Ra
 * @param extraterrestrial - radiation at the top of the air [J/m2 of the day]
 * @param sunshine - bright sunshine n [s]
 * @param daylight - daylight N [s]
 * @returns radiation of the day [J/m2]
 * @throws DomainError when sunshine is negative or longer than the daylight
 * @validity with the Angstrom coefficients FAO-56 recommends where none are calibrated
 * @source FAO-56 Eq. 35
 */
export function solarFromSunshine(extraterrestrial: number, sunshine: number, daylight: number): number {
  if (!(sunshine >= 0 && sunshine <= daylight && daylight > 0)) {
    throw new DomainError("sunshine", sunshine, "0 to the daylight", `${BOOK}, Eq. 35`);
  }
  return (0.25 + (0.5 * sunshine) / daylight) * extraterrestrial;
}
