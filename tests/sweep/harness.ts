// The shared sweep: random whole places, each worked out once, and every registered property asked of each.
//
// To add a property, put it into a file of tests/sweep/properties (a new file is found by itself):
//
//   import { property } from "../harness.ts";
//   property("a tank never holds more than its capacity", (worked) => {
//     const over = worked.cardsOf("tank").find((id) => (worked.number(`${id}.lowest_level`) ?? 0) > 99);
//     return over === undefined ? null : `${over} stands at 99 m`;
//   });
//
// It returns null where all is well, else what is wrong in words: names and numbers, as they are all that a failing run
// prints beside the number of the place. `worked` is described in worked.ts. `{ every: 10 }` asks it of each tenth place
// only, for what has to work the place out again. A property must be true of any worksheet, without exceptions; a failing
// place, made smaller, becomes a named regression test where the mistake was.
//
// 300 places in `npm test`, 2,000 with LONG=1, shared out over the files sweep-*.test.ts.
// One place again: `SWEEP=1234 npm run unit -- sweep`; others than usual: `SWEEP=5000-5999 npm run unit -- sweep`.
// One property alone: `PROPERTY="sentence of today" npm run unit -- sweep -t "sentence of today"`.

import { beforeAll, describe, expect, test } from "vitest";
import { placeOf } from "./place.ts";
import { type Worked, workedOut } from "./worked.ts";

type Ask = (worked: Worked) => string | null;
type Asking = {
  /** Asks it of each so-manieth place only. */
  readonly every?: number;
};
type Property = Asking & { readonly name: string; readonly ask: Ask };

const registered: Property[] = [];

/** Registers what must hold of every worksheet. */
export function property(name: string, ask: Ask, asking: Asking = {}): void {
  registered.push({ ...asking, name, ask });
}

const USUAL = 300;
const LONG = 2000;
const SHOWN = 5;

/** First and last place that are wanted. */
function wanted(): readonly [first: number, last: number] {
  const [from, to] = (process.env.SWEEP ?? "").split("-").map(Number);
  if (from) return [from, to ?? from];
  return [1, process.env.LONG ? LONG : USUAL];
}

const alone = (): boolean => /^\d+$/.test(process.env.SWEEP ?? "");

/** What a property says of a place; one that throws has said so. */
function saidOf({ ask }: Property, worked: Worked): string | null {
  try {
    return ask(worked);
  } catch (error) {
    return `it threw: ${(error as Error).stack ?? error}`;
  }
}

function report(seeds: readonly (readonly [seed: number, said: string])[]): string {
  const lines = seeds
    .slice(0, SHOWN)
    .map(([seed, said]) => `place ${seed}: ${said}\n  again: SWEEP=${seed} npm run unit -- sweep`);
  const more =
    seeds.length > SHOWN
      ? [`and ${seeds.length - SHOWN} more: ${seeds.slice(SHOWN, 40).map(([seed]) => seed)}`]
      : [];
  return [...lines, ...more].join("\n");
}

/** Declares the tests of one share of the places. */
export function sweep(share: number, shares: number): void {
  const [first, last] = wanted();
  const seeds = Array.from({ length: last - first + 1 }, (_, place) => first + place);
  const mine = seeds.filter((seed) => seed % shares === share);
  const found = new Map<string, (readonly [seed: number, said: string])[]>();
  const note = (name: string, seed: number, said: string): void => {
    found.set(name, [...(found.get(name) ?? []), [seed, said]]);
  };
  const ask = (seed: number): void => {
    let worked: Worked;
    try {
      worked = workedOut(placeOf(seed));
    } catch (error) {
      note("worked", seed, String((error as Error).stack ?? error));
      return;
    }
    for (const one of registered) {
      if (!one.name.includes(process.env.PROPERTY ?? "")) continue;
      if (seed % (one.every ?? 1) !== 0 && !alone()) continue;
      const said = saidOf(one, worked);
      if (said !== null) note(one.name, seed, said);
    }
  };
  describe.skipIf(mine.length === 0)(
    `random places ${first} to ${last}, share ${share + 1} of ${shares}`,
    () => {
      beforeAll(() => mine.forEach(ask), 1_800_000);
      test("[G6] each is worked out without a throw", () =>
        expect(report(found.get("worked") ?? [])).toBe(""));
      for (const { name } of registered) test(name, () => expect(report(found.get(name) ?? [])).toBe(""));
    },
  );
}
