// The words in the ground, in one row from left to right: of all ways to say more or less under each thing, nearer to it or
// further off, the best for all of them together. A figure without a name stands right under its own thing.

import { deepest } from "./ground.ts";
import { TOUCH } from "./label-near.ts";
import { type LabelBoard, type Saying, type Speaker, sayingsIn } from "./label-words.ts";
import { type InQuestion, unsaid } from "./label-worth.ts";
import type { Anchor } from "./paper.ts";
import type { Box, Label } from "./place.ts";
import type { Block } from "./text-block.ts";

/** Where words end along the row is told in such steps [px]. */
const STEP = 2;
/** From one place that is tried to the next, for words with a name and for a figure alone [px]. */
const TRIED = { named: 6, bare: 2 };
const EDGE = 4;
/** Between two names, two figures, and the figure of one and the name of another [px]. */
const GAP = { alike: 8, unlike: 20 };
/** A name may stand so far beside its thing's middle, beyond half of its breadth; a figure alone next to nothing [px]. */
const ASIDE = { named: 16, bare: 6 };
/** Words may lie so much deeper than the first place under their thing, out of a hose's way [px]. */
const DEEPER = 24;
const COSTS = { aside: 0.3, firstLine: 3, line: 30, deeper: 1 };
export type InRow = {
  readonly speaker: Speaker;
  readonly saying: Saying & { readonly at: number };
  readonly block: Block;
  readonly box: Box;
  readonly anchor: Anchor;
};

type Chosen = { readonly label: InRow; readonly before: Chosen | null };

/** Costs of the best rows whose last words end at or left of each step, by whether those have a name. */
type Ends = { readonly costs: Float64Array; readonly rows: (Chosen | null)[] };

const kindOf = (isNamed: boolean): "named" | "bare" => (isNamed ? "named" : "bare");
type State = Readonly<Record<"named" | "bare", Ends>>;

/** The first clear height under a thing for words of a breadth at some x; null where there is none near. */
function under(block: Block, x: number, anchor: Anchor, board: LabelBoard): Box | null {
  const { width, height } = block;
  const first = Math.max(anchor.from, deepest(board.ground, x, x + width) + 6);
  for (let y = first; y <= first + DEEPER; ) {
    const box = { x, y, width, height };
    const edge = board.room.edge({ x: x - 2, y: y - 2, width: width + 4, height: height + 4 }, true);
    if (edge === null) return box;
    y = Math.max(y + 1, edge + 2);
  }
  return null;
}

export type Candidate = InRow & { readonly cost: number };

/** Whether the middle of its words may stand there: nearer to it than to any other thing; of the open part over some of it. */
function mayStand({ isOpen, own }: Speaker, middle: number, width: number, anchor: Anchor): boolean {
  if (!isOpen) return middle >= own[0] && middle <= own[1];
  const touched = Math.min(middle + width / 2, anchor.right) - Math.max(middle - width / 2, anchor.left);
  return touched >= Math.min(TOUCH, anchor.right - anchor.left);
}

/** Every place along the row for words in one block. */
function places(speaker: Speaker, isNamed: boolean, block: Block, anchor: Anchor, board: LabelBoard) {
  const half = (anchor.right - anchor.left) / 2;
  const reach = isNamed ? half + ASIDE.named : Math.min(half, ASIDE.bare);
  const step = TRIED[kindOf(isNamed)];
  const steps = Math.floor(reach / step);
  const least = EDGE + block.width / 2;
  const most = board.width - least;
  return Array.from({ length: 2 * steps + 1 }, (_, at) => (at - steps) * step).flatMap((wished) => {
    const middle = isNamed ? Math.max(least, Math.min(anchor.middle + wished, most)) : anchor.middle + wished;
    if (middle < least || middle > most || !mayStand(speaker, middle, block.width, anchor)) return [];
    const box = under(block, middle - block.width / 2, anchor, board);
    if (!box) return [];
    const aside = Math.abs(middle - anchor.middle);
    return [{ box, cost: aside * COSTS.aside + (box.y - anchor.from) * COSTS.deeper }];
  });
}

/** So near to a name the figure of another thing would be read as its own. */
export const isBeside = ({ x, y, width, height }: Box, { box: name }: Label): boolean =>
  x < name.x + name.width + GAP.unlike &&
  name.x < x + width + GAP.unlike &&
  y < name.y + name.height &&
  name.y < y + height;

/** All that a thing can say in the row as the room is now, beside the names that stand already. */
export function candidatesFor(
  { speaker, worth, form }: InQuestion,
  names: readonly Label[],
  board: LabelBoard,
): readonly Candidate[] {
  const anchor = speaker.anchors.find(({ side }) => side === "under");
  if (!anchor) return [];
  return sayingsIn(speaker, form).flatMap((saying) =>
    speaker.blocks(saying.words, anchor).flatMap((block) => {
      const more = block.lines.length - saying.words.length;
      const lines = more > 0 ? COSTS.firstLine + (more - 1) * COSTS.line : 0;
      const less = unsaid(speaker, worth, saying) + lines;
      const found = places(speaker, saying.named, block, anchor, board);
      const free = saying.named
        ? found
        : found.filter(({ box }) => !names.some((name) => isBeside(box, name)));
      return free.map(
        ({ box, cost }): Candidate => ({ speaker, saying, block, box, anchor, cost: less + cost }),
      );
    }),
  );
}

const emptyEnds = (steps: number): Ends => ({
  costs: new Float64Array(steps).fill(Number.POSITIVE_INFINITY),
  rows: Array<Chosen | null>(steps).fill(null),
});

/** A row that ends left of a step ends left of every later one. */
function spread({ costs, rows }: Ends): void {
  for (let step = 1; step < costs.length; step++) {
    if ((costs[step - 1] ?? 0) >= (costs[step] ?? 0)) continue;
    costs[step] = costs[step - 1] ?? 0;
    rows[step] = rows[step - 1] ?? null;
  }
}

/** The best row that leaves room for words which begin at an x. */
function bestBefore(
  state: State,
  x: number,
  isNamed: boolean,
): { readonly cost: number; readonly row: Chosen | null } {
  let best = { cost: Number.POSITIVE_INFINITY, row: null as Chosen | null };
  for (const last of ["named", "bare"] as const) {
    const gap = last === kindOf(isNamed) ? GAP.alike : GAP.unlike;
    const step = Math.max(0, Math.floor((x - gap) / STEP));
    const cost = state[last].costs[step] ?? Number.POSITIVE_INFINITY;
    if (cost < best.cost) best = { cost, row: state[last].rows[step] ?? null };
  }
  return best;
}

/** Adds one thing to the state, said in the best way or not at all. */
function addOne(state: State, { speaker, worth }: InQuestion, candidates: readonly Candidate[]): void {
  const better = candidates.map((label) => {
    const before = bestBefore(state, label.box.x, label.saying.named);
    return { label, cost: before.cost + label.cost, row: before.row };
  });
  const none = unsaid(speaker, worth, null);
  for (const { costs } of [state.named, state.bare])
    for (let step = 0; step < costs.length; step++) costs[step] = (costs[step] ?? 0) + none;
  for (const { label, cost, row } of better) {
    const { box, saying } = label;
    const { costs, rows } = state[kindOf(saying.named)];
    const step = Math.ceil((box.x + box.width) / STEP);
    if (cost >= (costs[step] ?? 0)) continue;
    costs[step] = cost;
    rows[step] = { label, before: row };
  }
  spread(state.named);
  spread(state.bare);
}

/** The best row of words under these things, out of what each can say there. */
export function bestRow(
  things: readonly InQuestion[],
  candidatesOf: (one: InQuestion) => readonly Candidate[],
  width: number,
): readonly InRow[] {
  const steps = Math.ceil(width / STEP) + 1;
  const middleOf = ({ speaker }: InQuestion): number =>
    speaker.anchors.find(({ side }) => side === "under")?.middle ?? 0;
  const sorted = [...things].sort((a, b) => middleOf(a) - middleOf(b));
  // Before the first there is nothing to keep away from.
  const empty = { costs: new Float64Array(steps), rows: Array<Chosen | null>(steps).fill(null) };
  const state: State = { named: empty, bare: emptyEnds(steps) };
  for (const one of sorted) addOne(state, one, candidatesOf(one));
  const last = steps - 1;
  const ends = (state.named.costs[last] ?? 0) <= (state.bare.costs[last] ?? 0) ? state.named : state.bare;
  const row: InRow[] = [];
  for (let at = ends.rows[last] ?? null; at; at = at.before) row.unshift(at.label);
  return row;
}
