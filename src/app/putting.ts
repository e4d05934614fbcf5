// Setting what stands in hand: the value, where it comes from, and back to what it was when it was taken.

import { createMemo, on, untrack } from "solid-js";
import { sameData } from "../document/same.ts";
import { withFrom } from "../document/still-from.ts";
import type { Entry, Origin } from "../document/worksheet.ts";
import { entryAtTarget, type Turn } from "../studies/turn.ts";
import { tidy } from "../units/tidy.ts";
import { fromSi } from "../units/unit.ts";
import type { InHandTools, Turned } from "./turned.ts";

/** What stands there, from nowhere: of a number that is not given the number worked out. */
function bareOf({ entry, value, unit }: Turned): Entry | null {
  const [of, si] = [entry(), value()];
  if (of) {
    const { from: _from, ...rest } = of;
    return rest;
  }
  if (typeof si === "string") return { value: si, unit: "" };
  return si === null ? null : { value: tidy(fromSi(si, unit())), unit: unit() };
}

function originOf({ target, entry }: Turned): Origin | "" {
  if (target()?.part === "measured") return "measured";
  return entry() ? (entry()?.from ?? "") : "default";
}

/** Setting what stands there. */
export function createPutting({ session, edits }: InHandTools, turned: Turned) {
  const { turn, target, entry } = turned;
  const card = () => session.worksheet().cards.find(({ id }) => id === turn()?.target.card);
  /** What was given beside what was measured, when it was taken. */
  const givenAsTaken = createMemo<Entry | null>(
    on(turn, (now) =>
      now ? entryAtTarget(untrack(session.worksheet), { ...now.target, part: "givens" }) : null,
    ),
  );
  const put = (next: Entry | null): void => {
    const [of, now, at] = [card(), turn(), target()];
    if (!of || !now || !at) return;
    if (at.part !== "measured" || next?.from === "measured") {
      if (at.part === "measured") edits().measured(of, now.row, next, true);
      else edits().given(of, now.row, next, true);
      return;
    }
    // Nobody measured what is typed or turned in the place of what was measured: it is given like any other.
    if (next) edits().given(of, now.row, next, true);
    edits().measured(of, now.row, null, true);
  };
  const putBack = ({ target: taken, row, entry: was }: Turn): void => {
    const of = card();
    if (taken.part !== "measured" || !of) {
      put(was);
      return;
    }
    edits().measured(of, row, was, true);
    edits().given(of, row, givenAsTaken(), true);
  };
  const keeping = (next: Entry): Entry => withFrom(next, [entry(), turn()?.entry]);
  const setOrigin = (from: Origin | ""): void => {
    const [of, now, at, kept] = [card(), turn(), target(), bareOf(turned)];
    if (!of || !now || !at || !kept) return;
    const isMeasurable = now.row.row === "given" && now.row.measurable !== undefined;
    if (isMeasurable && from === "measured") {
      edits().measured(of, now.row, { ...kept, from }, true);
      return;
    }
    if (at.part === "measured") edits().measured(of, now.row, null, true);
    const next = from === "default" ? null : { ...kept, ...(from ? { from } : {}) };
    edits().given(of, now.row, next, true);
  };
  const restore = (): boolean => {
    const now = turn();
    if (!now) return false;
    const isDropped = session.drop(now.id);
    const stands = entryAtTarget(session.engine.view().worksheet, now.target);
    const isOther = !sameData(stands, now.entry);
    if (isOther) {
      putBack(now);
      session.settle();
    }
    return isDropped || isOther;
  };
  return { put, keeping, setOrigin, restore, origin: () => originOf(turned) };
}
