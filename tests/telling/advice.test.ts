// The words of the advice against its numbers, over places made by chance.

import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import type { Advice, Choice } from "../../src/season/advice.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import { type WeekGiven, weekPlan } from "../../src/season/week-plan.ts";
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

type Asked = {
  readonly input: SeasonInput;
  readonly weather: DailyRecord;
  readonly given: Omit<WeekGiven, "days">;
};

/** Two or three beds on one tank; a place and a morning by chance. */
function askedFor(seed: number): Asked {
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
  return {
    input,
    weather: record(next, next() < 0.25),
    given: {
      today: TODAY,
      drying: "usual",
      levels: { tank: next() },
      charges: {},
      lastSoaked: Object.fromEntries(beds.map(({ id }) => [id, TODAY - 1 - Math.floor(10 * next())])),
    },
  };
}

function advised({ input, weather, given }: Asked): Advice | null {
  const answer = advise(input, weather, given);
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

const seeds = Array.from({ length: 40 }, (_, seed) => seed);
const answers = seeds.flatMap((seed) => {
  const asked = askedFor(seed);
  const advice = advised(asked);
  return advice ? [{ seed, asked, advice, told: adviceTold(advice, titleOf, show, false) }] : [];
});

/** Days until a bed thirsts that nothing waters, by the season's own run of dry days; null: not before its end. */
function dryDays({ input, weather, given }: Asked, id: string, last: number): number | null {
  const beds = input.beds.map((one) => (one.id === id ? { ...one, wateredBy: [] } : one));
  const week = weekPlan({ ...input, beds }, weather, { ...given, days: last - given.today + 1 });
  if ("failed" in week) throw new Error(week.failed);
  const days = week.beds.find((one) => one.id === id)?.days ?? [];
  const thirsty = days.findIndex(({ stressed }) => stressed);
  return thirsty < 0 ? null : thirsty;
}

const choiceOf = ({ choices }: Advice, name: string) => choices.find(({ choice }) => choice === name);

/** Worth that each bed loses more by one choice than by another, in square metres of a bed that may go. */
function more({ input }: Asked, one: Choice | undefined, other: Choice | undefined) {
  return new Map(
    input.beds.map(({ id, area, worth }) => {
      const lost = (choice?: Choice) => choice?.perBed.find(({ bed: own }) => own === id)?.loss ?? Number.NaN;
      return [id, (lost(one) - lost(other)) * area * worth];
    }),
  );
}

const daysOf = ({ shortDays, from }: Choice["perBed"][number]) => [shortDays, from];

/** What holding back gains at most over watering all, and whether there is plenty: under a hundredth of all worth lost and gained. */
function gained({ choices }: Advice) {
  const [all, ...others] = choices as readonly [Choice, ...Choice[]];
  const gains = others.flatMap((one) => [all.loss - one.loss, (all.lossIfDry ?? 0) - (one.lossIfDry ?? 0)]);
  return {
    isPlenty: all.loss < 0.01 && gains.every((gain) => gain < 0.01),
    isSame: gains.every((gain) => Math.abs(gain) <= 5e-4),
  };
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

describe("what is advised, in words", () => {
  test("is tried on choices of every sort", () => {
    expect(answers.length).toBeGreaterThan(20);
    expect(answers.some(({ advice }) => advice.tie)).toBe(true);
    expect(answers.some(({ advice }) => !advice.tie)).toBe(true);
  });

  test.each(answers)("seed $seed: losses, days, beds and the lead are the numbers'", ({ advice, told }) => {
    const most = Math.max(...advice.choices.map(({ loss, lossIfDry }) => lossIfDry ?? loss));
    for (const [at, choice] of advice.choices.entries()) {
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
      const all = advice.choices[0];
      const isSame =
        at > 0 && JSON.stringify(choice.perBed.map(daysOf)) === JSON.stringify(all?.perBed.map(daysOf));
      if (row?.means.endsWith("The same days as Water all")) {
        expect(isSame).toBe(true);
        continue;
      }
      for (const { bed: id, shortDays, from } of choice.perBed) {
        if (shortDays === 0) expect(row?.means).toContain(`${titleOf(id)} never short`);
        else {
          const days = shortDays === 1 ? "1 day" : `${shortDays} days`;
          const since = from === null ? "" : `, from ${on(from)}`;
          expect(row?.means).toContain(`${titleOf(id)} short on ${days}${since}`);
        }
      }
    }
    const words = `${told.lead.what} ${told.lead.rest}`.trim();
    const own = advice.choices.find(({ choice }) => choice === advice.advised);
    // What is advised when nothing asks is for the next watering, and no word of it sounds like today.
    expect(words.startsWith("Nothing asks today; ")).toBe(advice.asking.length === 0);
    if (advice.asking.length === 0 && (advice.tie || advice.advised === "water_all"))
      expect(words).toMatch(/at the next watering|when they ask/);
    else if (advice.tie && advice.advised === "water_all")
      expect(words).toBe(
        gained(advice).isSame ? "No matter which; water all." : "No telling them apart; water all.",
      );
    else if (advice.advised === "water_all") expect(words).toBe("Water all.");
    else {
      if (advice.tie) expect(words).toContain("No telling them apart; if in doubt, ");
      for (const id of own?.beds ?? []) expect(words).toContain(titleOf(id));
    }
    // One is marked, and it is the one that is advised; of a tie none is.
    expect(told.choices.filter(({ losesLeast }) => losesLeast).map(({ choice }) => choice)).toEqual(
      advice.tie ? [] : [advice.advised],
    );
    // In a tie whoever would rather keep the water can hold back, unless it makes no difference or there is plenty.
    const isIdle =
      advice.tie && (gained(advice).isSame || (gained(advice).isPlenty && advice.advised === "water_all"));
    const held = !isIdle && advice.tie && advice.advised === "water_all" ? "hold_back" : advice.advised;
    const offered =
      held === "water_all" ? [] : (advice.choices.find(({ choice }) => choice === held)?.beds ?? []);
    expect(told.holds?.beds ?? []).toEqual(offered.filter((id) => advice.asking.includes(id)));
    if (advice.kind === "odds") expect(told.rests).toContain(`${advice.years} past years`);
    else expect(told.rests).not.toMatch(/past year/);
  });

  test("where there is plenty all is watered, and that is the reason; a small gain is told as one", () => {
    let [plenty, small] = [0, 0];
    for (const { seed, advice, told } of answers) {
      const own = advice.choices.find(({ choice }) => choice === advice.advised) as Choice;
      const all = advice.choices[0] as Choice;
      const most = Math.max(all.loss - own.loss, (all.lossIfDry ?? 0) - (own.lossIfDry ?? 0));
      if (gained(advice).isPlenty) {
        plenty++;
        expect([seed, advice.advised]).toEqual([seed, "water_all"]);
        expect(told.reason).toMatch(/^There is plenty: watering all loses (nothing|under 1 %)/);
        expect(told.holds).toBeNull();
        if (advice.asking.length === 0) expect(told.lead.rest).toBe("water all when they ask.");
      } else expect([seed, told.reason.includes("plenty")]).toEqual([seed, false]);
      const [, said] = /saves only ([\d.]+) %/.exec(told.reason) ?? [];
      const isSmall = !advice.tie && advice.advised !== "water_all" && most < 0.01;
      expect([seed, said !== undefined]).toEqual([seed, isSmall]);
      if (said === undefined) continue;
      small++;
      expect(Math.abs(Number(said) / 100 - most)).toBeLessThanOrEqual(5.01e-4);
    }
    expect(plenty).toBeGreaterThan(0);
    expect(small).toBeGreaterThan(0);
  });

  test("giving a bed up is offered only when that bed asks, or none does", () => {
    for (const { advice } of answers) {
      const [up] = advice.choices.filter(({ choice }) => choice === "give_up");
      if (up && advice.asking.length > 0) expect(advice.asking).toContain(up.beds[0]);
    }
    expect(answers.some(({ advice }) => advice.choices.every(({ choice }) => choice !== "give_up"))).toBe(
      true,
    );
    expect(answers.some(({ advice }) => advice.choices.some(({ choice }) => choice === "give_up"))).toBe(
      true,
    );
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

  test("a bed that can wait so many days stays unthirsty for as many, were nothing given to it", () => {
    let told = 0;
    for (const { seed, asked, advice, told: said } of answers) {
      for (const { bed: id } of advice.why.beds) {
        const { spare } = advice.why.beds.find((one) => one.bed === id) ?? { spare: null };
        expect([seed, id, spare]).toEqual([seed, id, dryDays(asked, id, advice.last)]);
      }
      const [, name, days] = /^(.*) can wait: (?:(\d+) days?|to the season's end)/.exec(said.reason) ?? [];
      if (name === undefined) continue;
      told++;
      const id = Object.keys(TITLES).find((one) => TITLES[one] === name) ?? "";
      expect([seed, days === undefined ? null : Number(days)]).toEqual([
        seed,
        dryDays(asked, id, advice.last),
      ]);
      expect(choiceOf(advice, "hold_back")?.beds).toContain(id);
    }
    expect(told).toBeGreaterThan(0);
  });

  test("the reason to water all, or to give one up, is what the choices lose bed by bed", () => {
    const reasons = new Set<string>();
    for (const { seed, asked, advice, told } of answers) {
      if (advice.tie || advice.kind !== "odds") continue;
      if (advice.advised === "water_all") {
        const [held, all] = [choiceOf(advice, "hold_back"), choiceOf(advice, "water_all")];
        const lost = more(asked, held, all);
        const named = (held?.beds ?? []).filter((id) => told.reason.includes(titleOf(id)));
        const others = [...lost.keys()].filter((id) => !named.includes(id));
        const [theirs, gained] = [named, others].map((ids) => sum(ids.map((id) => lost.get(id) ?? 0))) as [
          number,
          number,
        ];
        reasons.add("water all");
        expect([seed, named]).toEqual([seed, held?.beds]);
        expect([seed, told.reason, theirs > -gained]).toEqual([seed, told.reason, true]);
        expect([seed, told.reason, /than the others gain/.test(told.reason)]).toEqual([
          seed,
          told.reason,
          others.length > 0,
        ]);
      }
      if (advice.advised === "give_up") {
        reasons.add("give up");
        const own = choiceOf(advice, "give_up");
        const lost = more(asked, own, choiceOf(advice, "water_all"));
        const [id = ""] = own?.beds ?? [];
        const others = [...lost].flatMap(([one, loss]) => (one === id ? [] : [loss]));
        expect([seed, -sum(others) > (lost.get(id) ?? 0)]).toEqual([seed, true]);
      }
    }
    expect([...reasons]).toContain("water all");
  });

  test("who pays most is the bed whose next watering saves most worth for its water", () => {
    for (const { advice, told } of answers) {
      const [, name] = /; (.*) pays most for the next/.exec(told.reason) ?? [];
      if (name === undefined) continue;
      const paying = advice.why.beds.find(({ bed: id }) => titleOf(id) === name);
      const most = Math.max(...advice.why.beds.map(({ asks, pays }) => (asks ? pays : -1)));
      expect(paying?.pays).toBe(most);
    }
  });
});
