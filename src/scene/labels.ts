// Words beside things, once everything is drawn, where no line, no thing and no other word is. What stands in the ground
// stands in one row as far as it fits; the rest takes the nearest place over or under its thing. Where there is none a thing
// has no words: its disc and the list still say it.

import { freeTier, HALO, placed, type Said, STEP, withHalo } from "./label-near.ts";
import { bestRow, type Candidate, candidatesFor, isBeside } from "./label-row.ts";
import {
  FORMS,
  type Form,
  type LabelBoard,
  type Speaker,
  sayingsIn,
  speakerOf,
  type Wanted,
} from "./label-words.ts";
import { type InQuestion, isSpoken, isWhole, type Spoken, saidOf, spokenIn, unsaid } from "./label-worth.ts";
import { type Anchor, round } from "./paper.ts";
import type { Label, LabelWay } from "./place.ts";

/** Around a figure without a name no other name stands, so that it is not read as that one's [px]. */
const BARE_HALO = 16;

/** The most that can be said of a part with its name at some of its anchors. */
function namedLabel(
  speaker: Speaker,
  form: Form,
  anchors: readonly Anchor[],
  board: LabelBoard,
): Label | null {
  for (const { words, named, at } of sayingsIn(speaker, form)) {
    const found = named ? placed(speaker, words, anchors, board) : null;
    if (found) return labelFound(speaker, at, found, board);
  }
  return null;
}

const isNamed = ({ words }: Label): boolean => words.some(({ bold }) => bold);

/** A figure alone right at its thing. */
function bareLabel(speaker: Speaker, form: Form, names: readonly Label[], board: LabelBoard): Label | null {
  const bare = sayingsIn(speaker, form).find(({ named }) => !named);
  if (!bare) return null;
  for (const anchor of [...speaker.anchors].reverse()) {
    const [block] = speaker.blocks(bare.words, anchor);
    if (!block || block.lines.length > 1) continue;
    const left = anchor.middle - block.width / 2;
    if (left < 4 || left + block.width > board.width - 4) continue;
    const found = freeTier(block, left, anchor, board, 2 * STEP + 1);
    if (found && !names.some((name) => isBeside(found.box, name)))
      return labelFound(speaker, bare.at, { ...found, anchor }, board);
  }
  return null;
}

function labelFound(
  speaker: Speaker,
  saying: number,
  { block, box, anchor }: Omit<Said, "cost">,
  board: LabelBoard,
): Label {
  const isBare = !speaker.sayings[saying]?.named;
  board.room.take(box, HALO);
  // While something moves all stand where they stood, apart already.
  if (isBare && !board.ways) {
    const { x, y, width, height } = box;
    board.room.take({ x: x - BARE_HALO, y, width: width + 2 * BARE_HALO, height: height + BARE_HALO });
  }
  const middle = round(box.x + box.width / 2);
  const under = anchor.side === "under";
  return {
    of: speaker.part.id,
    box,
    words: block.lines.map((line) => ({ ...line, x: middle, y: round(box.y + line.y) })),
    under,
    way: {
      saying,
      lines: block.lines.length,
      width: block.width,
      under,
      aside: box.x + box.width / 2 - anchor.middle,
      away: box.y - anchor.from,
    },
  };
}

/** The same saying where it stood beside its thing before, in as many lines; null where something has come there. */
function labelKept(speaker: Speaker, way: LabelWay, board: LabelBoard): Label | null {
  const words = speaker.sayings[way.saying]?.words;
  const anchor = [...speaker.anchors, ...speaker.spare].find(({ side }) => (side === "under") === way.under);
  if (!words || !anchor) return null;
  const [block] = speaker
    .blocks(words, anchor)
    .filter(({ lines }) => lines.length === way.lines)
    .sort((a, b) => Math.abs(a.width - way.width) - Math.abs(b.width - way.width));
  if (!block) return null;
  const { width, height } = block;
  const box = { x: anchor.middle + way.aside - width / 2, y: anchor.from + way.away, width, height };
  if (board.room.edge(withHalo(box), true) !== null) return null;
  const label = labelFound(speaker, way.saying, { block, box, anchor }, board);
  return label;
}

/** While something moves: each where it stood, else nearby; what was not labelled is not labelled now. */
function labelsKept(
  wanted: readonly Speaker[],
  ways: ReadonlyMap<string, readonly LabelWay[]>,
  board: LabelBoard,
): readonly Label[] {
  const known = wanted.flatMap((one) => (ways.get(one.part.id) ?? []).map((way) => ({ one, way })));
  const kept = known.flatMap(({ one, way }) => labelKept(one, way, board) ?? []);
  const stand = new Set(kept.map(({ of }) => of));
  const others = known.filter(({ one }) => !stand.has(one.part.id));
  return [
    ...kept,
    ...others.flatMap(({ one, way }) => {
      const saying = one.sayings[way.saying];
      const form = saying?.form ?? 0;
      return (
        (saying?.named ? namedLabel(one, form, one.anchors, board) : bareLabel(one, form, [], board)) ?? []
      );
    }),
  ];
}

/** The name over what must be named and is not, else under its figure, once all else has its words. */
function namesBeside(
  spoken: readonly Spoken[],
  labels: readonly Label[],
  board: LabelBoard,
): readonly Label[] {
  if (board.small) return [];
  const labelled = new Map(labels.map((label) => [label.of, label]));
  return spoken.flatMap(({ speaker: one, mustBeNamed }): readonly Label[] => {
    if (!mustBeNamed) return [];
    const before = labelled.get(one.part.id);
    if (before && one.sayings[before.way.saying]?.named) return [];
    const at = one.sayings.findIndex(({ named, form }) => named && form === null);
    const words = one.sayings[at]?.words;
    const found = words
      ? placed(one, words, before ? one.spare : [...one.anchors, ...one.spare], board)
      : null;
    return found ? [labelFound(one, at, found, board)] : [];
  });
}

/** Shorter forms say the same with less ease. */
const FORM_COSTS = [0, 4, 9] as const;

const isOver = ({ anchors }: Speaker, board: LabelBoard): boolean =>
  anchors[0]?.side === "over" && !board.small;

/** Labels over things whose words belong there, all with their figures in the fullest form in which each has one. */
function labelsOver(spoken: readonly Spoken[], board: LabelBoard): readonly Label[] {
  const over = spoken.filter(({ speaker }) => isOver(speaker, board));
  const most = Math.max(1, ...over.map(({ speaker }) => speaker.forms));
  const takeBack = board.room.kept();
  let labels: readonly Label[] = [];
  for (const form of FORMS.slice(0, most)) {
    takeBack();
    labels = over.flatMap(({ speaker }) => namedLabel(speaker, form, speaker.anchors, board) ?? []);
    if (over.every((one) => isWhole(one, labels))) break;
  }
  return labels;
}

/** Lines of words in the row, at the most. */
const ROW_LINES = [4, 3, 2];

type Try = { readonly labels: readonly Label[]; readonly cost: number };

/** All labels with the figures in one form, on top of those that stand already. */
function withRow(
  spoken: readonly Spoken[],
  before: readonly Label[],
  candidatesOf: (one: InQuestion) => readonly Candidate[],
  board: LabelBoard,
): Try {
  const takeBack = board.room.kept();
  const labels = [...before];
  const isUnsaid = ({ speaker }: Spoken): boolean => labels.every(({ of }) => of !== speaker.part.id);
  for (const { speaker, saying, ...found } of bestRow(spoken.filter(isUnsaid), candidatesOf, board.width))
    labels.push(labelFound(speaker, saying.at, found, board));
  for (const { speaker, form } of spoken.filter(isUnsaid)) {
    const label =
      namedLabel(speaker, form, speaker.anchors, board) ??
      bareLabel(speaker, form, labels.filter(isNamed), board);
    if (label) labels.push(label);
  }
  labels.push(...namesBeside(spoken, labels, board));
  takeBack();
  const cost = spoken.reduce(
    (sum, { speaker, worth, form }) =>
      sum + unsaid(speaker, worth, saidOf(speaker, labels)) + (speaker.hasFigure ? FORM_COSTS[form] : 0),
    0,
  );
  return { labels, cost };
}

/** What each thing can say in the row, asked anew only where its figure has another form. */
function rememberedFor(
  names: readonly Label[],
  board: LabelBoard,
): (one: InQuestion) => readonly Candidate[] {
  const known = new Map<Speaker, (readonly Candidate[])[]>();
  return (one) => {
    const inForms = known.get(one.speaker) ?? [];
    known.set(one.speaker, inForms);
    const at = Math.max(0, Math.min(one.form, one.speaker.forms - 1));
    inForms[at] ??= candidatesFor(one, names, board);
    return inForms[at];
  };
}

/** The best labels in any form of the figures in the row, on top of those that stand already. */
function bestTry(
  groups: readonly (readonly Speaker[])[],
  standing: (spoken: readonly Spoken[]) => readonly Label[],
  forms: readonly Form[],
  board: LabelBoard,
): Try | null {
  const takeBack = board.room.kept();
  const spokenAs = (form: Form): readonly Spoken[] =>
    groups.flatMap((group, rank) => spokenIn(group, rank, form));
  const before = standing(spokenAs(forms[0] ?? 0));
  const candidatesOf = rememberedFor(before.filter(isNamed), board);
  let best: Try | null = null;
  for (const form of forms) {
    const spoken = spokenAs(form);
    for (const lines of ROW_LINES) {
      const low = (one: InQuestion) => candidatesOf(one).filter(({ block }) => block.lines.length <= lines);
      const found = withRow(spoken, before, low, board);
      if (!best || found.cost < best.cost) best = found;
      // A lower row leaves room for more words under it.
      if (spoken.every(({ speaker }) => isSpoken(speaker, found.labels))) break;
    }
    if (spoken.every((one) => isWhole(one, best?.labels ?? []))) break;
  }
  takeBack();
  return best;
}

/** The open part chooses its place before all, over its thing rather than in the row; its figure has the form of its like. */
function bestApart(
  groups: readonly (readonly Speaker[])[],
  open: Speaker,
  forms: readonly Form[],
  board: LabelBoard,
) {
  const tries = forms.flatMap((form) => {
    const standing = (spoken: readonly Spoken[]): readonly Label[] => {
      const label = namedLabel(open, form, [...open.spare, ...open.anchors], board);
      const others = spoken.filter(({ speaker }) => speaker !== open);
      return [...(label ? [label] : []), ...labelsOver(others, board)];
    };
    return bestTry(groups, standing, [form], board) ?? [];
  });
  return tries.reduce<Try | null>((best, one) => (best && best.cost <= one.cost ? best : one), null);
}

/** The labels of groups of parts that are alike; those that come first are worth most, the open one before all. */
export function placeLabels(groups: readonly (readonly Wanted[])[], board: LabelBoard): readonly Label[] {
  const all = groups.flat();
  const speakers = groups.map((group) => group.map((one) => speakerOf(one, all, board)));
  if (board.ways) return labelsKept(speakers.flat(), board.ways, board);
  const row = speakers.flat().filter((speaker) => !isOver(speaker, board));
  const forms = FORMS.slice(0, Math.max(1, ...row.map((speaker) => speaker.forms)));
  const inRow = bestTry(speakers, (spoken) => labelsOver(spoken, board), forms, board);
  const open = row.find(({ isOpen }) => isOpen);
  const apart = open && inRow && inRow.cost > 0 ? bestApart(speakers, open, forms, board) : null;
  return (apart && inRow && apart.cost < inRow.cost ? apart : inRow)?.labels ?? [];
}
