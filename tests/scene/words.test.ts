import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { setGiven } from "../../src/document/edits.ts";
import type { Worksheet } from "../../src/document/worksheet.ts";
import { cautionsOf } from "../../src/graph/cautions.ts";
import { shownValue } from "../../src/graph/shown.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";
import { waterOf } from "../../src/scene/day-water.ts";
import { layoutPlace } from "../../src/scene/layout.ts";
import { readPlace, type SceneInput } from "../../src/scene/read-place.ts";
import { spoken } from "../../src/scene/spoken.ts";
import { blockOf, fitted, textWidth } from "../../src/scene/text-block.ts";
import { troublesOf } from "../../src/scene/trouble.ts";
import { workOut } from "../../src/studies/work-out.ts";
import { showQuantity } from "../../src/units/show.ts";
import { readWorksheetText } from "../document/read-text.ts";

function template(name: string): Worksheet {
  const read = readWorksheetText(
    readFileSync(new URL(`../../templates/${name}.json`, import.meta.url), "utf8"),
  );
  if (!read.ok) throw new Error(`${name} is broken`);
  return read.worksheet;
}

function asked(given: Worksheet): SceneInput {
  const { worksheet, graph, results } = workOut(given, CARD_KINDS);
  const options = { units: given.units, locale: given.locale, currency: given.currency };
  return {
    kinds: CARD_KINDS,
    cards: worksheet.cards,
    result: (id) => results.get(id),
    shown: (id) => shownValue(graph, worksheet, results, id, options),
    troubles: troublesOf({
      kinds: CARD_KINDS,
      cards: worksheet.cards,
      cautions: cautionsOf(graph, worksheet, results, options, KIND_WORDS),
      problems: results.problems,
    }),
    options,
  };
}

function said(worksheet: Worksheet): ReadonlyMap<string, string> {
  const of = asked(worksheet);
  const place = readPlace(of);
  const sentences = spoken({ asked: of, place, waters: waterOf(place, null), datum: worksheet.datum });
  return new Map(sentences.map(({ id, text }) => [id, text]));
}

const totes = (name: string, value: number, unit: string): Worksheet =>
  setGiven(template("hillside-totes"), "totes", name, { value, unit });

describe("the drawing in words", () => {
  test("another use is said with what it takes, by its own room's words: every day, not every 1 day", () => {
    const hens = said(template("hens-and-sweet-potatoes")).get("hens")?.replaceAll("\u00a0", " ");
    expect(hens).toMatch(/^Eight hens from .+; 1 gal every day\.$/);
    const seldom = setGiven(template("hens-and-sweet-potatoes"), "hens", "every", { value: 3, unit: "day" });
    expect(said(seldom).get("hens")?.replaceAll("\u00a0", " ")).toContain("every 3 days");
  });

  test("the demo is said part by part, with heights, water, links and the number that matters", () => {
    const words = said(template("hillside-totes"));
    expect(words.get("totes")).toMatch(
      /^Two totes, its floor 5.ft above the sill of the lower gate, on a stand of 1.ft, holds 275 of 550.gal; from full \d+/,
    );
    expect(words.get("hose_down")).toMatch(
      /^Hose to the tub runs from Two totes to Tub by the tunnel, from /,
    );
    expect(words.get("wand")).toContain("waters Small tunnel, Long bed");
    expect(words.get("tunnel_bed")).toContain("under cover");
  });

  test.each([0.2, 0.5, 1, 3.48, 9.76, 11.4, 104.6])(
    "a bed that is short on %d days says the number that its part and the lists say",
    (short) => {
      const of = asked(template("hillside-totes"));
      const id = "tunnel_bed.days_short";
      const result = of.result(id);
      if (result?.state !== "ready") throw new Error("it is not worked out");
      const now = { ...result, value: short };
      const options = { ...of.options, rounded: true };
      const shown = (figures?: number) =>
        showQuantity(short, "count", figures === undefined ? options : { ...options, figures });
      const place = readPlace({
        ...of,
        result: (asks) => (asks === id ? now : of.result(asks)),
        shown: (asks) => (asks === id ? shown() : of.shown(asks)),
      });
      const words = place.beds.find((bed) => bed.id === "tunnel_bed")?.words ?? [];
      const fact = words.find(({ text }) => /short/.test(text))?.text.replaceAll("\u00a0", " ");
      expect(fact).toBe(
        short < 0.5 ? "hardly ever short" : `short ${shown()} ${short === 1 ? "day" : "days"} a season`,
      );
      // The sentence at the head of the part asks for fewer figures.
      expect(shown(2)).toBe(shown());
    },
  );

  test("whatever stands on the drawing is said, and nothing else", () => {
    for (const name of ["hillside-totes", "one-barrel", "dry-summer-metric"]) {
      const worksheet = template(name);
      const place = readPlace(asked(worksheet));
      const drawn = layoutPlace(place, { width: 390, height: 248, small: true }).parts.map((part) => part.id);
      expect([...said(worksheet).keys()].sort()).toEqual([...drawn].sort());
    }
  });

  test("an edit is heard: the dipped depth, the raised stand, a floor under zero", () => {
    expect(said(totes("level_today", 0, "in")).get("totes")).toContain("holds 0 of 550");
    expect(said(totes("stand_height", 3, "ft")).get("totes")).toContain("on a stand of 3\u00a0ft");
    expect(said(totes("ground_height", -2, "ft")).get("totes")).toContain("1\u00a0ft below the sill");
  });

  test("trouble is marked where it is and said: no drop, an outlet above the water, a bed watered by nobody", () => {
    const flat = readPlace(asked(totes("ground_height", -4, "ft")));
    expect(flat.lines[0]?.trouble).not.toBeNull();
    expect(said(totes("ground_height", -4, "ft")).get("hose_down")).toContain("Trouble: ");
    const high = readPlace(asked(totes("outlet_height", 60, "in")));
    expect(high.tanks.find((tank) => tank.id === "totes")?.trouble).toContain("outlet");
    const dry = setGiven(template("hillside-totes"), "long_bed", "watered_by", null);
    expect(readPlace(asked(dry)).beds.find((bed) => bed.id === "long_bed")?.trouble).toContain(
      "Nothing waters",
    );
    const marks = layoutPlace(readPlace(asked(dry)), { width: 390, height: 248, small: true }).parts.filter(
      (part) => part.mark !== null,
    );
    expect(marks.map((part) => part.id)).toContain("long_bed");
  });

  test("a hump in the route is said with its height and place", () => {
    const humped = setGiven(template("hillside-totes"), "hose_down", "route", {
      value: [
        [0, 4],
        [30, 1],
        [50, 2.5],
        [70, 0],
      ],
      unit: "ft, ft",
    });
    expect(said(humped).get("hose_down")).toContain("over a hump of 2.5\u00a0ft at 50\u00a0ft");
    expect(said(template("hillside-totes")).get("hose_down")).not.toContain("hump");
  });
});

describe("words on paper", () => {
  const size = 13;
  const wrapped = (text: string, room: number, bold: boolean, most: number): readonly string[] =>
    blockOf([{ text, tone: "ink", most, ...(bold ? { bold: true as const } : {}) }], room, {
      size,
      leading: 16,
    }).lines.map((line) => line.text);
  const anyText = fc.stringMatching(/^[A-Za-z0-9 ,.ü\u00a0]{0,60}$/);

  test("a line never gets wider than its room, whatever stands in it", () => {
    fc.assert(
      fc.property(
        anyText,
        fc.integer({ min: 20, max: 240 }),
        fc.integer({ min: 1, max: 4 }),
        (text, room, most) => {
          const lines = wrapped(text, room, true, most);
          expect(lines.length).toBeLessThanOrEqual(most);
          for (const line of lines) expect(textWidth(line, size, true)).toBeLessThanOrEqual(room);
        },
      ),
    );
  });

  test("with room enough every word stands, in order", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const lines = wrapped(text, 120, false, 100);
        fc.pre(lines.every((line) => !line.endsWith("…")));
        const words = (of: string): readonly string[] => of.split(/\s+/).filter((word) => word !== "");
        expect(words(lines.join(" "))).toEqual(words(text));
      }),
    );
  });

  test("a number and its unit stay together, unless the column is too narrow for them", () => {
    expect(wrapped("lasts 23\u00a0days", 60, false, 3)).toEqual(["lasts", "23\u00a0days"]);
    expect(wrapped("lasts 23\u00a0days", 36, false, 3)).toEqual(["lasts", "23", "days"]);
  });

  test("what must stand whole stands whole or not at all", () => {
    const trouble = {
      text: "Air sits where the hose rises over the path",
      tone: "trouble",
      most: 3,
      whole: true,
    } as const;
    const type = { size, leading: 16 };
    expect(blockOf([trouble], 60, type).lines).toEqual([]);
    expect(
      blockOf([trouble], 150, type)
        .lines.map((line) => line.text)
        .join(" "),
    ).toBe(trouble.text);
  });

  test("a text that fits is left alone", () => {
    expect(fitted("Tub", 100, size)).toBe("Tub");
    expect(fitted("Second tub by the far beds", 60, size)).toMatch(/…$/);
  });
});
