// Parts that are offered where somebody notes that they were made ready for frost are those that have a job before it.
import { expect, test } from "vitest";
import { CARD_KINDS } from "../../src/kinds/index.ts";
import { KIND_WORDS } from "../../src/kinds/words.ts";

test("what is noted as ready for frost has a job before the frost, and the other way round", () => {
  const kinds = Object.values(CARD_KINDS);
  const noted = kinds.filter((kind) => kind.noted?.includes("drained")).map(({ kind }) => kind);
  const withJob = kinds.filter(({ kind }) => KIND_WORDS[kind]?.frost).map(({ kind }) => kind);
  expect(noted).toEqual(withJob);
});
