// The state of the air at a place: pressure, moisture, wind, and what they mean for evaporation.

import { ZERO_CELSIUS } from "../units/constants.ts";
import { DomainError, requireNotNegative, requirePositive } from "./domain-error.ts";

const BOOK = "Allen, Pereira, Raes & Smith (1998), FAO Irrigation and Drainage Paper 56";

/**
 * Mean air pressure at a height above the sea.
 * P = 101.3 kPa ((293 - 0.0065 z) / 293)^5.26
 * @param elevation - height above the sea [m]
 * @returns air pressure [Pa]
 * @throws DomainError outside -500 to 9000 m
 * @validity standard atmosphere at 20 degrees Celsius
 * @source FAO-56 Eq. 7
 */
export function airPressure(elevation: number): number {
  if (!(elevation >= -500 && elevation <= 9000)) {
    throw new DomainError("elevation", elevation, "-500 to 9000 m", `${BOOK}, Eq. 7`);
  }
  return 101_300 * ((293 - 0.0065 * elevation) / 293) ** 5.26;
}

/**
 * Psychrometric constant.
 * gamma = 0.000665 P
 * @param pressure - air pressure [Pa]
 * @returns psychrometric constant [Pa/K]
 * @throws DomainError when the pressure is not above zero
 * @validity latent heat of 2.45 MJ/kg
 * @source FAO-56 Eq. 8
 */
export function psychrometricConstant(pressure: number): number {
  requirePositive("air pressure", pressure, `${BOOK}, Eq. 8`);
  return 0.000665 * pressure;
}

/**
 * Vapour pressure of saturated air.
 * e = 0.6108 kPa exp(17.27 T / (T + 237.3)), T in degrees Celsius
 * @param temperature - air temperature [K]
 * @returns saturation vapour pressure [Pa]
 * @throws DomainError outside -60 to 70 degrees Celsius
 * @validity over water
 * @source FAO-56 Eq. 11
 */
export function saturationVapourPressure(temperature: number): number {
  const celsius = celsiusOf(temperature);
  return 610.8 * Math.exp((17.27 * celsius) / (celsius + 237.3));
}

/**
 * Slope of the curve of saturation vapour pressure.
 * Delta = 4098 e(T) / (T + 237.3)^2, T in degrees Celsius
 * @param temperature - air temperature [K]
 * @returns slope [Pa/K]
 * @throws DomainError outside -60 to 70 degrees Celsius
 * @validity over water
 * @source FAO-56 Eq. 13
 */
export function vapourPressureSlope(temperature: number): number {
  return (4098 * saturationVapourPressure(temperature)) / (celsiusOf(temperature) + 237.3) ** 2;
}

/**
 * Saturation vapour pressure of a day, the mean of both extremes and never that of the mean temperature.
 * es = (e(Tmax) + e(Tmin)) / 2
 * @param highest - highest air temperature [K]
 * @param lowest - lowest air temperature [K]
 * @returns saturation vapour pressure [Pa]
 * @throws DomainError outside -60 to 70 degrees Celsius
 * @validity daily, weekly or monthly means
 * @source FAO-56 Eq. 12
 */
export function meanSaturationVapourPressure(highest: number, lowest: number): number {
  return (saturationVapourPressure(highest) + saturationVapourPressure(lowest)) / 2;
}

/**
 * Vapour pressure of the air where no humidity was measured: the dew point is taken to be the lowest temperature.
 * ea = e(Tmin - below)
 * @param lowest - lowest air temperature [K]
 * @param below - how far the dew point lies below it, 2 to 3 K in arid places, else 0 [K]
 * @returns vapour pressure [Pa]
 * @throws DomainError when `below` is outside 0 to 10 K
 * @validity well-watered surroundings, or arid with the allowance
 * @source FAO-56 Eq. 48
 */
export function vapourFromLowest(lowest: number, below: number): number {
  if (!(below >= 0 && below <= 10)) {
    throw new DomainError("dew point allowance", below, "0 to 10 K", `${BOOK}, Eq. 48`);
  }
  return saturationVapourPressure(lowest - below);
}

/**
 * Wind at 2 m above short grass from wind at another height.
 * u2 = uz 4.87 / ln(67.8 z - 5.42)
 * @param speed - measured wind [m/s]
 * @param height - height of the measurement [m]
 * @returns wind at 2 m [m/s]
 * @throws DomainError when the speed is negative or the height below 0.5 m
 * @validity above short grass
 * @source FAO-56 Eq. 47
 */
export function windAtTwoMetres(speed: number, height: number): number {
  requireNotNegative("wind", speed, `${BOOK}, Eq. 47`);
  if (!(height >= 0.5))
    throw new DomainError("height of the wind", height, "at least 0.5 m", `${BOOK}, Eq. 47`);
  return (speed * 4.87) / Math.log(67.8 * height - 5.42);
}

/**
 * Lowest relative humidity of a day estimated from its temperatures.
 * RHmin = e(Tmin) / e(Tmax)
 * @param highest - highest air temperature [K]
 * @param lowest - lowest air temperature [K]
 * @returns lowest relative humidity, 0 to 1 [-]
 * @throws DomainError when the highest temperature is below the lowest
 * @validity where the dew point is near the lowest temperature
 * @source FAO-56 Eq. 64
 */
export function lowestHumidityFromTemperature(highest: number, lowest: number): number {
  if (!(highest >= lowest)) {
    throw new DomainError("highest temperature", highest, "at least the lowest", `${BOOK}, Eq. 64`);
  }
  return saturationVapourPressure(lowest) / saturationVapourPressure(highest);
}

function celsiusOf(temperature: number): number {
  const celsius = temperature - ZERO_CELSIUS;
  if (!(celsius >= -60 && celsius <= 70)) {
    throw new DomainError("air temperature", temperature, "-60 to 70 degrees Celsius", `${BOOK}, Eq. 11`);
  }
  return celsius;
}
