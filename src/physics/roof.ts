// Rain on a roof to water in a gutter: by the day with its losses, by the year, and in a storm.

import { requireNotNegative, requirePositive, requireWithin } from "./domain-error.ts";

const SOURCE = "water balance of a roof";

/** Rain of a day under which a rain event has ended [m]: common practice, no source. */
const EVENT_ENDS_BELOW = 0.001;

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

function requireRoof(roof: Roof): void {
  requireNotNegative("footprint", roof.footprint, SOURCE);
  requireWithin("runoff coefficient", roof.runoffCoefficient, [0, 1], SOURCE);
  requireNotNegative("wetting loss", roof.wettingLoss, SOURCE);
  requireNotNegative("first flush", roof.firstFlush, SOURCE);
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
