// While a number moves the lead keeps its words, whatever its numbers come to: G8 of a sentence.

import { expect, test } from "vitest";
import type { Result } from "../../src/graph/types.ts";
import { type Asked, textOf } from "../../src/telling/asked.ts";
import { leadOf, type Room } from "../../src/telling/lead.ts";

function place(seasonsShort: number): Asked {
  const values: Readonly<Record<string, unknown>> = {
    "season.network": { nodes: [{ id: "bed", role: "bed" }], edges: [] },
    "season.seasons": 20,
    "season.seasons_short": seasonsShort,
    "season.worst_season": 2009,
    "season.worst_season_days_short": seasonsShort * 2,
  };
  return {
    cards: [],
    result: (id) => (id in values ? ({ state: "ready", value: values[id] } as Result) : undefined),
  };
}

const said = (seasonsShort: number, room: Room = {}): string => {
  const asked = place(seasonsShort);
  const shown = (id: string) => String((asked.result(id) as { readonly value?: unknown })?.value ?? "");
  return textOf(leadOf(asked, room), shown).replaceAll(/\d+/g, "#");
};

test("at rest it tells none, one and some apart; while a number moves it tells all of them alike", () => {
  const [none, one, some] = [0, 1, 7].map((of) => said(of));
  expect(new Set([none, one, some]).size).toBe(3);
  const steady = [0, 1, 7].map((of) => said(of, { steady: "2009" }));
  expect(new Set(steady)).toEqual(new Set([some]));
});
