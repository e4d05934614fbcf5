// What a plan gives a bed on a day, and what it gave before something was noted.

import { expect, test } from "vitest";
import type { DayLine, Refusal } from "../../src/season/day-lines.ts";
import type { Show } from "../../src/telling/bed-day.ts";
import { leadOf, onDay, refusalWords, wasOnDay } from "../../src/telling/today.ts";

const show: Show = (si) => `${si}\u00a0gal`;
const line = (volume: number, asked: number): DayLine => ({
  bed: "long",
  day: 5,
  volume,
  asked,
  why: volume < asked ? "storage" : null,
  goes: [],
  time: 0,
  trips: 0,
  hands: 0,
  waits: [],
  tankfuls: 1,
  by: "",
});
const none: Refusal = { bed: "long", day: 5, asked: 75, why: "storage" };
const all = { lines: [line(75, 75)], refused: [] };
const some = { lines: [line(40, 75)], refused: [] };
const refused = { lines: [], refused: [none] };
const nothing = { lines: [], refused: [] };

test("what a day gives a bed: all, some of it, none, or nothing that it asked for", () => {
  const said = [all, some, refused, nothing].map((plan) => onDay(plan, "long", 5, show));
  expect(said).toEqual(["75\u00a0gal", "40 of 75\u00a0gal", "none of 75\u00a0gal", ""]);
  expect([onDay(all, "long", 6, show), onDay(all, "other", 5, show)]).toEqual(["", ""]);
});

test("what it was is told only where it is other than now", () => {
  expect(wasOnDay(all, some, "long", 5, show)).toBe("75\u00a0gal");
  expect(wasOnDay(nothing, some, "long", 5, show)).toBe("nothing");
  expect(wasOnDay(refused, all, "long", 5, show)).toBe("none of 75\u00a0gal");
  expect(wasOnDay(some, some, "long", 5, show)).toBe("");
  expect(wasOnDay(null, some, "long", 5, show)).toBe("");
});

test("a bed that its grower holds back is not said to stand back for others", () => {
  const voice = {
    show,
    locale: "en-US",
    titleOf: () => "Long bed",
    driverOf: () => "battery" as const,
    tanksOf: () => undefined,
    tankBy: () => undefined,
  };
  const held: Refusal = { ...none, why: "by_grower" };
  expect(refusalWords(held, voice)).toBe("Long bed gets none of its 75\u00a0gal: you hold it back.");
  expect(refusalWords({ ...none, why: "held_back" }, voice)).toContain("for other beds");
  const plan = { lines: [], refused: [held], spared: [], opens: [], waterAt: 0 };
  expect(leadOf(plan, 5, voice)).toBe("Today Long bed gets none of its 75\u00a0gal: you hold it back.");
});

test("a line that reads as much as is asked for says what is wanting of it", () => {
  // 75 - 74.75 = 0.25: in whole gallons both are 75.
  const whole: Show = (si) => `${si < 1 ? si : Math.round(si)}\u00a0gal`;
  expect(onDay({ lines: [line(74.75, 75)], refused: [] }, "long", 5, whole)).toBe(
    "all but 0.25\u00a0gal of 75\u00a0gal",
  );
});
