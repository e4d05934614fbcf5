// What `--series` writes, read back as anybody would and added up with nothing of the season's own: rain from the record's
// file, roofs and open water from their figures, overflow from tank to tank, beds, draws and batteries, all to 1e-9.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { JsonReport } from "../../src/cli/report.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const launch = join(root, "src/cli/launch.mjs");
const record = join(root, "tests/fixtures/seattle-weather.csv");

type Days = {
  readonly dates: readonly string[];
  /** A column by `part.name`. */
  readonly of: (name: string) => readonly number[];
  readonly has: (name: string) => boolean;
  readonly number: (quantity: string) => number;
};

function written(template: string, ...sets: readonly string[]): Days {
  const file = join(mkdtempSync(join(tmpdir(), "series-")), "days.csv");
  const words = [join(root, `templates/${template}.json`), "--rain", record, "--rain-unit", "mm"];
  const set = sets.flatMap((one) => ["--set", one]);
  const ran = spawnSync(process.execPath, [launch, ...words, ...set, "--series", file, "--json"], {
    cwd: root,
    encoding: "utf8",
  });
  expect(ran.status, ran.stderr).toBe(0);
  const report = JSON.parse(ran.stdout) as JsonReport;
  const [head = "", ...rows] = readFileSync(file, "utf8").trim().split("\n");
  const names = head.split(",").map((name) => name.replace(/ \[.*\]$/, ""));
  const cells = rows.map((row) => row.split(","));
  return {
    dates: cells.map(([date = ""]) => date),
    has: (name) => names.includes(name),
    of: (name) => {
      const place = names.indexOf(name);
      expect(place, name).toBeGreaterThan(0);
      return cells.map((cell) => Number(cell[place]));
    },
    number: (quantity) => {
      const value = report.quantities[quantity]?.value;
      expect(value, quantity).toBeTypeOf("number");
      return value as number;
    },
  };
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/** A roof rain by rain: share, less what wets it each day, less a first flush once an event that a day under 1 mm ends. */
function roofWater({ of, dates, number }: Days, roof: string, [from, until]: readonly [string, string]) {
  const flush = number(`${roof}.first_flush`);
  let left = flush;
  return of("weather.rain").map((rain, day) => {
    const wet = Math.max(0, number(`${roof}.runoff_coefficient`) * rain - number(`${roof}.wetting_loss`));
    const flushed = Math.min(left, wet);
    left = rain < 0.001 ? flush : left - flushed;
    const date = dates[day]?.slice(5) ?? "";
    return date >= from && date <= until ? (wet - flushed) * number(`${roof}.footprint`) : 0;
  });
}

const COMES = ["from_roofs", "rain", "overflow_in", "lines"];
const GOES = ["overflow_out", "spilled", "drawn", "evaporated", "leaked"];

describe("the days of a place with two roofs, totes that overflow into an open tub, a line, a draw and two beds", () => {
  const days = written("hillside-totes", "totes.overflows_to=tub", "totes.capacity=100 gal");
  const { of, number } = days;
  const TANKS = ["totes", "tub"];

  test("hold all the rain of the record's file", () => {
    const [, ...rows] = readFileSync(record, "utf8").trim().split("\n");
    const fell = sum(rows.map((row) => Number(row.split(",")[1]) / 1000));
    expect(days.dates.length).toBe(rows.length);
    // Snow comes later, when it thaws; none is left at this record's end.
    expect(sum(of("weather.rain"))).toBeCloseTo(fell, 9);
  });

  test("bring from the roofs what their own figures make of that rain", () => {
    const [barn, porch] = ["barn_roof", "porch_roof"].map((roof) =>
      roofWater(days, roof, ["03-25", "11-10"]),
    );
    for (const [day, volume] of of("totes.from_roofs").entries())
      expect(Math.abs(volume - (barn?.[day] ?? 0) - (porch?.[day] ?? 0))).toBeLessThan(1e-12);
    expect(sum(of("totes.from_roofs"))).toBeGreaterThan(10);
  });

  test("close each tank each day", () => {
    for (const id of TANKS) {
      const [stored, comes, goes] = [
        of(`${id}.stored`),
        COMES.map((name) => of(`${id}.${name}`)),
        GOES.map((name) => of(`${id}.${name}`)),
      ];
      const at = (lists: readonly (readonly number[])[], day: number) =>
        sum(lists.map((list) => list[day] ?? 0));
      let held = number(`${id}.start_share`) * number(`${id}.capacity`) * number(`${id}.count`);
      const through = held + sum(comes.map(sum));
      for (const [day, evening] of stored.entries()) {
        held += at(comes, day) - at(goes, day);
        expect(Math.abs(held - evening), `${id} on day ${day}`).toBeLessThan(1e-9 * through);
      }
    }
  });

  test("pass on to the tub what overflows from the totes", () => {
    expect(of("tub.overflow_in")).toEqual(of("totes.overflow_out"));
    expect(sum(of("tub.overflow_in"))).toBeGreaterThan(1);
    expect(sum(of("totes.spilled"))).toBe(0);
  });

  test("rain on the open tub as wide as it is, wherever it surely has room, and never more; on the covered totes not", () => {
    // Its plan area is its volume over its water's height: 44 gal over 24 in.
    const [volume, area] = [44 * 231 * 0.0254 ** 3, (44 * 231 * 0.0254 ** 3) / (24 * 0.0254)];
    const [stored, overflow, line, rain] = ["tub.stored", "tub.overflow_in", "tub.lines", "weather.rain"].map(
      of,
    );
    let sure = 0;
    for (const [day, caught] of of("tub.rain").entries()) {
      const falls = (rain?.[day] ?? 0) * area;
      expect(caught).toBeLessThanOrEqual(falls + 1e-15);
      const before = day === 0 ? volume / 2 : (stored?.[day - 1] ?? 0);
      if (before + (overflow?.[day] ?? 0) + (line?.[day] ?? 0) + falls > volume || falls === 0) continue;
      sure++;
      expect(Math.abs(caught - falls), `day ${day}`).toBeLessThan(1e-9 * volume);
    }
    expect(sure).toBeGreaterThan(30);
    expect(sum(of("totes.rain"))).toBe(0);
  });

  test("give to the beds and the draw what was drawn from the tanks, and the beds' answers are their means", () => {
    const drawn = sum(TANKS.map((id) => sum(of(`${id}.drawn`))));
    const given = ["tunnel_bed", "long_bed", "rinsing"].map((id) => sum(of(`${id}.given`)));
    expect(Math.abs(drawn - sum(given))).toBeLessThan(1e-9 * drawn);
    // Four whole seasons; a bed got what its roots kept over its efficiency.
    const inSeason = days.dates.map((date) => date.slice(5) >= "05-01" && date.slice(5) <= "09-30");
    for (const id of ["tunnel_bed", "long_bed"]) {
      const kept = sum(of(`${id}.kept`).filter((_, day) => inSeason[day]));
      expect(kept / 4 / number(`${id}.efficiency`) / number(`${id}.season_got`)).toBeCloseTo(1, 9);
    }
  });

  test("close the place: what came from the sky is what beds, draw, air, ground and tanks have", () => {
    const comes = sum(TANKS.flatMap((id) => ["from_roofs", "rain"].map((name) => sum(of(`${id}.${name}`)))));
    const goes = sum(
      TANKS.flatMap((id) =>
        ["spilled", "drawn", "evaporated", "leaked"].map((name) => sum(of(`${id}.${name}`))),
      ),
    );
    const held = (id: string) =>
      number(`${id}.start_share`) * number(`${id}.capacity`) * number(`${id}.count`);
    const change = sum(TANKS.map((id) => (of(`${id}.stored`).at(-1) ?? 0) - held(id)));
    expect(Math.abs(comes - goes - change)).toBeLessThan(1e-9 * comes);
  });
});

describe("the days of a place with a battery behind a panel", () => {
  const days = written("pump-battery-panel");
  const { of, number } = days;

  test("close its energy each day: what entered, less what was used and lost, is what is there", () => {
    const [stored, entered, used, lost] = ["stored", "entered", "used", "lost"].map((name) =>
      of(`cell.${name}`),
    );
    const usable = number("cell.usable_energy");
    let held = usable;
    const through = usable + sum(entered ?? []);
    for (const [day, evening] of (stored ?? []).entries()) {
      held += (entered?.[day] ?? 0) - (used?.[day] ?? 0) - (lost?.[day] ?? 0);
      expect(Math.abs(held - evening), `day ${day}`).toBeLessThan(1e-9 * through);
      expect(evening).toBeLessThanOrEqual(usable * (1 + 1e-12));
    }
    expect(sum(used ?? [])).toBeGreaterThan(usable);
  });
});
