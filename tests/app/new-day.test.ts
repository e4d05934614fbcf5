// A page that is kept open comes to a new day by itself: at midnight, and where it is shown again after a sleep.
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { followDays } from "../../src/app/new-day.ts";

const zone = process.env["TZ"];
beforeEach(() => {
  process.env["TZ"] = "America/New_York";
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  if (zone === undefined) delete process.env["TZ"];
  else process.env["TZ"] = zone;
});

function opened(at: string) {
  vi.setSystemTime(new Date(at));
  const days: string[] = [];
  const document = Object.assign(new EventTarget(), {
    visibilityState: "visible" as DocumentVisibilityState,
  });
  const window = new EventTarget();
  const { stop, look } = followDays((day) => days.push(day), { document, window });
  return { days, document, window, stop, look };
}

test("at midnight, to the second, and at each one after it", () => {
  const { days, stop } = opened("2020-07-20T18:00:00");
  vi.advanceTimersByTime(6 * 3_600_000 - 1);
  expect(days).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(days).toEqual(["2020-07-21"]);
  vi.advanceTimersByTime(24 * 3_600_000);
  expect(days).toEqual(["2020-07-21", "2020-07-22"]);
  stop();
  vi.advanceTimersByTime(48 * 3_600_000);
  expect(days).toHaveLength(2);
});

test("on the two days of the year that are not 24 hours long", () => {
  for (const [day, hours, next] of [
    ["2020-03-08", 23, "2020-03-09"],
    ["2020-11-01", 25, "2020-11-02"],
  ] as const) {
    const { days, stop } = opened(`${day}T00:00:00`);
    vi.advanceTimersByTime(hours * 3_600_000 - 1);
    expect(days).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(days).toEqual([next]);
    stop();
  }
});

test.each([
  ["visibilitychange", "document"],
  ["pageshow", "window"],
  ["focus", "window"],
] as const)("with %s after a night in which no timer ran", (event, on) => {
  const page = opened("2020-07-20T18:00:00");
  page.document.visibilityState = "hidden";
  page.document.dispatchEvent(new Event("visibilitychange"));
  vi.setSystemTime(new Date("2020-07-21T07:00:00"));
  expect(page.days).toEqual([]);
  page.document.visibilityState = "visible";
  page[on].dispatchEvent(new Event(event));
  expect(page.days).toEqual(["2020-07-21"]);
  // The same day is told once.
  page[on].dispatchEvent(new Event(event));
  expect(page.days).toHaveLength(1);
  page.stop();
});

test("of a machine that slept with the page in sight, within a minute of its waking", () => {
  const { days, stop } = opened("2020-07-20T18:00:00");
  vi.setSystemTime(new Date("2020-07-21T07:00:00"));
  vi.advanceTimersByTime(60_000);
  expect(days).toEqual(["2020-07-21"]);
  stop();
});
