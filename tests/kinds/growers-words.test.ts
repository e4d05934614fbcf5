// What rows and cautions are called and say: words that somebody with a spade knows. The trade's names stand in the sources.

import { describe, expect, test } from "vitest";
import { cautionWords, rowWords } from "../../src/graph/words.ts";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";

/** Words that readers of the page did not know, or took for something else. */
const HARD =
  /footprint|datum|hargreaves|penman|throw of the dice|sweeps? (an|its own) air|of it you can|comes at place|to the station's|to the figure's|grade line|let go from|thirst met/i;

/** Labels that say nothing where they stand without the row before them, as in the list of what moved. */
const LEANING = /^(it|then|there|that|the same|so much|of (it|that|them|what|your)|with this)\b|^on$/i;

describe.each(Object.entries(CARD_KINDS))("the words of %s", (kind, { rows, cautions }) => {
  const shown = rows.filter(({ hidden }) => hidden !== true);

  test("are a grower's, in labels, helps and cautions", () => {
    for (const row of shown) {
      expect(row.label, row.name).not.toMatch(HARD);
      const said = rowWords(KIND_WORDS, kind, row);
      expect(said?.help ?? "", row.name).not.toMatch(HARD);
      if ("absent" in row) expect(row.absent ?? "", row.name).not.toMatch(HARD);
    }
    for (const caution of cautions)
      expect(cautionWords(KIND_WORDS, kind, caution)?.text ?? "", caution.id).not.toMatch(HARD);
  });

  test("stand by themselves", () => {
    for (const { label, name } of shown) expect(label, name).not.toMatch(LEANING);
  });
});
