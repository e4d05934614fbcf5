// Rain on a roof to water in a gutter: by the day with its losses, by the year, and in a storm.

import { requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const SOURCE = "water balance of a roof";

/** Rain of a day under which a rain event has ended [m]: common practice, no source. */
export const EVENT_ENDS_BELOW = 0.001;

/** A roof and what of its rain is lost. */
export type Roof = {
  /** Plan area down to the gutter line, never along the slope [m2]. */
  readonly footprint: number;
  /** Share of the rain that runs off, 0..1 [-]. */
  readonly runoffCoefficient: number;
  /** Depth lost each rain day, after the coefficient [m]. */
  readonly wettingLoss: number;
  /** Depth diverted once an event, after the coefficient and the wetting loss [m]. */
  readonly firstFlush: number;
};

/** A roof's day. */
export type RoofDay = {
  /** Water that reaches the tank [m3]. */
  readonly volume: number;
  /** Diverted as first flush [m3]. */
  readonly flushed: number;
  /** Depth that the diverter still takes in the morning of the next day [m]. */
  readonly flushLeft: number;
};

/**
 * Water that a roof gives on a day: coefficient times rain, less the wetting loss, less what is left of the event's
 * first flush, never below nothing. The diverter drains when the event ends with a day under 1 mm.
 *
 * @param roof area and losses, units at the type's fields
 * @param rain of the day [m]
 * @param flushLeft depth that the diverter still takes [m]
 * @returns volume to the tank and diverted [m3], and what the diverter takes on the next day [m]
 * @throws DomainError for negative rain or losses, or a coefficient outside 0..1
 * @source definition; order of the losses: common practice, no source
 */
export function dayRunoff(roof: Roof, rain: number, flushLeft: number): RoofDay {
  requireRoof(roof);
  requireNotNegative("rain", rain, SOURCE);
  requireNotNegative("first flush left", flushLeft, SOURCE);
  const wetted = Math.max(0, roof.runoffCoefficient * rain - roof.wettingLoss);
  const flushed = Math.min(flushLeft, wetted);
  return {
    volume: (wetted - flushed) * roof.footprint,
    flushed: flushed * roof.footprint,
    flushLeft: rain < EVENT_ENDS_BELOW ? roof.firstFlush : flushLeft - flushed,
  };
}

/**
 * Water that a roof gives on each day of a record.
 *
 * @param roof area and losses, units at the type's fields
 * @param rain of each day [m]
 * @returns volume of each day [m3]
 * @throws DomainError as dayRunoff
 * @source dayRunoff, day after day, with the diverter empty at the start
 */
export function dailyRunoff(roof: Roof, rain: ArrayLike<number>): Float64Array {
  let flushLeft = roof.firstFlush;
  return Float64Array.from(rain, (depth) => {
    const day = dayRunoff(roof, depth, flushLeft);
    flushLeft = day.flushLeft;
    return day.volume;
  });
}

function requireRoof(roof: Roof): void {
  requireNotNegative("footprint", roof.footprint, SOURCE);
  requireWithin("runoff coefficient", roof.runoffCoefficient, [0, 1], SOURCE);
  requireNotNegative("wetting loss", roof.wettingLoss, SOURCE);
  requireNotNegative("first flush", roof.firstFlush, SOURCE);
}

/**
 * Water that a depth of rain gives without further losses: area times coefficient times depth.
 *
 * @param footprint plan area [m2]
 * @param coefficient share that runs off, 0..1 [-]
 * @param rain depth [m]
 * @returns volume [m3]
 * @throws DomainError for a negative number or a coefficient outside 0..1
 * @source definition
 */
export function catchVolume(footprint: number, coefficient: number, rain: number): number {
  requireNotNegative("footprint", footprint, SOURCE);
  requireWithin("runoff coefficient", coefficient, [0, 1], SOURCE);
  requireNotNegative("rain", rain, SOURCE);
  return footprint * coefficient * rain;
}

/** A roof, a year's rain and a year's fixed loss. */
export type RoofYear = {
  /** Plan area [m2]. */
  readonly footprint: number;
  /** Rain of the year [m]. */
  readonly rain: number;
  /** Share of the rain after the loss that is caught, 0..1 [-]. */
  readonly coefficient: number;
  /** Depth that wets and dries in the year, before the coefficient [m]. */
  readonly yearlyLoss: number;
};

/**
 * Water that a roof gives in a year with a fixed loss taken off first: A (rain - B) x area, never below nothing.
 *
 * @param year roof, rain and losses, units at the type's fields
 * @returns volume [m3]
 * @throws DomainError for a negative number or a coefficient outside 0..1
 * @source enHealth (Australia), Guidance on use of rainwater tanks, App. B, 2011, after Martin 1980 (read)
 */
export function yearlyCatchAfterLoss({ footprint, rain, coefficient, yearlyLoss }: RoofYear): number {
  requireNotNegative("yearly loss", yearlyLoss, SOURCE);
  requireNotNegative("rain", rain, SOURCE);
  return catchVolume(footprint, coefficient, Math.max(0, rain - yearlyLoss));
}

/**
 * Plan area of a rectangular roof that stands over its walls on all sides: (length + 2 o)(width + 2 o).
 *
 * @param length of the walls [m]
 * @param width of the walls [m]
 * @param overhang of the roof over the walls, seen from above [m]
 * @returns area [m2]
 * @throws DomainError for a length or width of 0 or a negative overhang
 * @source geometry
 */
export function planArea(length: number, width: number, overhang: number): number {
  requirePositive("length", length, SOURCE);
  requirePositive("width", width, SOURCE);
  requireNotNegative("overhang", overhang, SOURCE);
  return (length + 2 * overhang) * (width + 2 * overhang);
}

/** One rain after which the tank was dipped. */
export type DippedRain = {
  /** By which the tank's water grew [m3]. */
  readonly volume: number;
  /** Plan area of the roof [m2]. */
  readonly area: number;
  /** Depth of that rain [m]. */
  readonly rain: number;
  /** Depth that wet the roof and was flushed [m]. */
  readonly lost: number;
};

/**
 * Share of the rain that ran off, from what one rain brought: (volume / area + depth lost) / rain.
 *
 * @param dipped what was measured, units at the type's fields
 * @returns share; above 1 where more came in than the roof can have brought [-]
 * @throws DomainError for an area or a rain of 0, a negative volume or loss
 * @validity one rain on one day, and nothing else that filled or emptied the tank
 * @source dayRunoff, solved for the coefficient
 */
export function runoffShare({ volume, area, rain, lost }: DippedRain): number {
  requireNotNegative("volume", volume, SOURCE);
  requirePositive("area", area, SOURCE);
  requirePositive("rain", rain, SOURCE);
  requireNotNegative("depth lost", lost, SOURCE);
  return (volume / area + lost) / rain;
}
