// The list of what moved since something was held: sorted as its closing note says.

import { withChanges } from "../../../src/document/changes.ts";
import { numberIn } from "../../../src/graph/readers.ts";
import { answers } from "../../../src/telling/answers.ts";
import { whatMoved } from "../../../src/telling/what-moved.ts";
import { property } from "../harness.ts";
import { OPTIONS, type Worked, workedOut } from "../worked.ts";

/** The same place with one tank of a size that is hardly ever its own. */
function withAnotherTank({ seed, worksheet, records, cardsOf }: Worked): Worked | null {
  const [tank] = cardsOf("tank");
  if (tank === undefined) return null;
  const entry = { value: 333, unit: "gal" };
  const changed = withChanges(worksheet, [{ card: tank, part: "givens", row: "capacity", entry }]);
  return workedOut({ seed, worksheet: changed, records });
}

/** How far a number moved, from its own two values: of the way from nought, or the lesser, to the greater. */
function farOf(was: number | null, now: number | null): number | null {
  if (was === null || now === null) return null;
  const whole = Math.max(0, was, now) - Math.min(0, was, now);
  return whole > 0 ? Math.abs(now - was) / whole : 0;
}

function leadNumbers({ results, worksheet }: Worked): readonly string[] {
  const lead = answers({ result: (id) => results.get(id), cards: worksheet.cards }).find((one) => one.lead);
  return (lead?.pieces ?? []).flatMap((piece) => (typeof piece === "string" ? [] : [piece.quantity]));
}

property(
  "what moved begins with the numbers of the lead, in its order, and goes on from the furthest to the nearest",
  (worked) => {
    const after = withAnotherTank(worked);
    if (!after) return null;
    const listed = whatMoved(worked, after, OPTIONS).answers.map(({ id }) => id);
    const lead = leadNumbers(after).filter((id) => listed.includes(id));
    if (listed.slice(0, lead.length).join() !== lead.join()) return `${listed.slice(0, 4)}, not ${lead}`;
    const far = listed
      .slice(lead.length)
      .map((id) => [id, farOf(numberIn(worked.results.get(id)), numberIn(after.results.get(id)))] as const);
    // A word has no length; the last bit may differ.
    const wrong = far.findIndex(([, one], at) => (far[at + 1]?.[1] ?? -1) > (one ?? -1) + 1e-12);
    return wrong < 0 ? null : `${far[wrong]?.join(" ")} stands before ${far[wrong + 1]?.join(" ")}`;
  },
  { every: 10 },
);
