// The words of the advice against its numbers, over places made by chance.

import { describe, expect, test } from "vitest";
import type { Advice } from "../../src/season/advice.ts";
import { advise } from "../../src/studies/advice.ts";
import { adviceTold } from "../../src/telling/advice.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { SHORT_MONTHS } from "../../src/units/calendar-names.ts";
import { showQuantity } from "../../src/units/show.ts";
import { bed, carry, crop, inputOf, MM, recordOf, roof, tank } from "../season/made.ts";

const FIRST = dayNumber(2001, 1, 1);
const YEARS = 6;
const TODAY = dayNumber(2021, 7, 1);

/** Numbers by chance from a seed, 0 to 1. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

function record(next: () => number, madeUp: boolean) {
  const rain = new Float64Array(dayNumber(2001 + YEARS, 1, 1) - FIRST);
  for (let day = 0; day < rain.length; day++) {
    const { month } = calendarDate(FIRST + day);
    if (next() < (month < 6 ? 0.4 : 0.08)) rain[day] = 8 * MM * next();
  }
  return recordOf(rain, FIRST, { madeUp });
}

/** Two or three beds on one tank; a place and a morning by chance. */
function advised(seed: number): Advice | null {
  const next = chance(seed * 7919 + 1);
  const worths = [10, 3, 1];
  const beds = Array.from({ length: next() < 0.7 ? 2 : 3 }, (_, at) =>
    bed({
      id: `bed${at}`,
      area: 3 + 8 * next(),
      covered: next() < 0.5,
      priority: at + 1,
      worth: worths[Math.floor(3 * next())] as number,
      crops: [crop({ crop: "tomato" })],
    }),
  );
  const input = inputOf({
    start: "05-01",
    end: "09-15",
    holdDays: 7,
    roofs: [roof({ footprint: 20 + 60 * next() })],
    tanks: [tank(0.5 + 6 * next(), { startShare: 1 })],
    carries: [carry()],
    beds,
  });
  const answer = advise(input, record(next, next() < 0.25), {
    today: TODAY,
    drying: "usual",
    levels: { tank: next() },
    charges: {},
    lastSoaked: Object.fromEntries(beds.map(({ id }) => [id, TODAY - 1 - Math.floor(10 * next())])),
  });
  return "choices" in answer ? answer : null;
}

const show = (si: number, measure: Parameters<typeof showQuantity>[1]) =>
  showQuantity(si, measure, { units: "metric", locale: "en-US", currency: "$", rounded: true });
const TITLES: Readonly<Record<string, string>> = { bed0: "Tunnel", bed1: "Long bed", bed2: "Corner" };
const titleOf = (id: string) => TITLES[id] as string;
const on = (date: number) => {
  const { month, day } = calendarDate(date);
  return `${SHORT_MONTHS[month - 1]} ${day}`;
};

const seeds = Array.from({ length: 24 }, (_, seed) => seed);
const answers = seeds.flatMap((seed) => {
  const advice = advised(seed);
  return advice ? [{ seed, advice, told: adviceTold(advice, titleOf, show, false) }] : [];
});

describe("what is advised, in words", () => {
  test("is tried on choices of every sort", () => {
    expect(answers.length).toBeGreaterThan(20);
    expect(answers.some(({ advice }) => advice.tie)).toBe(true);
    expect(answers.some(({ advice }) => !advice.tie)).toBe(true);
  });

  test.each(answers)("seed $seed: losses, days, beds and the lead are the numbers'", ({ advice, told }) => {
    const most = Math.max(...advice.choices.map(({ loss, lossIfDry }) => lossIfDry ?? loss));
    advice.choices.forEach((choice, at) => {
      const row = told.choices[at];
      const number = (text = "") => /(under 1|[\d.]+) %/.exec(text)?.[1];
      const near = (text: string | undefined, share: number) =>
        text === "under 1"
          ? expect(share).toBeLessThan(0.005)
          : expect(Math.abs(Number(text) - share * 100)).toBeLessThanOrEqual(
              text?.includes(".") ? 0.0501 : 0.5001,
            );
      near(number(row?.loses), choice.lossIfDry ?? choice.loss);
      if (choice.lossIfDry === null) expect(`${row?.loses}${row?.means}`).not.toMatch(/usual|rain/);
      else near(number(row?.means), choice.loss);
      expect(row?.bar).toBeCloseTo(most > 0 ? (choice.lossIfDry ?? choice.loss) / most : 0, 9);
      for (const { bed: id, shortDays, from } of choice.perBed) {
        if (shortDays === 0) expect(row?.means).toContain(`${titleOf(id)} never short`);
        else {
          const days = shortDays === 1 ? "1 day" : `${shortDays} days`;
          const since = from === null ? "" : `, from ${on(from)}`;
          expect(row?.means).toContain(`${titleOf(id)} short on ${days}${since}`);
        }
      }
    });
    const words = `${told.lead.what} ${told.lead.rest}`.trim();
    const own = advice.choices.find(({ choice }) => choice === advice.advised);
    if (advice.tie && advice.advised === "water_all") expect(words).toBe("No telling them apart; water all.");
    else if (advice.advised === "water_all") expect(words).toBe("Water all.");
    else {
      if (advice.tie) expect(words).toContain("No telling them apart; if in doubt, ");
      for (const id of own?.beds ?? []) expect(words).toContain(titleOf(id));
    }
    // One is marked, and it is the one that is advised; of a tie none is.
    expect(told.choices.filter(({ losesLeast }) => losesLeast).map(({ choice }) => choice)).toEqual(
      advice.tie ? [] : [advice.advised],
    );
    expect(told.holds?.beds ?? []).toEqual(
      advice.advised === "water_all" ? [] : (own?.beds ?? []).filter((id) => advice.asking.includes(id)),
    );
    if (advice.kind === "odds") expect(told.rests).toContain(`${advice.years} past years`);
    else expect(told.rests).not.toMatch(/past year/);
  });

  test("the reason names the days a bed can wait and who pays most, by the same numbers", () => {
    const held = answers.filter(({ advice }) => !advice.tie && advice.advised === "hold_back");
    for (const { advice, told } of held) {
      const spare = advice.why.beds.find(({ bed: id }) => id === advice.why.held)?.spare;
      if (spare) expect(told.reason).toContain(`can wait: ${spare === 1 ? "1 day" : `${spare} days`}`);
      const paying = advice.why.beds.find(({ bed: id }) => id === advice.why.pays);
      if (paying?.asks && advice.why.pays !== advice.why.held)
        expect(told.reason).toContain(
          `${titleOf(paying.bed)} pays most for the next ${show(paying.asks.volume, "volume")}`,
        );
    }
  });
});
