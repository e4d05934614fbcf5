// What drives the pumps behind a bed, so that power is said by its name.

import type { Driver } from "../../network/bounds.ts";
import type { SeasonInput } from "../../season/input.ts";

/** Of all the hoses that water these beds; those that nothing is known of say nothing. */
export function driverOf({ beds, deliveries }: SeasonInput, ids: readonly string[]): Driver {
  const waterers = new Set(beds.filter(({ id }) => ids.includes(id)).flatMap(({ wateredBy }) => wateredBy));
  const hoses = deliveries.filter(({ id }) => waterers.has(id));
  const onBattery = hoses.some(({ battery }) => battery !== null);
  const onSun = hoses.some(({ sun }) => sun !== null && sun !== undefined);
  if (onBattery && !onSun) return "battery";
  return onSun && !onBattery ? "sun" : "either";
}
