// Words beside things say whose they are: nobody's number is read as another's, and what is open is always said.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type Layout, layoutPlace, type PaperSize } from "../../src/scene/layout.ts";
import type { Box, Label, Place, Words } from "../../src/scene/place.ts";
import { tries } from "../tries.ts";
import { anyPlace } from "./made-up.ts";

const anySheet: fc.Arbitrary<PaperSize> = fc
  .record({ width: fc.integer({ min: 320, max: 1700 }), height: fc.integer({ min: 132, max: 700 }) })
  .map((size) => ({ ...size, small: size.width < 640 }));

/** From a thing to its column's edge [px]. */
const COLUMN = 40;

/** A phone's zone while a number is in hand [px], and the letters of a number with its words. */
const LOWEST = 168;
const LONGEST = 40;

/** The same place with beds that are short, and those that never are, as a worksheet says it. */
const anySaid: fc.Arbitrary<Place> = fc
  .tuple(anyPlace, fc.array(fc.integer({ min: 0, max: 140 }), { minLength: 6, maxLength: 6 }))
  .map(([place, days]) => ({
    ...place,
    beds: place.beds.map((bed, at) => ({
      ...bed,
      words: [...bed.words.slice(0, 1), bedWords(days[at] ?? 0)],
    })),
  }));

const bedWords = (days: number): Words =>
  days === 0
    ? { text: "never short", tone: "growth" }
    : {
        text: `short ${days}\u00a0days a season`,
        brief: `${days}\u00a0days`,
        least: `${days}d`,
        tone: "trouble",
        wrong: days,
      };

const idsOf = (place: Place): readonly string[] =>
  [place.tanks, place.beds, place.roofs, place.batteries, place.carries, place.deliveries]
    .flat()
    .map(({ id }) => id);

/** Any place on any sheet, with one of its parts open or none. */
const anyOpened = anySaid.chain((place) =>
  fc.record({
    place: fc.constant(place),
    sheet: anySheet,
    open: fc.constantFrom<string | null>(null, ...idsOf(place)),
  }),
);

const labelsOf = (layout: Layout): readonly Label[] => layout.parts.flatMap((part) => part.labels);
const isNamed = ({ words }: Label): boolean => words.some(({ bold }) => bold);
const middleOf = ({ x, width }: Box): number => x + width / 2;
const apart = (box: Box, at: number): number => Math.max(0, box.x - at, at - box.x - box.width);
const textOf = ({ words }: Label): string =>
  words
    .map(({ text }) => text)
    .join(" ")
    .replaceAll("\u00a0", " ");

test("a number without a name stands right over or under its own thing, nearer to it than to any of its kind", () => {
  let seen = 0;
  fc.assert(
    fc.property(anyOpened, ({ place, sheet, open }) => {
      const { parts, ...rest } = layoutPlace(place, { ...sheet, open });
      for (const part of parts)
        for (const label of part.labels) {
          if (isNamed(label)) continue;
          seen += 1;
          const middle = middleOf(label.box);
          const own = apart(part.box, middle);
          expect(own, textOf(label)).toBeLessThan(1);
          for (const other of parts)
            if (other.shape === part.shape && other !== part)
              expect(apart(other.box, middle)).toBeGreaterThan(own);
        }
      expect(rest.width).toBe(sheet.width);
    }),
    { numRuns: tries(300) },
  );
  expect(seen).toBeGreaterThan(tries(300));
});

test("no number without a name stands beside the name of another", () => {
  fc.assert(
    fc.property(anyOpened, ({ place, sheet, open }) => {
      const labels = labelsOf(layoutPlace(place, { ...sheet, open }));
      for (const bare of labels.filter((label) => !isNamed(label)))
        for (const named of labels.filter((label) => isNamed(label) && label.of !== bare.of)) {
          const [first, second] = bare.box.x < named.box.x ? [bare.box, named.box] : [named.box, bare.box];
          const isSameRow = first.y < second.y + second.height && second.y < first.y + first.height;
          if (isSameRow)
            expect(second.x - first.x - first.width, `${textOf(bare)} | ${textOf(named)}`).toBeGreaterThan(
              11,
            );
        }
    }),
    { numRuns: tries(300) },
  );
});

test("a name stands nearer to its own thing than to another of its kind, the open one's over or under it at least", () => {
  fc.assert(
    fc.property(anyOpened, ({ place, sheet, open }) => {
      const { parts } = layoutPlace(place, { ...sheet, open });
      for (const part of parts)
        for (const label of part.labels.filter(isNamed)) {
          const middle = middleOf(label.box);
          if (part.id === open) {
            // A column is broader than what stands in it; a pump stands in that of the tank it draws from, however many there are.
            const { from } = place.deliveries.find(({ id }) => id === part.id) ?? {};
            const [end, start] = [label.box.x + label.box.width, label.box.x];
            const far = parts
              .filter(({ id }) => id === part.id || id === from)
              .map(({ box }) => Math.max(start - box.x - box.width, box.x - end));
            expect(Math.min(...far)).toBeLessThan(COLUMN);
            continue;
          }
          for (const other of parts)
            if (other.shape === part.shape && ["bed", "tank", "roof", "battery"].includes(part.shape))
              expect(apart(other.box, middle), textOf(label)).toBeGreaterThanOrEqual(
                apart(part.box, middle) - 13,
              );
        }
    }),
    { numRuns: tries(300) },
  );
});

test("all beds say their days in one form, and so do all tanks their water", () => {
  fc.assert(
    fc.property(anyOpened, ({ place, sheet, open }) => {
      const { parts } = layoutPlace(place, { ...sheet, open });
      const formsOf = (shape: string, forms: readonly RegExp[]): ReadonlySet<number> =>
        new Set(
          parts
            .filter((part) => part.shape === shape)
            .flatMap(({ labels }) => labels.map(textOf))
            .map((text) => forms.findIndex((form) => form.test(text)))
            .filter((form) => form >= 0),
        );
      expect(formsOf("bed", [/short \d+ days a season/, /\d+ days/, /\d+d/]).size).toBeLessThanOrEqual(1);
      expect(formsOf("tank", [/1,041 of 1,041 gal/, /1,041 gal/]).size).toBeLessThanOrEqual(1);
    }),
    { numRuns: tries(300) },
  );
});

test("the open part has its own name and its own number wherever the zone is as high as a phone's", () => {
  let [asked, cut] = [0, 0];
  fc.assert(
    fc.property(anyOpened, ({ place, sheet, open }) => {
      const part = layoutPlace(place, { ...sheet, open }).parts.find(({ id }) => id === open);
      const [figure] = part?.part.words.slice(1).filter(({ text }) => text !== part.part.trouble) ?? [];
      // A sentence is no number, and lower zones have no room for three lines of words.
      if (!part || sheet.height < LOWEST || (figure?.text.length ?? 0) > LONGEST) return;
      asked += 1;
      const name = part.labels
        .flatMap(({ words }) => words.filter(({ bold }) => bold).map(({ text }) => text))
        .join(" ");
      // Where there is hardly any room its beginning tells it.
      expect(part.part.title.startsWith(name.replace(/\s*…$/, ""))).toBe(true);
      expect(name.length).toBeGreaterThan(Math.min(part.part.title.length, 4) - 1);
      cut += name === part.part.title ? 0 : 1;
      const hasFigure = part.labels.some(({ words }) => words.some(({ bold }) => !bold));
      expect(hasFigure).toBe(figure !== undefined);
    }),
    { numRuns: tries(1000) },
  );
  expect(asked).toBeGreaterThan(tries(200));
  expect(cut / asked).toBeLessThan(0.1);
});
