import { afterEach, expect, test } from "vitest";
import { dayHere } from "../../src/app/clock.ts";

const zone = process.env["TZ"];
afterEach(() => {
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
});

test("in the evening it is still today here, though the world's clock is past midnight", () => {
  const evening = Date.UTC(2026, 6, 15, 3, 30);
  process.env["TZ"] = "America/Los_Angeles";
  expect(dayHere(evening)).toBe("2026-07-14");
  process.env["TZ"] = "Pacific/Auckland";
  expect(dayHere(Date.UTC(2026, 6, 14, 20, 0))).toBe("2026-07-15");
  process.env["TZ"] = "UTC";
  expect(dayHere(evening)).toBe("2026-07-15");
});
