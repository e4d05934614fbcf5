// A kind that nobody has heard of, registered in one constant: everything that lists kinds has it.

import { expect, test } from "vitest";
import { addJoined, laidOut, stillToSay } from "../../src/app/joining.ts";
import { emptyWorksheet } from "../../src/document/blank.ts";
import { setGiven, setPrice } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { explain } from "../../src/graph/explain.ts";
import { labelOf, shownValue } from "../../src/graph/shown.ts";
import { CARD_KINDS, kindsWith } from "../../src/kinds/index.ts";
import { groupsOf, type Kind, offered } from "../../src/kinds/kind.ts";
import { COSTS, given } from "../../src/kinds/rows.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { waterOf } from "../../src/scene/day-water.ts";
import { layoutPlace } from "../../src/scene/layout.ts";
import { readPlace, type SceneInput } from "../../src/scene/read-place.ts";
import { spoken } from "../../src/scene/spoken.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { settings, shopping } from "../../src/ui/page/printed.ts";

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
  firstNumbers: [{ row: "mouth" }],
  local: ["mouth"],
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
  const laid = laidOut(KINDS, emptyWorksheet(), {
    roofs: 1,
    tanks: 1,
    small: 0,
    openBeds: 1,
    tunnels: 0,
    wateredBy: "cans",
  });
  const withGauge = addJoined(KINDS, laid, "gauge", "Rain gauge");
  const priced = setPrice(withGauge, "roof", { value: 60, unit: "money" });
  return setPrice(priced, "rain_gauge", { value: 12, unit: "money" });
}

function worked(sheet: Worksheet) {
  const { worksheet, graph, results } = workOut(sheet, KINDS);
  const asked: SceneInput & { readonly label: (id: string) => string } = {
    kinds: KINDS,
    cards: worksheet.cards,
    result: (id) => results.get(id),
    shown: (id) => shownValue(graph, worksheet, results, id, OPTIONS),
    label: (id) => labelOf(graph, worksheet, id),
    cautions: cautionsOf(graph, worksheet, results, OPTIONS, KIND_WORDS),
    problems: results.problems,
    options: OPTIONS,
  };
  const total = explain(graph, worksheet, results, "cost.total", OPTIONS, KIND_WORDS);
  return { asked, total };
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
  expect(stillToSay(KINDS, sheet.cards, WORKED.asked.result)).toContain("rain_gauge.mouth");
  const alone = addJoined(KINDS, emptyWorksheet(), "gauge", "Rain gauge");
  const joined = addJoined(KINDS, alone, "roof", "Shed");
  expect(joined.cards.find(({ id }) => id === "rain_gauge")?.givens["beside"]?.value).toBe("shed");
});

test("it is evaluated without a problem, drawn, and spoken", () => {
  expect(WORKED.asked.problems).toEqual([]);
  const drawn = readPlace(WORKED.asked);
  for (const width of [390, 1280])
    expect(layoutPlace(drawn, width).parts.map(({ id }) => id)).toContain("rain_gauge");
  const sentences = spoken({
    asked: WORKED.asked,
    place: drawn,
    waters: waterOf(drawn, null),
    datum: "the beds",
  });
  const said = sentences.find(({ id }) => id === "rain_gauge")?.text.replaceAll("\u00a0", " ");
  expect(said).toBe("Rain gauge, a gauge beside Roof; 4 in across.");
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
