// Random places to draw: from one barrel to three roofs, four tanks and six beds, with names short and long.

import fc from "fast-check";
import type { DrawnBed, DrawnLine, DrawnRoof, DrawnTank, Part, Place, Words } from "../../src/scene/place.ts";

const NAMES = [
  "Tub",
  "Two totes",
  "Tank at the store",
  "Second-hand battery",
  "Runner beans on poles by the south wall",
  "Regenwassersammelbehälter hinter dem Gewächshaus",
  "W",
  "Cistern under the old pear tree, north side",
];
const FACTS = [
  "2 gal",
  "fills it in 1\u00a0h\u00a053\u00a0min",
  "lasts 21.7\u00a0days from full",
  "short 31\u00a0days a season",
  "Too slow to carry air bubbles out of the hose, and it stops where the hose rises over the path.",
];

const name = fc.constantFrom(...NAMES);

function part(id: string): fc.Arbitrary<Part> {
  return fc
    .record({
      title: name,
      facts: fc.array(fc.constantFrom(...FACTS), { maxLength: 2 }),
      trouble: fc.option(fc.constantFrom(...FACTS), { freq: 3 }),
    })
    .map(({ title, facts, trouble }) => {
      const words: Words[] = [
        { text: title, tone: "ink", bold: true },
        ...facts.map((text) => ({ text, tone: "water" as const, most: 3 })),
        ...(trouble === null ? [] : [{ text: trouble, tone: "trouble" as const, most: 3 }]),
      ];
      return { id, title, words, trouble, number: trouble === null ? null : 1 };
    });
}

const ids = (prefix: string, count: number): readonly string[] =>
  Array.from({ length: count }, (_, index) => `${prefix}_${index}`);

const among = (list: readonly string[]): fc.Arbitrary<string | null> =>
  list.length === 0 ? fc.constant(null) : fc.option(fc.constantFrom(...list), { freq: 6 });

const together = <Each>(list: readonly fc.Arbitrary<Each>[]): fc.Arbitrary<Each[]> => fc.tuple(...list);

function tank(id: string, tanks: readonly string[]): fc.Arbitrary<DrawnTank> {
  return fc
    .record({
      part: part(id),
      ground: fc.double({ min: -3, max: 12, noNaN: true }),
      stand: fc.constantFrom(0, 0, 0.3, 1.5),
      height: fc.double({ min: 0.2, max: 4, noNaN: true }),
      across: fc.double({ min: 0.3, max: 4, noNaN: true }),
      count: fc.integer({ min: 1, max: 6 }),
      form: fc.constantFrom("upright" as const, "lying" as const),
      open: fc.boolean(),
      overflowsTo: among(tanks),
      volume: fc.double({ min: 0.01, max: 40, noNaN: true }),
      dipped: fc.option(fc.double({ min: 0, max: 4, noNaN: true })),
      startShare: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .map(({ part: one, form, volume, ...rest }) => ({
      ...one,
      ...rest,
      words: [
        ...one.words.slice(0, 1),
        { text: "1,041 of 1,041\u00a0gal", live: "1,041\u00a0gal", tone: "water" as const },
        ...one.words.slice(1),
      ],
      vessel: { form, height: rest.height, volume },
    }));
}

function line(id: string, tanks: readonly string[]): fc.Arbitrary<DrawnLine> {
  const height = fc.option(fc.double({ min: -3, max: 14, noNaN: true }));
  const route = fc.array(fc.double({ min: -3, max: 12, noNaN: true }), { maxLength: 5 });
  return fc
    .record({
      part: part(id),
      from: among(tanks),
      to: among(tanks),
      startHeight: height,
      endHeight: height,
      length: fc.option(fc.double({ min: 1, max: 60, noNaN: true })),
      route,
    })
    .map(({ part: one, route: heights, ...rest }) => ({
      ...one,
      ...rest,
      route: heights.map((up, index) => [index * 5, up] as const),
    }));
}

const counts = fc.record({
  roofs: fc.integer({ min: 0, max: 3 }),
  tanks: fc.integer({ min: 0, max: 4 }),
  lines: fc.integer({ min: 0, max: 4 }),
  deliveries: fc.integer({ min: 0, max: 2 }),
  draws: fc.integer({ min: 0, max: 1 }),
  carries: fc.integer({ min: 0, max: 1 }),
  batteries: fc.integer({ min: 0, max: 2 }),
  panels: fc.integer({ min: 0, max: 2 }),
  beds: fc.integer({ min: 0, max: 6 }),
  things: fc.integer({ min: 0, max: 2 }),
});

/** Any place of the sizes that the drawing is made for. */
export const anyPlace: fc.Arbitrary<Place> = counts.chain((count) => {
  const tanks = ids("tank", count.tanks);
  const beds = ids("bed", count.beds);
  const batteries = ids("battery", count.batteries);
  const taker = (id: string) =>
    fc.record({ part: part(id), from: among(tanks) }).map(({ part: one, from }) => ({ ...one, from }));
  return fc.record({
    roofs: together(
      ids("roof", count.roofs).map((id) =>
        fc
          .record({ part: part(id), drainsTo: among(tanks) })
          .map(({ part: one, drainsTo }): DrawnRoof => ({ ...one, drainsTo })),
      ),
    ),
    tanks: together(tanks.map((id) => tank(id, tanks))),
    tees: fc.constant([]),
    lines: together(ids("line", count.lines).map((id) => line(id, tanks))),
    deliveries: together(
      ids("pump", count.deliveries).map((id) =>
        fc
          .record({
            part: part(id),
            from: among(tanks),
            poweredBy: among(batteries),
            waters: fc.subarray([...beds]),
          })
          .map(({ part: one, ...rest }) => ({ ...one, ...rest })),
      ),
    ),
    draws: together(ids("draw", count.draws).map(taker)),
    carries: together(ids("cans", count.carries).map(taker)),
    batteries: together(batteries.map(part)),
    panels: together(
      ids("panel", count.panels).map((id) =>
        fc
          .record({ part: part(id), charges: among(batteries) })
          .map(({ part: one, charges }) => ({ ...one, charges })),
      ),
    ),
    things: together(ids("thing", count.things).map(part)),
    beds: together(
      beds.map((id) =>
        fc
          .record({ part: part(id), covered: fc.boolean() })
          .map(({ part: one, covered }): DrawnBed => ({ ...one, covered })),
      ),
    ),
  });
});

const bare = (id: string, title: string): Part => ({
  id,
  title,
  words: [{ text: title, tone: "ink", bold: true }],
  trouble: null,
  number: null,
});

/** A place with nothing in it, to put a few things into. */
export const EMPTY: Place = {
  roofs: [],
  tanks: [],
  tees: [],
  lines: [],
  deliveries: [],
  draws: [],
  carries: [],
  batteries: [],
  panels: [],
  beds: [],
  things: [],
};

/** A plain upright tank: heights in m, one cubic metre a metre of depth. */
export function plainTank(id: string, ground: number, height = 1, stand = 0): DrawnTank {
  return {
    ...bare(id, id),
    ground,
    stand,
    height,
    across: 1,
    count: 1,
    open: false,
    overflowsTo: null,
    dipped: null,
    startShare: 0.5,
    vessel: { form: "upright", height, volume: height },
  };
}

export function plainLine(id: string, from: string, to: string, more: Partial<DrawnLine> = {}): DrawnLine {
  return { ...bare(id, id), from, to, startHeight: null, endHeight: null, length: null, route: [], ...more };
}

export const plainPart = bare;
