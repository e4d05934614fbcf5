// Random place 733: a short wide trunk over a tee between two tanks that come level took hours, in steps of seconds.

import { expect, test } from "vitest";
import { numberIn } from "../../src/graph/readers.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { ask, baseOf } from "../../src/studies/ask.ts";
import { placeOf } from "../sweep/place.ts";

const ERROR = "season.balance_error";

/** Seconds of work, whatever else the machine does meanwhile. */
const seconds = (): number => process.cpuUsage().user / 1e6;

test("tanks that come level over a tee are worked out soon, and no water is made or lost", () => {
  // It took 2.7 s of work on a busy machine; before, no end was seen.
  const before = seconds();
  const { worksheet, records } = placeOf(733);
  const answers = ask(baseOf(worksheet, CARD_KINDS, records), [], [ERROR]);
  expect(seconds() - before).toBeLessThan(15);
  expect(Math.abs(numberIn(answers[ERROR]) ?? 1)).toBeLessThan(1e-9);
});
