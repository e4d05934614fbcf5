// What the answers are without: parts of which something is missing or wrong, by their names and the reason where it began.

import { isReady, valueIn } from "../graph/readers.ts";
import { idsOf } from "../network/network.ts";
import { type Asked, counted, networkOfSheet, number, type Sentence, titleOf } from "./asked.ts";
import { withinLine } from "./words/lists.ts";

export const leftOut = (asked: Asked): number => number(asked, "season.left_out") ?? 0;

type LeftOut = { readonly id: string; readonly reason: string; readonly cause?: string };

/** All that are known of now: while the season is run, those that its plan is without. */
export function leftOutParts(asked: Asked): readonly LeftOut[] {
  const lists = ["season.left_out_list", "season.left_out_of_plan"].map((id) => valueIn(asked.result(id)));
  return (lists.find(Array.isArray) ?? []) as readonly LeftOut[];
}

/** What the answers are about: beds, or other uses where there is no bed. */
type Takers = {
  readonly all: readonly string[];
  readonly out: readonly LeftOut[];
  readonly things: "beds" | "uses";
};

export function takersOf(asked: Asked): Takers {
  const network = networkOfSheet(asked);
  const beds = idsOf(network, "bed");
  const all = beds.length > 0 ? beds : idsOf(network, "draw");
  const out = leftOutParts(asked).filter(({ id }) => all.includes(id));
  return { all, out, things: beds.length > 0 ? "beds" : "uses" };
}

/** What the season's plan says of a part that leans on one without which it goes; right of "Two cans" and of "Long bed". */
const OUT = /^left out with (.+?)\.?$/;

/** The part at which it began: one that is left out because another is leads on to that one. */
function firstOf(asked: Asked, parts: readonly LeftOut[], part: LeftOut): LeftOut {
  const seen = new Set<LeftOut>();
  let at = part;
  for (;;) {
    const title = OUT.exec(at.reason)?.[1];
    if (title === undefined || seen.has(at)) break;
    seen.add(at);
    at = parts.find(({ id }) => titleOf(asked, id) === title) ?? at;
  }
  // What is wrong with a number of another part is told of that part.
  const owner = at.cause?.split(".")[0];
  return parts.find(({ id }) => id === owner) ?? at;
}

const alsoWithout = (asked: Asked, takers: readonly LeftOut[], things: string): string => {
  const [only] = takers;
  return takers.length === 1 && only
    ? `without ${titleOf(asked, only.id)} too`
    : `without ${takers.length} ${things} too`;
};

/** "Without Two cans: what one holds is not given, so without Long bed too", where it began, and how many parts that names. */
export function whyOut(
  asked: Asked,
): { readonly said: string; readonly at: string; readonly named: number } | null {
  const parts = leftOutParts(asked);
  const { out, things } = takersOf(asked);
  const [part = parts[0]] = out;
  if (!part) return null;
  const first = firstOf(asked, parts, part);
  const others = out.filter((one) => one !== first && firstOf(asked, parts, one) === first);
  const so = others.length > 0 ? `, so ${alsoWithout(asked, others, things)}` : "";
  const said = `Without ${titleOf(asked, first.id)}: ${first.reason.replace(/\.$/, "")}${so}`;
  return { said, at: first.cause ?? first.id, named: 1 + others.length };
}

/** The first of what is left out and why, and how many parts it is in all; none of the answers knows of them. */
export function withoutParts(asked: Asked): Sentence | null {
  const why = whyOut(asked);
  if (!why) return null;
  const id = "season.left_out";
  const more = leftOutParts(asked).length > why.named && isReady(asked.result(id));
  const all = counted(asked, id, "trouble", "part", { was: null });
  return { id: "left_out", lead: false, pieces: more ? [`${why.said}; `, all, " in all"] : [why.said] };
}

/** A name that is longer would fill the lead. */
const LONG_NAME = 24;

/** "Without Long bed, ", before an answer that holds for the other beds, or the other parts; nothing where all are in it. */
export function withoutOthers(asked: Asked): string {
  const { out, things } = takersOf(asked);
  if (out.length > 0) return withoutThese(asked, out, things);
  const parts = leftOutParts(asked);
  return withoutThese(asked, [...new Set(parts.map((part) => firstOf(asked, parts, part)))], "parts");
}

/** "without Long bed", behind an answer; "" where all are in it. */
export const withoutBehind = (asked: Asked): string => withinLine(withoutOthers(asked)).replace(/, $/, "");

function withoutThese(asked: Asked, these: readonly LeftOut[], things: string): string {
  const [first] = these;
  if (!first) return "";
  const title = titleOf(asked, first.id);
  if (these.length > 1) return `Without ${these.length} ${things}, `;
  return title.length > LONG_NAME ? `Without one ${things.slice(0, -1)}, ` : `Without ${title}, `;
}

const outOf = (asked: Asked): readonly string[] => takersOf(asked).out.map(({ id }) => id);

/** Why the answers are not set against what they were: another bed, or another use, was left out then. Null where they are. */
export function otherTakers(asked: Asked): Sentence | null {
  if (!asked.before) return null;
  const [now, then] = [outOf(asked), outOf({ ...asked, result: asked.before })];
  const fell = now.filter((id) => !then.includes(id));
  const these = fell.length > 0 ? fell : then.filter((id) => !now.includes(id));
  const [only] = these;
  if (only === undefined) return null;
  const said = these.length === 1 ? `${titleOf(asked, only)} was` : `${these.length} more were`;
  const without = fell.length > 0 ? "" : " not";
  return {
    id: "uncompared",
    lead: false,
    pieces: [`Not compared with before, when ${said}${without} in it`],
  };
}
