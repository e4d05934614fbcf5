// The fan of how long it lasts: its key names what is drawn and nothing else, its axis every month.

import { describe, expect, test } from "vitest";
import { dotsPlot, fanKey, fanPlot, type Lasts, type LineAhead } from "../../src/scene/lasts-plot.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { SHORT_MONTHS } from "../../src/units/calendar-names.ts";

const OPTIONS = { units: "us", locale: "en-US", currency: "$", rounded: true } as const;
const END = dayNumber(2020, 9, 30);

function lasts(today: number, shorts: readonly (number | null)[], more: Partial<Lasts> = {}): Lasts {
  const water = Float64Array.from({ length: END - today + 1 }, () => 0.5);
  const lines = shorts.map(
    (short, place): LineAhead => ({
      name: `${2000 + place}`,
      short,
      again: null,
      told: short,
      empty: null,
      water,
    }),
  );
  const sorted = [...shorts].sort((a, b) => (a ?? Infinity) - (b ?? Infinity));
  const middle = sorted[Math.floor((sorted.length - 1) / 2)] ?? null;
  return { today, last: END, now: 1, lines, bad: sorted[0] ?? null, middle, foreseen: 0, ...more };
}

describe("the axis", () => {
  test.each([330, 362, 700])(
    "names every month between its ends, %i px wide, on whichever day of summer",
    (width) => {
      for (let today = dayNumber(2020, 6, 1); today < dayNumber(2020, 9, 1); today++) {
        const labels = fanPlot(lasts(today, [null]), width, OPTIONS).across.ticks.map(({ label }) => label);
        const first = calendarDate(today).month;
        for (let month = first; month <= 9; month++) {
          const name = SHORT_MONTHS[month - 1] as string;
          expect([calendarDate(today), labels.filter((label) => label.startsWith(name)).length > 0]).toEqual([
            calendarDate(today),
            true,
          ]);
        }
      }
    },
  );
});

describe("where every run is short today", () => {
  const today = dayNumber(2020, 7, 20);
  const runs = [today + 8, today + 14, today + 40, null].map((again, place): LineAhead => {
    const water = Float64Array.from({ length: END - today + 1 }, () => 0.5);
    return { name: `${2000 + place}`, short: today, again, told: again, empty: null, water };
  });
  const held: Lasts = {
    today,
    last: END,
    now: 1,
    lines: runs,
    bad: today + 8,
    middle: today + 14,
    foreseen: 0,
  };

  test("the middle line, its color and the dots are those of the day that the sentence tells: short again", () => {
    const { layers } = fanPlot(held, 362, OPTIONS);
    const middle = layers.find((layer) => layer.as === "line" && !layer.thin);
    // To the evening of Aug 3, its 15th day.
    expect(middle?.tone).toBe("water");
    expect(middle?.as === "line" && middle.points.at(-1)?.[0]).toBe(today + 15);
    const tones = layers.flatMap((layer) => (layer.as === "line" && layer.thin ? [layer.tone] : []));
    expect(tones.sort()).toEqual(["growth", "trouble", "water"]);
    const { layers: dots } = dotsPlot(held, 362);
    const days = dots.flatMap((layer) =>
      layer.as === "dots" ? layer.points.map(([day]) => Math.floor(day)) : [],
    );
    expect(days.slice(0, 3).sort((a, b) => a - b)).toEqual([today + 8, today + 14, today + 40]);
  });
});

describe("the key", () => {
  const today = dayNumber(2020, 7, 20);
  const words = (held: Lasts, isOdds: boolean) => fanKey(held, isOdds).map(({ label }) => label);

  test("names each sort of line that is drawn, and the shading where something is expected", () => {
    const all = lasts(today, [today + 5, today + 20, today + 21, null]);
    expect(words(all, true)).toEqual(["middling year", "short soonest", "another year", "never short"]);
    expect(words(lasts(today, [null, null, null]), true)).toEqual(["middling year", "never short"]);
    expect(words({ ...all, foreseen: 3 }, true).at(-1)).toBe("days you expect");
  });

  test("has as many tones and widths as the plot", () => {
    const all = lasts(today, [today + 5, today + 20, today + 21, null], { foreseen: 2 });
    const drawn = fanPlot(all, 362, OPTIONS).layers.map((layer) =>
      layer.as === "line" ? `${layer.thin ? "thin" : "middle"} ${layer.tone}` : `${layer.as} ${layer.tone}`,
    );
    expect(new Set(fanKey(all, true).map(({ as, tone }) => `${as} ${tone}`))).toEqual(new Set(drawn));
  });

  test("of runs that are no odds goes by their names, also where there is only one", () => {
    const two = lasts(today, [today + 20, today + 5], { middle: today + 20 });
    const named = (names: readonly string[]) => ({
      ...two,
      lines: names.map((name, place) => ({ ...(two.lines[place] as LineAhead), name })),
    });
    expect(words(named(["usual weather", "no rain"]), false)).toEqual(["usual weather", "no rain"]);
    expect(words(named(["no rain"]), false)).toEqual(["no rain"]);
  });
});
