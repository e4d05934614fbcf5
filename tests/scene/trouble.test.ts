// One number for each part in trouble, the same in the drawing, the strip of groups and the list.

import { describe, expect, test } from "vitest";
import type { ShownCaution } from "../../src/graph/cautions.ts";
import type { Problem } from "../../src/graph/types.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { troublesOf } from "../../src/scene/trouble.ts";

const caution = (card: string, weight: ShownCaution["weight"], text: string) =>
  ({ card, weight, text }) as ShownCaution;
const problem = (at: string): Problem => ({ code: "bad_value", at, text: `Wrong at ${at}.` });
const cards = [
  { id: "odd", kind: "no_such_kind" },
  { id: "hose", kind: "line" },
  { id: "tote", kind: "tank" },
  { id: "barn", kind: "roof" },
];

describe("troubles", () => {
  test("are numbered as the parts are listed, one each, a problem before a caution, cards of no known kind last", () => {
    const found = troublesOf({
      kinds: CARD_KINDS,
      cards,
      cautions: [
        caution("tote", "trouble", "It topples. Brace it."),
        caution("barn", "harm", "Mind the ladder."),
        caution("hose", "trouble", "It lies flat. Lift it."),
      ],
      problems: [problem("odd"), problem("hose.bore")],
    });
    expect(found.map(({ card, number, text }) => [card, number, text])).toEqual([
      ["tote", 1, "It topples."],
      ["hose", 2, "Wrong at hose.bore."],
      ["odd", 3, "Wrong at odd."],
    ]);
  });
});
