// Random place 733: a short wide trunk over a tee between two tanks that come level took hours, in steps of seconds.

import { expect, test } from "vitest";
import { placeOf } from "../sweep/place.ts";
import { workedOut } from "../sweep/worked.ts";

/** Seconds of work, whatever else the machine does meanwhile. */
const seconds = (): number => process.cpuUsage().user / 1e6;

test("tanks that come level over a tee are worked out soon, and no water is made or lost", () => {
  // It took 2.7 s of work on a busy machine; before, no end was seen.
  const before = seconds();
  const worked = workedOut(placeOf(733));
  expect(seconds() - before).toBeLessThan(15);
  expect(Math.abs(worked.number("season.balance_error") ?? 1)).toBeLessThan(1e-9);
});
