// What a bed's card makes of what is said on it.

import { describe, expect, test } from "vitest";
import type { Content } from "../../src/document/worksheet.ts";
import { shownValue } from "../../src/graph/shown.ts";
import { cautionIds, type Givens, numberAt, sheetOf, type Whole, workedOut } from "./made-up-sheets.ts";

const bedOf = (givens: Givens): Whole =>
  workedOut(
    sheetOf({
      bed: ["bed", { watered_by: ["cans"], ...givens }],
      cans: ["carry", { from: "tank" }],
      tank: ["tank", { shape: "other", capacity: [40_000, "gal"], water_height: [4, "ft"] }],
    }),
  );

const contents = (...list: readonly Content[]): readonly [never, string] => [list as never, ""];
const tomato = (more: Partial<Content> = {}): Content => ({
  crop: "tomato",
  planted: "05-15",
  share: 1,
  ...more,
});

const said = (whole: Whole, id: string): string =>
  shownValue(whole.graph, whole.worksheet, whole.results, id, {
    units: "us",
    locale: "en-US",
    currency: "$",
  }).replaceAll("\u00a0", " ");

const reasonAt = (whole: Whole, id: string): string => {
  const result = whole.results.get(id);
  return result?.state === "none" ? result.reason : JSON.stringify(result);
};

describe("what grows in a bed", () => {
  test("a last picking of the user's own stretches the stages of the table in proportion", () => {
    // 30, 40, 45, 30 of FAO-56 Table 11 over half of their 145 days.
    expect(said(bedOf({ contents: contents(tomato()) }), "bed.growing")).toBe(
      "Tomato: May 15 to Oct 6, in stages of 30, 40, 45 and 30 days",
    );
    const short = bedOf({ contents: contents(tomato({ until: "07-25" })) });
    expect(said(short, "bed.growing")).toBe("Tomato: May 15 to Jul 25, in stages of 15, 20, 22 and 15 days");
  });

  test("a trellis raises what the crop uses where the tables have it so, and changes nothing else", () => {
    const up = numberAt(bedOf({ contents: contents(tomato({ trained: true })) }), "bed.potential_use");
    expect(up).toBeGreaterThan(numberAt(bedOf({ contents: contents(tomato()) }), "bed.potential_use"));
    const lettuce = (trained: boolean) =>
      numberAt(
        bedOf({ contents: contents({ crop: "lettuce", planted: "05-15", share: 1, trained }) }),
        "bed.potential_use",
      );
    expect(lettuce(true)).toBe(lettuce(false));
  });

  test("a crop that no table has says what it is taken from, and needs the same as that", () => {
    const of = (crop: string) => bedOf({ contents: contents({ crop, planted: "05-15", share: 1 }) });
    expect(said(of("kale"), "bed.taken_from")).toContain(
      "Kale, collards: Not listed; all values are those of broccoli",
    );
    expect(numberAt(of("kale"), "bed.season_need")).toBe(numberAt(of("broccoli"), "bed.season_need"));
    expect(reasonAt(of("broccoli"), "bed.taken_from")).toBe("all its crops are in the tables");
  });

  test("two halves of one crop need what the whole needs", () => {
    const halves = bedOf({ contents: contents(tomato({ share: 0.5 }), tomato({ share: 0.5 })) });
    expect(numberAt(halves, "bed.season_need")).toBeCloseTo(numberAt(bedOf({}), "bed.season_need"), 9);
  });

  test("a last picking too soon after planting fails the bed with the reason", () => {
    const result = bedOf({ contents: contents(tomato({ until: "05-16" })) }).results.get("bed.peak_day_need");
    expect(result).toMatchObject({
      state: "failed",
      problem: { text: "Tomato would be picked for the last time too soon after planting" },
    });
  });
});

describe("cover and mulch", () => {
  test.each(["lettuce", "tomato", "cucumber", "bean_dry", "mint"])(
    "more mulch never needs more: %s",
    (crop) => {
      for (const more of [{}, { cover: "covered" }, { ground_wetting: "given" }] as const) {
        const need = (mulch: string) =>
          numberAt(
            bedOf({ mulch, contents: contents({ crop, planted: "05-10", share: 1 }), ...more }),
            "bed.season_need",
          );
        const [none, half, whole, film] = ["none", "organic_half", "organic", "plastic"].map(need);
        expect(half).toBeLessThanOrEqual(none as number);
        expect(whole).toBeLessThanOrEqual(half as number);
        expect(film).toBeLessThanOrEqual(none as number);
      }
    },
    60_000,
  );

  test("under cover no rain counts, however much falls", () => {
    const open = bedOf({});
    const covered = bedOf({ cover: "covered", cover_factor: [1, "1"] });
    expect(numberAt(open, "bed.rain_counted")).toBeGreaterThan(0);
    expect(numberAt(covered, "bed.rain_counted")).toBeCloseTo(0, 12);
    expect(numberAt(covered, "bed.potential_use")).toBeCloseTo(numberAt(open, "bed.potential_use"), 12);
  });

  test("by the light a cover lets through it dries slower the less that is, within the published 0.6 to 0.9 for film", () => {
    const factor = (light: number, sides = "closed") =>
      numberAt(
        bedOf({ cover: "covered", cover_by: "light", cover_light: [light, "%"], cover_sides: sides }),
        "bed.drying_there",
      );
    expect(factor(60)).toBeLessThan(factor(70));
    expect(factor(70)).toBeLessThan(factor(80));
    expect(factor(70)).toBeGreaterThan(0.55);
    expect(factor(70)).toBeLessThan(0.9);
    expect(factor(70, "sides_up")).toBeGreaterThan(factor(70));
  });

  test("ground that is wetted every other day needs more while plants are young than the table's usual", () => {
    const often = bedOf({ ground_wetting: "given", wetted_every: [2, "day"], wetted_depth: [12, "mm"] });
    expect(numberAt(often, "bed.potential_use")).toBeGreaterThan(numberAt(bedOf({}), "bed.potential_use"));
  });
});

describe("pots", () => {
  const pots = (givens: Givens = {}) =>
    bedOf({
      grown_in: "pots",
      soil: "potting_mix",
      pot_count: [10, "1"],
      pot_volume: [20, "L"],
      pot_spread: [0.25, "m2"],
      efficiency: [100, "%"],
      ...givens,
    });

  test("hold what their soil holds: all of it is the first soak", () => {
    // Ten times 20 L of a mix that holds 0.25: 50 L.
    expect(numberAt(pots(), "bed.first_soak")).toBeCloseTo(0.05, 9);
  });

  test("drink for the ground their leaves shade, and no rain counts", () => {
    const bed = bedOf({
      length: [2.5, "m"],
      width: [1, "m"],
      cover: "covered",
      cover_factor: [1, "1"],
    });
    expect(numberAt(pots(), "bed.potential_use")).toBeCloseTo(numberAt(bed, "bed.potential_use"), 9);
    expect(numberAt(pots(), "bed.rain_counted")).toBeCloseTo(0, 12);
  });

  test("are watered more often than a bed of the same ground", () => {
    const bed = bedOf({ length: [2.5, "m"], width: [1, "m"], cover: "covered", cover_factor: [1, "1"] });
    expect(numberAt(pots(), "bed.watering_interval")).toBeLessThan(numberAt(bed, "bed.watering_interval"));
  });
});

describe("the first soak", () => {
  test("is a foot of dry loam over what reaches the roots, in goes of 6 mm, each left to sink in", () => {
    const whole = bedOf({});
    // 80 ft2 of 1 ft of loam that holds 0.155, three quarters reaching the roots: 16.53 ft3.
    const soak = ((80 * 1 * 0.155) / 0.75) * 0.028316846592;
    expect(numberAt(whole, "bed.first_soak")).toBeCloseTo(soak, 6);
    const depth = soak / (80 * 0.09290304);
    expect(numberAt(whole, "bed.soak_passes")).toBe(Math.ceil(depth / 0.006));
    const wait = numberAt(whole, "bed.soak_wait");
    // 0.75 in/h.
    expect(wait).toBeCloseTo(depth / Math.ceil(depth / 0.006) / ((0.75 * 0.0254) / 3600), 6);
    expect(numberAt(whole, "bed.soak_time")).toBeCloseTo(wait * numberAt(whole, "bed.soak_passes"), 6);
  });

  test("half of it goes half as deep", () => {
    const whole = bedOf({ soak_tried: [numberAt(bedOf({}), "bed.first_soak") / 2, "m3"] });
    expect(numberAt(whole, "bed.soak_reaches")).toBeCloseTo(0.3048 / 2, 9);
  });
});

describe("common practice beside the figure", () => {
  test("says how what is usually given compares with a good watering and how long it lasts at the peak", () => {
    const whole = bedOf({ usual_volume: [20, "gal"] });
    const text = said(whole, "bed.usual_compared");
    expect(text).toMatch(/^20 gal is .*; on peak days it lasts [\d.]+ (?:days?|h)/);
    expect(numberAt(whole, "bed.usual_lasts")).toBeCloseTo(
      ((20 * 0.003785411784) / numberAt(whole, "bed.peak_day_need")) * 86_400,
      3,
    );
    const all = bedOf({ usual_volume: [numberAt(whole, "bed.watering_volume"), "m3"] });
    expect(said(all, "bed.usual_compared")).toContain("about a good watering");
  });
});

describe("when it is watered", () => {
  test("set days of the week are those of the coming week, and no others", () => {
    const whole = bedOf({ rule: "weekdays", weekdays: "tue fri", last_soaked: "2026-07-01" });
    const now = workedOut({
      ...whole.worksheet,
      cards: whole.worksheet.cards.map((card) =>
        card.id === "site" ? { ...card, givens: { today: { value: "2026-07-08", unit: "" } } } : card,
      ),
    });
    expect(said(now, "bed.week_days")).toBe("Friday and Tuesday");
  });

  test("words that are no days of the week fail the bed with the reason", () => {
    const result = bedOf({ rule: "weekdays", weekdays: "someday" }).results.get("bed.peak_day_need");
    expect(result).toMatchObject({
      state: "failed",
      problem: { text: "no day of the week is picked on which it is watered" },
    });
  });

  test("a bed let go in a dry spell gets less than one that is not", () => {
    const kept = numberAt(bedOf({}), "bed.season_got");
    const gone = bedOf({ let_go_from: "07-01", let_go_dry_days: [5, "1"] });
    expect(numberAt(gone, "bed.season_got")).toBeLessThan(kept);
    expect(numberAt(gone, "bed.share_met")).toBeLessThan(1);
  });
});

describe("by hand", () => {
  test("a watering is so many trips of so much weight and time, as the can's own card has it", () => {
    const whole = bedOf({});
    const trips = Math.ceil(numberAt(whole, "bed.watering_volume") / numberAt(whole, "cans.round_volume"));
    expect(numberAt(whole, "bed.trips_per_watering")).toBe(trips);
    expect(numberAt(whole, "bed.time_by_hand")).toBeCloseTo(trips * numberAt(whole, "cans.round_time"), 9);
    // Two cans of 2 gal at 8.34 lb and 2 lb each: 37.4 lb.
    expect(numberAt(whole, "bed.weight_per_trip") / 0.45359237).toBeCloseTo(37.3, 0);
    expect(reasonAt(whole, "bed.time_by_pump")).toBe("not watered by a pump");
  });

  test("a set amount is what is carried, whatever a good watering would be", () => {
    const set = { rule: "fixed", fixed_volume: [50, "gal"], fixed_every: [2, "day"] } as const;
    const whole = bedOf(set);
    // Two cans of 2 gal: 50 gal are 13 rounds.
    expect(numberAt(whole, "bed.trips_per_watering")).toBe(13);
    expect(numberAt(whole, "cans.trips_per_watering")).toBe(13);
    expect(numberAt(whole, "bed.watering_volume")).toBe(numberAt(bedOf({}), "bed.watering_volume"));
  });
});

describe("the sentence at its head", () => {
  test("without a day for today it tells of peak days and whether the season gives it", () => {
    expect(said(bedOf({}), "bed.needs_today")).toMatch(
      /^On peak days it needs [\d.]+ gal: [\d.]+ gal every [\d.]+ days\. (?:It gets it|In a usual season it is short)/,
    );
  });

  test("a bed that nobody waters says so", () => {
    expect(said(bedOf({ watered_by: [] }), "bed.needs_today")).toMatch(/nobody waters it/);
  });

  test("nothing planted needs nothing, and says why", () => {
    expect(said(bedOf({ contents: contents() }), "bed.needs_today")).toBe(
      "It needs no water: nothing grows in it.",
    );
  });
});

describe("one person's season", () => {
  test("by cans alone is the cans' own: trips, time, weight and way", () => {
    const whole = bedOf({});
    expect(numberAt(whole, "cans.season_trips")).toBeGreaterThan(10);
    expect(numberAt(whole, "season.hands_trips")).toBeCloseTo(numberAt(whole, "cans.season_trips"), 9);
    expect(numberAt(whole, "season.hands_time")).toBeCloseTo(numberAt(whole, "cans.season_time"), 6);
    expect(numberAt(whole, "season.hands_distance")).toBeCloseTo(
      numberAt(whole, "season.hands_trips") * 2 * numberAt(whole, "cans.distance"),
      6,
    );
  });

  test("a trip over one's own limit is said beside its weight", () => {
    const limit = (pounds: number) =>
      cautionIds(
        workedOut(sheetOf({ cans: ["carry", { cans_at_once: [2, "1"], weight_limit: [pounds, "lb"] }] })),
      );
    expect(limit(30)).toContain("cans: over_limit");
    expect(limit(40)).not.toContain("cans: over_limit");
  });
});

test("an older worksheet's own line that reads season.met or a bed's met reads what it got", () => {
  const whole = workedOut(
    sheetOf({
      bed: ["bed", { watered_by: ["cans"] }],
      cans: ["carry", { from: "tank" }],
      tank: ["tank", { shape: "other", capacity: [40_000, "gal"], water_height: [4, "ft"] }],
      old: ["own", { name: "Old", formula: "season.met + bed.met", unit: "m3" }],
    }),
  );
  expect(numberAt(whole, "old.value")).toBeCloseTo(2 * numberAt(whole, "season.got"), 12);
  expect(numberAt(whole, "season.got")).toBeGreaterThan(0);
});
