// Which test files begin: those that take longest, so that none of them is left alone at the end with the other workers idle.

import { BaseSequencer, type TestSpecification } from "vitest/node";

/** As measured; whoever is not listed follows in the runner's own order. */
const LONGEST = [
  "journeys/handing-on",
  "journeys/given-away",
  "journeys/nothing-lost",
  "journeys/in-season",
  "journeys/not-sure",
  "journeys/at-the-bed",
  "journeys/main-job",
  "journeys/asking",
  "journeys/rain-in",
  "journeys/keeping",
  "journeys/newcomer",
  "journeys/in-hand",
  "journeys/offline",
  "journeys/frame",
  "journeys/plans",
  "cli/from-today",
  "sweep/sweep-1",
  "sweep/sweep-2",
  "sweep/sweep-3",
  "sweep/sweep-4",
];

const placeOf = ({ moduleId }: TestSpecification): number => {
  const at = LONGEST.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`));
  return at < 0 ? LONGEST.length : at;
};

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.sort((a, b) => placeOf(a) - placeOf(b));
  }
}
