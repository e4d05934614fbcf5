// What it is worth to name a thing and to give its figure, and so what it costs to leave it unsaid.

import type { Form, Saying, Speaker, Wanted } from "./label-words.ts";
import type { Label } from "./place.ts";

/** What is open is said, whatever that costs others. */
const OPEN = 5000;

/** What it is worth to name a thing, and to give its figure. */
type Worth = { readonly name: number; readonly figure: number };

/** A thing with what it is worth to say, and the form of its figure. */
export type InQuestion = { readonly speaker: Speaker; readonly worth: Worth; readonly form: Form };

/** A name that is cut, against the words of others. */
const CUT = 400;
/** Nothing said at all: more than what is missing of it. */
const NOTHING = 60;

/** What it costs to say no more than this. */
export function unsaid(
  speaker: Speaker,
  worth: Worth,
  said: Pick<Saying, "named" | "form" | "cut"> | null,
): number {
  const { name, figure } = speaker.isOpen ? { name: OPEN, figure: OPEN } : worth;
  const nothing = said && (said.named || said.form !== null) ? 0 : NOTHING;
  const canBeNamed = speaker.sayings.some(({ named }) => named);
  return (
    (said?.cut ? CUT : 0) +
    (speaker.sayings.length > 0 ? nothing : 0) +
    (canBeNamed && !said?.named ? name : 0) +
    (speaker.hasFigure && (said?.form ?? null) === null ? figure : 0)
  );
}

const wrongOf = ({ part }: Wanted): number => Math.max(0, ...part.words.map(({ wrong }) => wrong ?? 0));

/** So few of a kind are all named where there is room. */
const FEW = 3;

/** Of parts that are alike those whose name must be read: of many whatever is in trouble, and the worst of the rest. */
function toName(group: readonly Speaker[]): readonly Speaker[] {
  if (group.length <= FEW) return group;
  const troubled = group.filter(({ part }) => part.trouble !== null);
  const most = Math.max(0, ...group.map(wrongOf));
  const worst = most > 0 ? group.filter((one) => wrongOf(one) === most && !troubled.includes(one)) : [];
  return [...troubled, ...worst.slice(0, 1)];
}

/** A thing that says its trouble or its level, and any other thing. */
const FIGURE_WORTH = { alone: 200, beside: 54, later: 3 };
/** By how early its kind chooses, or next to nothing: of many a figure each is worth more than the names of some. */
const NAME_WORTH = { first: 70, later: 3, ofMany: 20 };

function worthOf(speaker: Speaker, mustBeNamed: boolean, rank: number): Worth {
  const mayStandAlone = speaker.sayings.some(({ named }) => !named);
  const { first, later, ofMany } = NAME_WORTH;
  const { alone, beside } = FIGURE_WORTH;
  return {
    name: mustBeNamed ? first - later * rank : ofMany,
    figure: mayStandAlone ? alone + Math.min(99, wrongOf(speaker)) : beside - FIGURE_WORTH.later * rank,
  };
}

export type Spoken = InQuestion & { readonly mustBeNamed: boolean };

/** A group with what each of it is worth to say; `rank`: how late its kind chooses. */
export function spokenIn(group: readonly Speaker[], rank: number, form: Form): readonly Spoken[] {
  const named = toName(group);
  return group.map((speaker): Spoken => {
    const mustBeNamed = speaker.isOpen || named.includes(speaker);
    return { speaker, worth: worthOf(speaker, mustBeNamed, rank), form, mustBeNamed };
  });
}

/** What is said of a part. */
export function saidOf(
  { part, sayings }: Speaker,
  labels: readonly Label[],
): Pick<Saying, "named" | "form" | "cut"> {
  const said = labels.flatMap(({ of, way }) => (of === part.id ? (sayings[way.saying] ?? []) : []));
  const isCut = said.some(({ cut }) => cut);
  return {
    named: said.some(({ named }) => named),
    form: said.find(({ form }) => form !== null)?.form ?? null,
    ...(isCut ? { cut: isCut as true } : {}),
  };
}

export const isWhole = ({ speaker, worth }: Spoken, labels: readonly Label[]): boolean =>
  unsaid(speaker, worth, saidOf(speaker, labels)) === 0;

export const isSpoken = ({ part, sayings }: Speaker, labels: readonly Label[]): boolean =>
  sayings.length === 0 || labels.some(({ of }) => of === part.id);
