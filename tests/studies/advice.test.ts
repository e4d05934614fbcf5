// What to do with today's water: water all with plenty, hold back where a better bed would pay for it, no odds of made-up weather.

import { describe, expect, test } from "vitest";
import type { DailyRecord } from "../../src/rainfall/record.ts";
import type { Advice } from "../../src/season/advice.ts";
import { fromToday } from "../../src/season/from-today.ts";
import type { SeasonInput } from "../../src/season/input.ts";
import type { WeekGiven } from "../../src/season/week-plan.ts";
import { advise } from "../../src/studies/advice.ts";
import { adviceTold } from "../../src/telling/advice.ts";
import { calendarDate, dayNumber } from "../../src/units/calendar.ts";
import { bed, carry, crop, inputOf, MM, recordOf, roof, tank } from "../season/made.ts";

const FIRST = dayNumber(2001, 1, 1);
const TODAY = dayNumber(2021, 7, 1);

/** Twenty years that are dry from June on but for one shower, each year another day. */
function dryRecord(more: Partial<DailyRecord> = {}): DailyRecord {
  const rain = new Float64Array(dayNumber(2021, 1, 1) - FIRST);
  for (let day = 0; day < rain.length; day++) {
    const { year, month, day: of } = calendarDate(FIRST + day);
    if (month < 6 || (month === 8 && of === 1 + (year - 2001))) rain[day] = 5 * MM;
  }
  return recordOf(rain, FIRST, { madeUp: false, ...more });
}

const place = (volume: number, worth: number): SeasonInput =>
  inputOf({
    start: "05-01",
    end: "09-15",
    holdDays: 7,
    roofs: [roof({ footprint: 30 })],
    tanks: [tank(volume, { startShare: 1 })],
    carries: [carry()],
    beds: [
      bed({ id: "tunnel", area: 6, covered: true, worth: 10, crops: [crop({ crop: "tomato" })] }),
      bed({ id: "long", area: 6, covered: true, priority: 2, worth, crops: [crop({ crop: "tomato" })] }),
    ],
  });

const morning = (level: number, more: Partial<WeekGiven> = {}) => ({
  today: TODAY,
  drying: "usual" as const,
  levels: { tank: level },
  charges: {},
  lastSoaked: { tunnel: TODAY - 1, long: TODAY - 9 },
  ...more,
});

function advised(volume: number, worth: number, level: number, record = dryRecord(), dipDoubt = 0): Advice {
  const given = {
    dipDoubt,
    ...morning(level),
  };
  const answer = advise(place(volume, worth), record, given);
  if (!("choices" in answer)) throw new Error(JSON.stringify(answer));
  return answer;
}

const lossOf = (answer: Advice, name: string) =>
  answer.choices.find(({ choice }) => choice === name)?.loss as number;

describe("with twenty years of a record", () => {
  test("little water is held back from the bed that is worth a tenth, and what each choice means is said", () => {
    const answer = advised(2, 1, 0.5);
    expect(answer.kind).toBe("odds");
    expect(answer.years).toBe(20);
    expect(answer.choices.map(({ choice }) => choice)).toEqual(["water_all", "hold_back", "give_up"]);
    expect(["hold_back", "give_up"]).toContain(answer.advised);
    expect(answer.asking).toEqual(["long"]);
    expect(lossOf(answer, "hold_back")).toBeLessThan(lossOf(answer, "water_all"));
    const held = answer.choices.find(({ choice }) => choice === "hold_back");
    expect(held?.beds).toEqual(["long"]);
    expect(held?.perBed.map(({ bed: id }) => id)).toEqual(["tunnel", "long"]);
    expect(answer.why.held).toBe("long");
    expect(answer.why.pays).toBe("tunnel");
  });

  test("a dip that is not read to the hair stands in its runs: they differ more, about the same middle", () => {
    const [exact, doubted] = [0, 0.05].map((doubt) => advised(2, 1, 0.5, dryRecord(), doubt)) as [
      Advice,
      Advice,
    ];
    const loss = lossOf(exact, "water_all");
    expect(lossOf(doubted, "water_all")).not.toBe(loss);
    expect(Math.abs(lossOf(doubted, "water_all") - loss)).toBeLessThan(0.1 * loss);
  });

  test("plenty of water is given to all, or it is a tie", () => {
    const answer = advised(60, 1, 1);
    expect(answer.advised === "water_all" || answer.tie).toBe(true);
    expect(lossOf(answer, "water_all")).toBeLessThan(1e-6);
    expect(lossOf(answer, "give_up")).toBeGreaterThan(lossOf(answer, "water_all"));
  });
});

describe.each([false, true])("beside how long it lasts, weather made up %s", (madeUp) => {
  test("the day as the sheet waters is that of the very same runs", () => {
    for (const level of [0.2, 0.5, 1]) {
      const given = morning(level);
      const lasts = fromToday(place(2, 1), dryRecord({ madeUp }), given);
      if ("failed" in lasts || lasts.kind === "out_of_season") throw new Error(JSON.stringify(lasts));
      const answer = advised(2, 1, level, dryRecord({ madeUp }));
      expect(answer.asSheet).toBe(lasts.kind === "odds" ? lasts.short.half : lasts.usual.short);
    }
  });

  test("a bed that is noted as held back is dry in every choice, and no choice is about it", () => {
    const free = advise(place(2, 1), dryRecord({ madeUp }), morning(0.5));
    const held = advise(place(2, 1), dryRecord({ madeUp }), morning(0.5, { heldBack: ["long"] }));
    if (!("choices" in free && "choices" in held)) throw new Error("no advice");
    expect([free.asking, free.held, held.asking, held.held]).toEqual([["long"], [], [], ["long"]]);
    for (const { choice, beds } of held.choices) if (choice !== "give_up") expect(beds).not.toContain("long");
    // As dry today as where the choice itself holds it back, its rule afterwards the same.
    const dry = free.choices.find(({ choice }) => choice === "hold_back");
    const lossOfLong = (choice?: Advice["choices"][number]) =>
      choice?.perBed.find(({ bed: id }) => id === "long")?.loss as number;
    const all = held.choices.find(({ choice }) => choice === "water_all");
    expect(lossOfLong(all)).toBeGreaterThan(lossOfLong(free.choices[0]) - 1e-12);
    expect(dry?.beds).toEqual(["long"]);
    expect(adviceTold(held, String, (si) => String(si), false)).toMatchObject({
      noted: "Held back today, as you noted: long.",
      holds: { beds: ["long"] },
    });
  });

  test("with plenty of water nobody is held back for nothing", () => {
    const { advised: choice, choices } = advised(60, 1, 1, dryRecord({ madeUp }));
    expect(choices[0]?.loss).toBeLessThan(1e-3);
    expect(choice).toBe("water_all");
  });
});

test("made-up weather gives a usual and a dry run, and no odds", () => {
  const answer = advised(2, 1, 0.5, dryRecord({ madeUp: true }));
  expect(answer.kind).toBe("usual_and_dry");
  for (const { loss, lossIfDry } of answer.choices) expect(lossIfDry as number).toBeGreaterThanOrEqual(loss);
});

test("outside the season and of one bed there is nothing to choose", () => {
  const given = { today: TODAY, drying: "usual" as const, levels: {}, charges: {}, lastSoaked: {} };
  const one = { ...place(2, 1), beds: place(2, 1).beds.slice(0, 1) };
  expect(advise(one, dryRecord(), given)).toEqual({ kind: "one_bed" });
  const winter = { ...given, today: dayNumber(2021, 1, 10) };
  expect(advise(place(2, 1), dryRecord(), winter)).toEqual({ kind: "out_of_season" });
});
