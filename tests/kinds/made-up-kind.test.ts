// A kind that nobody has heard of, registered in one constant: everything that lists kinds has it.

import { describe, expect, test } from "vitest";
import { laidOut } from "../../src/app/beginning.ts";
import { addJoined } from "../../src/app/joining.ts";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { setGiven, setPrice } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { explain } from "../../src/graph/explain.ts";
import { outcomes } from "../../src/graph/outcomes.ts";
import { readyNumber, readyWord } from "../../src/graph/readers.ts";
import { labelOf, shownValue } from "../../src/graph/shown.ts";
import { questionsOf } from "../../src/kinds/asking.ts";
import { CARD_KINDS, kindsWith } from "../../src/kinds/index.ts";
import { groupsOf, type Kind, notedOf, offered } from "../../src/kinds/kind.ts";
import { FIRST_WISH } from "../../src/kinds/lay-out.ts";
import { COSTS, formula, given, link, output } from "../../src/kinds/rows.ts";
import { gives, takes } from "../../src/kinds/season-share.ts";
import { STARTS } from "../../src/kinds/starts.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { waterOf } from "../../src/scene/day-water.ts";
import { layoutPlace } from "../../src/scene/layout.ts";
import { readPlace, type SceneInput } from "../../src/scene/read-place.ts";
import { spoken } from "../../src/scene/spoken.ts";
import { troublesOf } from "../../src/scene/trouble.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { settings, shopping } from "../../src/ui/page/printed.ts";
import { DAY } from "../../src/units/constants.ts";

const gauge: Kind = {
  kind: "gauge",
  label: "Rain gauge",
  purpose: "Catches the rain that is read by eye.",
  group: "Sky and place",
  icon: { ink: "M8 4h8v16H8z", tone: "M8 12h8", color: "water" },
  rows: [
    {
      row: "link",
      name: "beside",
      label: "Stands beside",
      kinds: ["roof"],
      many: false,
      absent: "stands beside no roof",
      help: "The roof whose rain it measures.",
      source: "your own entry",
    },
    given("mouth", "Its mouth, across", "bore", [4, "in"], {
      help: "Inside, at the rim.",
      source: "your own entry",
    }),
    ...COSTS,
  ],
  models: [],
  cautions: [],
  joins: { beside: "newest" },
  local: ["mouth"],
  noted: ["rain"],
  handSettings: ["mouth"],
  drawn: {
    as: "thing",
    beside: [{ row: "mouth", tint: "water", text: "{} across" }],
    spoken: "{title}, a gauge beside {beside|no roof}",
  },
};

const KINDS = kindsWith(gauge);
const OPTIONS = { units: "us", locale: "en-US", currency: "$" } as const;

function place(): Worksheet {
  const laid = laidOut(STARTS, emptyWorksheet(), { ...FIRST_WISH, beds: 1, cans: 1 });
  const withGauge = addJoined(KINDS, laid, "gauge", "Rain gauge");
  const priced = setPrice(withGauge, "roof", { value: 60, unit: "money" });
  return setPrice(priced, "rain_gauge", { value: 12, unit: "money" });
}

function worked(sheet: Worksheet) {
  const { worksheet, graph, results } = workOut(sheet, KINDS);
  const cautions = cautionsOf(graph, worksheet, results, OPTIONS, KIND_WORDS);
  const { problems } = results;
  const asked: SceneInput & { readonly label: (id: string) => string } = {
    kinds: KINDS,
    cards: worksheet.cards,
    result: (id) => results.get(id),
    shown: (id) => shownValue(graph, worksheet, results, id, OPTIONS),
    label: (id) => labelOf(graph, worksheet, id),
    troubles: troublesOf({ kinds: KINDS, cards: worksheet.cards, cautions, problems }),
    options: OPTIONS,
  };
  const total = explain(graph, worksheet, results, "cost.total", OPTIONS, KIND_WORDS);
  return { asked, total, problems };
}

const WORKED = worked(place());

test("it has its group on the page, an icon, and a button that adds it", () => {
  const group = groupsOf(KINDS).find(({ title }) => title === "Sky and place");
  expect(group?.kinds.map(({ kind }) => kind)).toEqual(["weather", "site", "gauge"]);
  // The sky and the place stand already and exist once.
  expect(offered(group?.kinds ?? [], emptyWorksheet().cards)).toEqual([KINDS["gauge"]]);
  expect(KINDS["gauge"]?.icon.ink).toBe("M8 4h8v16H8z");
  expect(CARD_KINDS["gauge"]).toBeUndefined();
});

test("a fresh one is joined to the roof, a later roof to nothing; its number is asked for", () => {
  const sheet = place();
  expect(sheet.cards.find(({ id }) => id === "rain_gauge")?.givens["beside"]?.value).toBe("roof");
  const asks = [{ place: 15, rows: ["mouth"], ask: "{title}: how wide is its mouth?", hint: "At the rim." }];
  const asked = questionsOf({ ...STARTS, gauge: { asks } }, sheet.cards).find(({ kind }) => kind === "gauge");
  expect([asked?.id, asked?.said]).toEqual(["rain_gauge.mouth", false]);
  const alone = addJoined(KINDS, emptyWorksheet(), "gauge", "Rain gauge");
  const joined = addJoined(KINDS, alone, "roof", "Shed");
  expect(joined.cards.find(({ id }) => id === "rain_gauge")?.givens["beside"]?.value).toBe("shed");
});

test("it is evaluated without a problem, drawn, and spoken", () => {
  expect(WORKED.problems).toEqual([]);
  const drawn = readPlace(WORKED.asked);
  for (const width of [390, 1280])
    expect(
      layoutPlace(drawn, { width, height: 300, small: width < 640 }).parts.map(({ id }) => id),
    ).toContain("rain_gauge");
  const sentences = spoken({
    asked: WORKED.asked,
    place: drawn,
    waters: waterOf(drawn, null),
    datum: "the beds",
  });
  const said = sentences.find(({ id }) => id === "rain_gauge")?.text.replaceAll("\u00a0", " ");
  expect(said).toBe("Rain gauge, a gauge beside Roof; 4 in across.");
});

test("what is read of it can be noted of it, as of the place, and what is noted of any part of it too", () => {
  expect(notedOf(KINDS, "rain")?.map(({ kind }) => kind)).toEqual(["site", "gauge"]);
  expect(notedOf(KINDS, "dipped")?.map(({ kind }) => kind)).toEqual(["tank"]);
  expect(notedOf(KINDS, "broke")).toBeNull();
});

test("it is summed in the cost, 60 + 12 = 72, and printed", () => {
  expect(WORKED.total.shown).toBe("$72");
  expect(WORKED.total.numbers).toContain("Rain gauge $12");
  expect(shopping(WORKED.asked).map(({ title, kind, price }) => [title, kind, price])).toEqual([
    ["Roof", "Roof", "$60"],
    ["Rain gauge", "Rain gauge", "$12"],
  ]);
  const wide = worked(setGiven(place(), "rain_gauge", "mouth", { value: 8, unit: "in" }));
  const set = settings(wide.asked).find(({ id }) => id === "rain_gauge");
  expect(set?.settings.replaceAll("\u00a0", " ")).toBe("Its mouth, across 8 in");
});

const trough: Kind = {
  kind: "trough",
  label: "Trough",
  purpose: "Sheep drink from it, and the sun too.",
  group: "Ways for the water",
  icon: { ink: "M4 10h16l-2 8H6z", color: "water" },
  joins: { from: "newest" },
  rows: [
    link("from", "Filled from", "holds_water", "filled from no tank"),
    given("heads", "Sheep", "count", [6, "1"], { help: "That drink here.", source: "your own entry" }),
    given("each", "Drinks a day, each", "volume", [1.5, "gal"], {
      help: "In summer.",
      source: "your own entry",
    }),
    formula("a_day", "A day", "volume", "heads * each", { help: "All of them.", source: "definition" }),
    output("drunk", "Drunk in a season", "season.run", "volume", {
      help: "From the run.",
      source: "the run",
    }),
    output("days_short", "Days too little, a season", "season.run", "count", {
      help: "From the run.",
      source: "the run",
    }),
  ],
  models: [],
  cautions: [],
  season: {
    role: "draw",
    ties: [{ kind: "draws", from: ["from"], to: "itself" }],
    must: ["from", "a_day"],
    takes: takes("draws", (id, results) => ({
      id,
      from: readyWord(results, "from"),
      volume: readyNumber(results, "a_day"),
      every: DAY,
    })),
    gives: gives("draws", ({ seasonVolume, daysShort }) =>
      outcomes({ drunk: seasonVolume, days_short: daysShort }),
    ),
  },
};

describe("a kind that takes water in the season, in one constant", () => {
  const WITH = kindsWith(trough);
  const laid = laidOut(STARTS, emptyWorksheet(), { ...FIRST_WISH, beds: 0, cans: 1 });
  const sheet = addJoined(WITH, laid, "trough", "Trough");
  const number = (of: Worksheet, id: string) => {
    const result = workOut(of, WITH).results.get(id);
    return result?.state === "ready" ? Number(result.value) : Number.NaN;
  };

  test("draws from its tank: 3 gal a day are all that it drinks where the tank lasts, and the tank falls by it", () => {
    const room = setGiven(sheet, "tank_at_the_roof", "count", { value: 60, unit: "1" });
    const rainy = setGiven(room, "trough", "heads", { value: 2, unit: "1" });
    const gallon = 231 * 0.0254 ** 3;
    const days = number(rainy, "trough.drunk") / (3 * gallon);
    expect(days).toBeCloseTo(Math.round(days), 6);
    expect(days).toBeGreaterThan(100);
    expect(number(rainy, "trough.days_short")).toBe(0);
    const thirsty = setGiven(rainy, "trough", "heads", { value: 4, unit: "1" });
    expect(number(thirsty, "trough.drunk") / number(rainy, "trough.drunk")).toBeCloseTo(2, 9);
    expect(number(thirsty, "tank_at_the_roof.lowest_level")).toBeLessThan(
      number(rainy, "tank_at_the_roof.lowest_level"),
    );
  });

  test("is short where one tote has to last the summer", () => {
    expect(number(sheet, "trough.days_short")).toBeGreaterThan(0);
  });

  test("left out of the season, says so on the rows that the run would have answered", () => {
    const results = workOut(setGiven(sheet, "trough", "from", null), WITH).results;
    for (const row of ["drunk", "days_short"]) {
      const result = results.get(`trough.${row}`);
      expect(result?.state === "failed" && result.problem.text).toMatch(/^Left out of the season: /);
    }
  });

  test("has the row by which its short days are told, as every draw and every bed has", () => {
    const takers = Object.values(WITH).filter(
      ({ season }) => season?.role === "draw" || season?.role === "bed",
    );
    expect(takers.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["bed", "draw", "trough"]));
    for (const { kind, rows } of takers)
      expect(
        rows.map(({ name }) => name),
        kind,
      ).toContain("days_short");
  });

  test("says what the run gives back, as every room does that has a row for it, and no other", () => {
    for (const kind of Object.values(WITH)) {
      const rows = kind.rows.filter((row) => row.row === "output" && row.of === "season.run");
      expect(Boolean(kind.season?.gives), kind.kind).toBe(rows.length > 0);
    }
  });

  test("beside another kind of the same list, each answers for its own cards alone, whichever comes last", () => {
    // The same rows under the draw's own names, given back otherwise: days as a hundredfold nobody could mistake.
    const manger: Kind = {
      ...trough,
      kind: "manger",
      label: "Manger",
      rows: [
        ...trough.rows.filter(({ name }) => name !== "days_short" && name !== "drunk"),
        output("days_short", "Days too little", "season.run", "count", {
          help: "From the run.",
          source: "the run",
        }),
      ],
      season: {
        ...trough.season,
        gives: gives("draws", ({ daysShort }) => outcomes({ days_short: 1000 + daysShort })),
      },
    };
    const both = kindsWith(manger);
    const drawn = addJoined(both, addJoined(both, laid, "draw", "Hens"), "manger", "Manger");
    const results = workOut(drawn, both).results;
    const days = (id: string) => {
      const result = results.get(`${id}.days_short`);
      return result?.state === "ready" ? Number(result.value) : Number.NaN;
    };
    expect(days("manger")).toBeGreaterThanOrEqual(1000);
    expect(days("hens")).toBeLessThan(1000);
  });
});
