// How long it lasts and what to water today, on the command line.
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { tries } from "../tries.ts";
import { runOnce } from "./run.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const DEMO = `${root}templates/hillside-totes.json`;
const SEATTLE = ["--rain", `${root}tests/fixtures/seattle-weather.csv`, "--rain-unit", "mm"];
/** What is told of today hangs on no more of made-up weather than that. */
const FEW = ["--set", `weather.years=${tries(20, 4)}`];
const run = (...words: string[]) => runOnce(...words, ...FEW);
const GALLON = 0.003785411784;

const SEEN = [
  ["totes.level_today", "20 in"],
  ["tub.level_today", "1.5 in"],
  ["long_bed.last_soaked", "2020-07-10"],
  ["tunnel_bed.last_soaked", "2020-07-19"],
].flatMap(([name, value]) => ["--set", `${name}=${value}`]);

/** What is set of today is a note of today, a charge too. */
const CHARGED = ["--set", "old_battery.charge_today=80 %"];

type Line = {
  readonly day: string;
  readonly bed: string;
  readonly volume: number;
  readonly time: number;
  readonly tankfuls: number;
  readonly why: string;
};

async function fromToday(...words: string[]) {
  const { status, stdout, stderr } = await run(
    DEMO,
    "--today",
    "2020-07-20",
    "--from-today",
    "--json",
    ...words,
  );
  expect([status, stderr.includes("--")]).toEqual([0, false]);
  return JSON.parse(stdout).from_today;
}

describe("Larkspur Bank on 2020-07-20, 20 in in the totes, 1.5 in in the tub, the long bed dry since the 10th", () => {
  // 44 gal over 24 in: the wand leaves an inch behind (1.83 gal), and rinsing takes 2 gal a day before the beds.
  const TUBFUL = 44 - 44 / 24 - 2;
  // By the bucket 5 gal take 75 s.
  const SECONDS_A_GALLON = 75 / 5;
  // 1.5 in are 2.75 gal: 41.25 gal are missing. The seat of 3.2 mm alone, 0.62 of its 8.04 mm2, under the totes' 20 in on
  // 5 ft over the tub's brim of 24 in: 1.42 m drive 5.28 m/s, 26.3 mL/s, so that no refill takes less than 5,930 s.
  const SOONEST_FULL = (41.25 * GALLON) / (0.62 * 8.04e-6 * Math.sqrt(2 * 9.81 * 1.422));

  test("opens the hose first, gives one tubful today, and the rest on the days after, no more than there is", async () => {
    const { today, week, opens, kind } = await fromToday(...SEEN);
    expect(kind).toBe("usual_and_dry");
    // Level in m; the hose and a closing float make it slower than the seat alone.
    expect(opens).toEqual([
      { line: "hose_down", tank: "tub", level: expect.closeTo(1.5 * 0.0254, 9), time: expect.any(Number) },
    ]);
    expect(opens[0].time).toBeGreaterThan(SOONEST_FULL);
    expect(opens[0].time).toBeLessThan(2 * SOONEST_FULL);
    // Read at dawn, it is full long before the watering at 7 pm; after that it is dark before it is full again.
    expect(today).toHaveLength(1);
    expect(today[0]).toMatchObject({ bed: "long_bed", by: "wand", tankfuls: 1, trips: 0, waits: [] });
    expect(today[0].volume / GALLON).toBeCloseTo(TUBFUL, 1);
    expect(today[0].time).toBeCloseTo(TUBFUL * SECONDS_A_GALLON, -1);
    expect(today[0].why).toContain("a watering takes more than fits in Tub by the tunnel");
    const lines = week as readonly Line[];
    expect(lines.slice(0, 2).map(({ day, bed }) => `${day} ${bed}`)).toEqual([
      "2020-07-20 long_bed",
      "2020-07-21 long_bed",
    ]);
    for (const { volume, time, tankfuls } of lines) {
      expect(volume / GALLON).toBeLessThanOrEqual(TUBFUL + 0.01);
      expect(tankfuls).toBe(1);
      expect(time / (volume / GALLON)).toBeCloseTo(SECONDS_A_GALLON, 1);
    }
    // 550 gal over 39 in: 20 in over an outlet at 2 in are 254 gal, and 2.75 gal in the tub, of which rinsing takes 14.
    const all = lines.reduce((sum, { volume }) => sum + volume, 0) / GALLON;
    expect(all).toBeLessThanOrEqual((550 * 18) / 39 + 2.75 - 14);
    // Each day has a line for each bed, at most one tubful together, the tunnel first.
    for (const day of new Set(lines.map((line) => line.day))) {
      const own = lines.filter((line) => line.day === day);
      expect(own.reduce((sum, { volume }) => sum + volume, 0) / GALLON).toBeLessThanOrEqual(TUBFUL + 0.01);
      expect(own.map(({ bed }) => bed)).toEqual(own.length > 1 ? ["tunnel_bed", "long_bed"] : [own[0]?.bed]);
    }
  });

  test("watered in the morning from a full tub, waits for it and goes on: two tubfuls", async () => {
    const { today } = await fromToday(
      ...SEEN,
      "--set",
      "tub.level_today=24 in",
      "--set",
      "site.water_at=7 h",
    );
    const [line] = today;
    expect(line).toMatchObject({ bed: "long_bed", tankfuls: 2, waits: [expect.any(Number)] });
    expect(line.goes.map(({ by }: { by: string }) => by)).toEqual(["wand", "wand"]);
    // The first go leaves an inch: 42.2 gal, rinsing among it, are to be made up.
    expect(line.waits[0]).toBeGreaterThan((SOONEST_FULL * (44 - 44 / 24)) / 41.25);
    expect(line.waits[0]).toBeLessThan(2 * SOONEST_FULL);
    expect(line.volume / GALLON).toBeGreaterThan(TUBFUL);
    expect(line.volume / GALLON).toBeLessThanOrEqual(2 * TUBFUL + 2.01);
    expect(line.time).toBeCloseTo((line.volume / GALLON) * SECONDS_A_GALLON, 0);
  });

  test("gives the advice with its choices, and in words as the page has it", async () => {
    const { advice } = await fromToday(...SEEN);
    expect(advice).toMatchObject({ kind: "usual_and_dry", asking: ["long_bed"], years: expect.any(Number) });
    type Told = {
      readonly choice: string;
      readonly loss: number;
      readonly loss_if_dry: number;
      readonly left: number;
      readonly per_bed: readonly {
        readonly bed: string;
        readonly short_days: number;
        readonly from: string | null;
      }[];
    };
    const choices = advice.choices as readonly Told[];
    expect(choices[0]).toMatchObject({ choice: "water_all", beds: [] });
    expect(choices.map(({ choice }) => choice)).toContain(advice.advised);
    for (const { loss, loss_if_dry, left, per_bed } of choices) {
      // No rain is never better than usual rain, and water that is left over is never less than none.
      expect(loss_if_dry).toBeGreaterThanOrEqual(loss);
      expect(Math.min(loss, left)).toBeGreaterThanOrEqual(0);
      expect(per_bed.map(({ bed }) => bed).sort()).toEqual(["long_bed", "tunnel_bed"]);
      for (const { short_days, from } of per_bed)
        expect(from === null ? short_days === 0 : from >= "2020-07-20").toBe(true);
    }
    const { stdout } = await run(DEMO, "--today", "2020-07-20", "--from-today", ...SEEN);
    expect(stdout).toMatch(
      /^(No telling them apart; .+|No matter which; water all\.|Water all\.|Hold back from .+|Give up .+)/m,
    );
    expect(stdout).toContain("Harvest lost by FAO-33 (from memory), stage by stage.");
    // Two ways of watering, each with its days, the sheet's own as how long it lasts has it.
    const { short_from } = await fromToday(...SEEN);
    expect(advice.as_the_sheet.short_from).toBe(short_from.usual);
    expect(stdout).toMatch(
      /^(Watering all|Holding back from|Giving up).* then holding back as did best in the made-up years, in usual weather: /m,
    );
    expect(stdout).toMatch(
      / As the sheet waters, (a bed is short today|(a|no) bed is .* in usual weather)\.$/m,
    );
  });

  test("says the tub is full when the hose's card says so: one number for one refill", async () => {
    // As full as the card reckons the totes, and the tub as the wand leaves it.
    const words = [...SEEN, "--set", "totes.level_today=19.5 in", "--set", "tub.level_today=1 in"];
    const { stdout } = await run(DEMO, "--today", "2020-07-20", "--from-today", "--json", ...words);
    const { from_today, quantities } = JSON.parse(stdout);
    const card = quantities["hose_down.refill_after_watering"].value;
    expect(Math.abs(from_today.opens[0].time / card - 1)).toBeLessThan(0.03);
  });

  test("tells in JSON too what the plan counts on its grower for, and how much of one's own time each line takes", async () => {
    const { by_hand, today } = await fromToday(...SEEN);
    const said = "Counts on Second-hand battery being charged in the house each night.";
    expect(by_hand).toEqual([{ battery: "old_battery", way: "mains", days: [], said }]);
    expect(today[0].hands).toBeGreaterThanOrEqual(today[0].time);
    expect(today[0].goes.map(({ hands }: { hands: number }) => hands)).toEqual([today[0].hands]);
    const { stdout } = await run(DEMO, "--today", "2020-07-20", "--from-today", ...SEEN);
    expect(stdout).toContain(said);
  });

  test("with a full tub waters today", async () => {
    const { today } = await fromToday(...SEEN, "--set", "tub.level_today=24 in");
    expect(today[0]).toMatchObject({ bed: "long_bed", by: "wand", tankfuls: 1 });
  });

  test("tells no odds of made-up weather, in JSON or in words", async () => {
    const { short_from, reaches_end } = await fromToday(...SEEN);
    expect([Object.keys(short_from), reaches_end]).toEqual([["usual", "dry"], null]);
    const { stdout } = await run(DEMO, "--today", "2020-07-20", "--from-today", ...SEEN);
    expect(stdout).not.toMatch(/\d %|of 20|worst/);
    expect(stdout).toContain("The weather is made up, so it tells no odds");
  });
});

test("tells odds of a record of its own, and that four years are few", async () => {
  const answer = await fromToday(...SEATTLE, ...SEEN, ...CHARGED, "--set", "tub.level_today=20 in");
  expect(answer).toMatchObject({ kind: "odds", short_from: { members: 20 }, assumed: [] });
  expect(answer.said.join(" ")).toContain("four years of weather are known: each counts five times");
});

test("tells of beds that get nothing, of empty tanks, of the rule and of the forecast", async () => {
  const dry = ["--set", "totes.level_today=2 in", "--set", "tub.level_today=0 in"];
  const { refused, short_from, empty_from, season_end } = await fromToday(...SEATTLE, ...SEEN, ...dry);
  expect(refused[0]).toMatchObject({ day: "2020-07-20", bed: "long_bed", asked: expect.any(Number) });
  expect(refused[0].why).toContain("gets none of its");
  for (const day of [...Object.values(short_from), ...Object.values(empty_from)])
    if (typeof day === "string") expect(day < season_end).toBe(true);
  const words = ["--today", "2020-07-20", "--from-today", ...SEATTLE, ...SEEN, ...dry];
  const { stdout } = await run(DEMO, ...words, "--forecast", "2020-07-22=1 in 80 %");
  expect(stdout).toMatch(/^No water is left in reach of the beds by \w+ \d+ in a middling year/m);
  expect(stdout).toMatch(/^As the sheet waters: /m);
  expect(stdout).toContain("Your own forecast stands for Jul 22: 1\u00a0in in 80\u00a0% of the years.");
});

test("names the bed that is short already, and since when, in JSON as in words", async () => {
  const dry = ["totes.level_today=2 in", "tub.level_today=0 in"].flatMap((set) => ["--set", set]);
  const { short_today, said } = await fromToday(...SEEN, ...dry);
  expect(short_today).toEqual([{ bed: "long_bed", since: expect.stringMatching(/^2020-07-1\d$/) }]);
  const day = Number(short_today[0].since.slice(-2));
  expect(said[0]).toContain(`Long bed (since Jul ${day}) is short today`);
});

test("on the season's last day nothing comes before its end", async () => {
  const { season_end } = await fromToday();
  const { status, stdout } = await run(DEMO, "--today", season_end, "--from-today", "--json", ...SEATTLE);
  const { short_from, empty_from } = JSON.parse(stdout).from_today;
  expect(status).toBe(0);
  for (const part of [short_from, empty_from])
    expect([part.one_in_ten, part.half, part.nine_in_ten]).toEqual([null, null, null]);
});

test("says of what was never noted that it is taken as usual", async () => {
  const answer = await fromToday(...SEATTLE);
  expect(answer.assumed).toEqual(["totes", "tub", "tunnel_bed", "long_bed", "old_battery"]);
  expect(answer.said.join(" ")).toContain("Two totes");
});

test("outside the season there is nothing to say", async () => {
  const { status, stdout } = await run(DEMO, "--today", "2020-12-20", "--from-today", "--json");
  expect([status, JSON.parse(stdout).from_today.kind]).toEqual([0, "out_of_season"]);
  expect(JSON.parse(stdout).from_today.advice).toEqual({ kind: "out_of_season" });
  expect(JSON.parse(stdout).from_today.said[0]).toMatch(
    /^The season is over; the next begins [A-Z][a-z]{2} \d+\.$/,
  );
});

test("a forecast of much rain makes it last longer", async () => {
  const wet = Array.from({ length: 7 }, (_, day) => `2020-07-${20 + day}=2 in 100 % 70 degF`).join(",");
  const more = [...SEATTLE, ...SEEN, "--set", "long_bed.last_soaked=2020-07-19"];
  const [with_, without] = [await fromToday(...more, "--forecast", wet), await fromToday(...more)];
  // Null: not before the season's end.
  const halfOf = (answer: typeof with_) => answer.empty_from.half ?? "to the end";
  expect(halfOf(with_) > halfOf(without)).toBe(true);
});

test("a forecast of heat dries the beds of the very same week that the cards show", async () => {
  const hot = Array.from({ length: 7 }, (_, day) => `2020-07-${20 + day}=45 degC`).join(",");
  const asked = async (...words: string[]) => {
    const all = [...SEATTLE, ...SEEN, "--today", "2020-07-20", "--from-today", "--json", ...words];
    const { quantities } = JSON.parse((await run(DEMO, ...all)).stdout);
    const [days, each] = ["week_days", "week_each"].map((row) => quantities[`tunnel_bed.${row}`].value);
    return days.split(/, | and /).length * each;
  };
  expect(await asked("--forecast", hot)).toBeGreaterThan(1.2 * (await asked()));
});

test.each([
  [["--from-today"], /--today/],
  [["--today", "20.7.2020", "--from-today"], /YYYY-MM-DD/],
  [["--today", "2020-07-20", "--forecast", "2020-07-20=1 mm"], /--from-today/],
  [["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-27=1 mm"], /2020-07-26/],
  [["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-20=wet"], /wet/],
  [["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-20=140 %"], /140/],
  [["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-20=5 kg"], /5 kg/],
  [
    ["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-20=5000 mm 100 %"],
    /no weather is like "5000 mm"/,
  ],
  [
    ["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-20=400 degC"],
    /no weather is like "400 degC"/,
  ],
  [
    ["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-20=40 %"],
    /"40 %" is a chance of no rain/,
  ],
  [
    [
      "--today",
      "2020-07-20",
      "--from-today",
      "--forecast",
      "2020-07-21=5 mm,2020-07-22=0 mm,2020-07-21=9 mm",
    ],
    /2020-07-21 twice.*"2020-07-21=9 mm"/,
  ],
  [
    ["--today", "2020-07-20", "--from-today", "--forecast", "2020-07-21=5 mm 9 mm"],
    /"5 mm 9 mm" says rain twice/,
  ],
  [
    ["--today", "2020-07-20", "--set", "totes.level_today=-1in"],
    /totes\.level_today: .*not less than 0.*-1in/,
  ],
  [["--set", "totes.level_today=-1in"], /totes\.level_today: .*not less than 0.*-1in/],
  [
    ["--today", "2020-07-20", "--set", "old_battery.charge_today=-5 %"],
    /old_battery\.charge_today: .*not less than 0/,
  ],
])("wrong usage is told: %j", async (words, told) => {
  const { status, stderr } = await run(DEMO, ...words);
  expect(status).toBe(2);
  expect(stderr).toMatch(told);
});
