// Worked examples of water, pipes, holes, gravity lines, refills and falling levels.

import { purgeFlow, purgeVelocity } from "../../../src/physics/air-lock.ts";
import { emptyingTime, fallingHeadTime, sharedSurface } from "../../oracles/emptying.ts";
import { type GravityLine, gravityFlow } from "../../../src/physics/gravity-line.ts";
import { openingOf, orificeHead, orificeK } from "../../../src/physics/orifice.ts";
import { orificeFlow } from "../../oracles/orifice.ts";
import { boreArea, frictionFactor, pipeHeadLoss, reynoldsNumber } from "../../../src/physics/pipe-friction.ts";
import { colebrook, hazenWilliams, swameeJain } from "../../oracles/pipe-friction.ts";
import { refillTime } from "../../../src/physics/refill.ts";
import { teeFlows } from "../../../src/physics/tee.ts";
import {
  kinematicViscosity,
  siphonLimit,
  vapourPressure,
  waterDensity,
  waterViscosity,
} from "../../../src/physics/water.ts";
import { GRAVITY } from "../../../src/units/constants.ts";
import type { Adaptor } from "../worked-case.ts";

type Numbers = Record<string, number>;

/** A line from the givens of a case; a seat, with its coefficient, makes the valve. */
function lineOf(given: Numbers): GravityLine {
  return {
    length: given["length"] ?? 0,
    bore: given["bore"] ?? 1,
    roughness: given["roughness"] ?? 0,
    fittingsK: given["fittings_k"] ?? 0,
    opening: given["seat"] === undefined ? null : openingOf(given["seat"], given["coefficient"] ?? 0),
    viscosity: given["viscosity"] ?? 1,
  };
}

/** An upright vessel so large that its level hardly moves, where a case gives no surface. */
const wide = (surface = 1e9) => ({ form: "upright", height: 100, volume: surface * 100 }) as const;

/** A free-falling refill: the head is given over the valve, and the target rises below it. */
function freeRefill(given: Numbers): Numbers {
  const { head = 0, source_surface, target_surface = 1, rise = 1, band = 0, done_share } = given;
  const end = refillTime({
    line: lineOf(given),
    source: { vessel: wide(source_surface), floor: 0, outlet: 0, level: 50 },
    target: { vessel: wide(target_surface), floor: -100, from: 0, shut: rise },
    band,
    startHeight: 0,
    endHeight: 50 - head,
    ...(done_share === undefined ? {} : { doneShare: done_share }),
  });
  if (end.state === "stops") throw new Error(end.reason);
  return { time: end.time };
}

export const functions: Record<string, Adaptor> = {
  waterDensity: ({ temperature }) => ({ density: waterDensity(temperature) }),
  waterViscosity: ({ temperature }) => ({ viscosity: waterViscosity(temperature) }),
  kinematicViscosity: ({ temperature }) => ({ viscosity: kinematicViscosity(temperature) }),
  vapourPressure: ({ temperature }) => ({ pressure: vapourPressure(temperature) }),
  siphonLimit: ({ elevation, temperature }) => ({ height: siphonLimit(elevation, temperature) }),
  frictionFactor: ({ reynolds, relative_roughness }) => ({ factor: frictionFactor(reynolds, relative_roughness) }),
  colebrook: ({ reynolds, relative_roughness }) => ({ factor: colebrook(reynolds, relative_roughness) }),
  swameeJain: ({ reynolds, relative_roughness }) => ({ factor: swameeJain(reynolds, relative_roughness) }),
  reynoldsNumber: ({ flow, bore, viscosity }) => ({ reynolds: reynoldsNumber(flow, bore, viscosity) }),
  pipeHeadLoss: ({ flow, lift = 0, ...given }) => {
    const { opening: _, ...pipe } = lineOf(given);
    const head = lift + pipeHeadLoss({ ...pipe, flow });
    return { head, pressure: head * GRAVITY * (given["density"] ?? 1000) };
  },
  pipesInSeries: ({ flow, viscosity, roughness, pipes }) => ({
    head: pipes.reduce((sum: number, pipe: Numbers) => {
      const { opening: _, ...run } = lineOf({ ...pipe, viscosity, roughness });
      return sum + pipeHeadLoss({ ...run, flow });
    }, 0),
  }),
  hazenWilliams: ({ flow, length, bore, coefficient, density = 1000 }) => {
    const head = hazenWilliams({ flow, length, bore, coefficient });
    return { head, pressure: head * GRAVITY * density };
  },
  orificeFlow: ({ seat, coefficient, head, pressure, density = 1000 }) => ({
    flow: orificeFlow({
      opening: openingOf(seat, coefficient),
      head: head ?? pressure / (density * GRAVITY),
    }),
  }),
  holesHead: ({ holes, hole, coefficient, flow }) => ({
    head: orificeHead({ opening: holes * openingOf(hole, coefficient), flow }),
  }),
  orificeK: ({ bore, seat, coefficient }) => ({ k: orificeK(bore, openingOf(seat, coefficient)) }),
  openFlowTime: ({ bore, head, volume }) => ({
    time: volume / orificeFlow({ opening: boreArea(bore), head }),
  }),
  gravityFlow: ({ head, pressure, density = 1000, ...given }) => {
    const line = lineOf(given);
    const flow = gravityFlow(line, head ?? pressure / (density * GRAVITY));
    return { flow, reynolds: reynoldsNumber(flow, line.bore, line.viscosity), time: (given["volume"] ?? 0) / flow };
  },
  teeFlows: ({ branches, viscosity, roughness, bore }) => {
    const { head, flows } = teeFlows(
      branches.map(({ inward, outward, end, ...branch }: Record<string, never>) => ({
        line: lineOf({ viscosity, roughness, bore, ...branch }),
        end,
        inward,
        outward,
      })),
    );
    return { head, ...Object.fromEntries(flows.map((flow, index) => [`flow_${index + 1}`, flow])) };
  },
  emptyingTime: ({ surface, seat, opening, coefficient, from, to, gravity }) => ({
    time: emptyingTime({
      surface,
      opening: opening === undefined ? openingOf(seat, coefficient) : opening * coefficient,
      from,
      to,
      ...(gravity === undefined ? {} : { gravity }),
    }),
  }),
  levellingTime: ({ upper, lower, seat, opening, coefficient, from, to, gravity = GRAVITY }) => ({
    time: emptyingTime({
      surface: sharedSurface(upper, lower),
      opening: opening === undefined ? openingOf(seat, coefficient) : opening * coefficient,
      from,
      to,
      gravity,
    }),
  }),
  fallingHeadTime: ({ upper, lower, from, to, ...given }) => ({
    time: fallingHeadTime({
      line: lineOf(given),
      surface: lower === undefined ? upper : sharedSurface(upper, lower),
      from,
      to,
    }),
  }),
  refillTime: freeRefill,
  purge: ({ bore, slope }) => ({ speed: purgeVelocity(bore, slope), flow: purgeFlow(bore, slope) }),
};
