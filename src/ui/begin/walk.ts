// The walk from one number to the next: which screen stands, what is typed on it, what it tells of the place.

import { type Accessor, batch, createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { numberIn, wordIn } from "../../graph/readers.ts";
import type { Default, Typed } from "../../graph/types.ts";
import {
  type Answer,
  type Question as AnyQuestion,
  apartKey,
  type Known,
  type Pick,
  type Picks,
  questionsOf,
  type Told,
} from "../../kinds/asking.ts";
import type { Planted } from "../../kinds/bed/crops.ts";
import { showQuantity } from "../../units/show.ts";
import { toSi } from "../../units/unit.ts";
import type { Sheet } from "../sheet.ts";
import type { Beginning } from "./beginning.ts";
import { filledBy, readAnswer, startOf } from "./reading.ts";

const SAME = 1e-6;

export type Question = AnyQuestion<Card>;

/** Of which card a question asks first. */
export const firstOf = ({ cards }: Question): Card => {
  const [first] = cards;
  if (!first) throw new Error("A question of no card.");
  return first;
};

function knownOf(sheet: Sheet, question: Question): Known {
  const card = firstOf(question);
  return {
    card,
    cards: sheet.worksheet().cards,
    units: sheet.worksheet().units,
    number: (row) => numberIn(sheet.result(`${card.id}.${row}`)),
    show: (si, measure, whole) => showQuantity(si, measure, { ...sheet.showOptions(), rounded: !whole }),
  };
}

/** Whether a row has what a pick would tell. */
function has(sheet: Sheet, id: string, { value, unit }: Answer): boolean {
  const result = sheet.result(id);
  if (typeof value === "string") return wordIn(result) === value;
  const [now, si] = [numberIn(result), typeof value === "number" ? toSi(value, unit) : null];
  return now !== null && si !== null && Math.abs(now - si) <= SAME * Math.abs(si);
}

const isUnsaid = (card: Card, row: string): boolean =>
  card.givens[row] === undefined || card.givens[row].from === "default";

function isPicked(sheet: Sheet, card: Card, picks: Picks, pick: Pick): boolean {
  if (picks.isPicked) return picks.isPicked(pick, card);
  // Of a long list nothing is taken as picked before somebody picks it.
  if (picks.tall && Object.keys(pick.told).some((row) => isUnsaid(card, row))) return false;
  return Object.entries(pick.told).every(
    ([row, entry]) => entry === null || has(sheet, `${card.id}.${row}`, entry),
  );
}

/** What is picked already without anybody having said so: going on says it. */
function confirmed(sheet: Sheet, question: Question): Told {
  const card = firstOf(question);
  const all = (question.ask.picks ?? []).flatMap((picks) => {
    if (picks.together || picks.tall) return [];
    const pick = picks.picks(knownOf(sheet, question)).find((one) => isPicked(sheet, card, picks, one));
    const told = Object.entries(pick?.told ?? {}).filter(([row, entry]) => entry && isUnsaid(card, row));
    return [Object.fromEntries(told)];
  });
  return Object.assign({}, ...all);
}

const guessed = (entry: Answer): Answer => ({ ...entry, from: "guessed" });

/** A row's usual value, by another row's word where it hangs on that; null where it is worked out. */
function usualOf(sheet: Sheet, card: Card, usual: Default): Typed | null {
  if (usual === null || "formula" in usual) return null;
  if (!("by" in usual)) return usual;
  return usual.pick[wordIn(sheet.result(`${card.id}.${usual.by}`))] ?? null;
}

/** The usual values of what a question asks, as a guess. */
function guess(sheet: Sheet, question: Question): Told {
  const { ask, kind } = question;
  const card = firstOf(question);
  const rows = ask.field?.by ?? ask.rows;
  const all = rows.flatMap((name): readonly (readonly [string, Answer])[] => {
    const given = card.givens[name];
    if (given) return [[name, guessed(given as Answer)]];
    const row = sheet.kinds[kind]?.rows.find((one) => one.name === name);
    if (row?.row === "list" && row.of === "contents")
      return [[name, guessed({ value: (row.default ?? []) as readonly Planted[], unit: "" })]];
    const usual = row?.row === "given" ? usualOf(sheet, card, row.default) : null;
    if (!usual) return [];
    const [value, unit] = usual;
    return [[name, guessed({ value, unit })]];
  });
  return { ...confirmed(sheet, question), ...Object.fromEntries(all) };
}

/** Which screen stands, in the order of asking; one that is away leaves the next in its place. */
function createPlace(sheet: Sheet, beginning: Beginning) {
  const [apart, setApart] = createSignal<ReadonlySet<string>>(new Set());
  const all = createMemo(() =>
    questionsOf(beginning.starts, sheet.worksheet().cards, apart()).filter(({ ask }) => !ask.onPage),
  );
  const open = all().findIndex(({ said }) => !said);
  const [at, setAt] = createSignal(Math.max(0, open));
  const [id, setId] = createSignal(all()[at()]?.id ?? "");
  const index = createMemo(() => {
    const found = all().findIndex((one) => one.id === id());
    return found >= 0 ? found : Math.min(at(), all().length - 1);
  });
  const go = (to: number): void =>
    batch(() => {
      setAt(to);
      setId(all()[to]?.id ?? "");
    });
  const question = createMemo(() => all()[index()] ?? null);
  return {
    all,
    index,
    question,
    go,
    /** Asks of each card by itself what was asked of all of them. */
    split: () => {
      const now = question();
      if (now) setApart(new Set([...apart(), apartKey(now.kind, now.ask)]));
    },
  };
}

/** So long nothing more is typed before it is said that it cannot be read: a word is not finished at its first letter [ms]. */
const UNFINISHED = 700;

/** Says what is wrong with what is typed once no more is typed. */
function createFault() {
  const [wrong, setWrong] = createSignal<string | null>(null);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const say = (fault: string | null): void => {
    clearTimeout(timer);
    setWrong(fault);
  };
  onCleanup(() => clearTimeout(timer));
  return {
    wrong,
    say,
    soon: (fault: string): void => {
      say(null);
      timer = setTimeout(() => setWrong(fault), UNFINISHED);
    },
  };
}

/** What is typed on the screen that stands, and what it tells. */
function createAnswer(sheet: Sheet, beginning: Beginning, question: Accessor<Question | null>) {
  const [text, setText] = createSignal("");
  const { wrong, say: setWrong, soon } = createFault();
  const [isUnread, setUnread] = createSignal(false);
  const tell = (now: Question, told: Told): void => {
    const some = Object.fromEntries(now.cards.map(({ id }) => [id, told]));
    const others = now.ask.others?.(told, sheet.worksheet().cards) ?? {};
    const joined = Object.entries(others).map(([card, rows]) => [card, { ...rows, ...some[card] }] as const);
    const { title } = firstOf(now);
    beginning.tell({ ...some, ...Object.fromEntries(joined) }, title, `begin ${now.id}`);
  };
  const restart = (): void => {
    const now = question();
    setWrong(null);
    setUnread(false);
    setText(now?.ask.field ? startOf(sheet, firstOf(now), now.ask.field) : "");
  };
  // Another screen, or the same asked of fewer: it opens with what was told there.
  const screen = createMemo(() => question()?.id);
  createEffect(on(screen, restart));
  const refused = createMemo((): string | null => {
    const now = question();
    if (!now?.ask.field || text().trim() === "") return null;
    const failed = filledBy(now.ask.field).map((row) => sheet.failure(`${firstOf(now).id}.${row}`));
    return failed.find((reason) => reason !== null) ?? null;
  });
  const read = (now: Question) =>
    now.ask.field && text().trim() !== "" ? readAnswer(sheet, firstOf(now), now.ask.field, text()) : null;
  return {
    text,
    tell,
    read,
    restart,
    wrong: () => wrong() ?? refused(),
    /** What is typed tells nothing. */
    isUnread,
    /** Enters what is typed as it is typed; what cannot be read takes back what was told before, and it is soon said why. */
    type: (typed: string): void => {
      const now = question();
      setText(typed);
      setWrong(null);
      if (!now?.ask.field) return;
      const said = read(now);
      setUnread(said?.ok === false);
      if (said?.ok === false) soon(said.message);
      if (said?.ok) tell(now, said.told);
      else tell(now, Object.fromEntries(filledBy(now.ask.field).map((row) => [row, null])));
    },
    /** Whether what is typed can be gone on with. */
    stands: (now: Question): boolean => {
      const said = read(now);
      if (said?.ok === false) setWrong(said.message);
      return said === null || (said.ok && refused() === null);
    },
  };
}

/** What was told, as a guess. */
const doubted = (told: Told): Told =>
  Object.fromEntries(Object.entries(told).map(([row, entry]) => [row, entry && guessed(entry)]));

export type Walk = ReturnType<typeof createWalk>;

/** @param onlyOpen goes on to what is still to be said alone, as from the foot of a place that was told already */
export function createWalk(sheet: Sheet, beginning: Beginning, onlyOpen: boolean, onEnd: () => void) {
  const place = createPlace(sheet, beginning);
  const { question, index, all, go } = place;
  const { text, tell, read, restart, wrong, isUnread, type, stands } = createAnswer(
    sheet,
    beginning,
    question,
  );
  const toggled = (now: Question, picks: Picks, pick: Pick): readonly Pick[] =>
    picks
      .picks(knownOf(sheet, now))
      .filter((one) => (one.label === pick.label) !== isPicked(sheet, firstOf(now), picks, one));
  const nextFrom = (from: number): number =>
    all().findIndex(({ said }, at) => at > from && !(onlyOpen && said));
  /** Says what the screen that stands says, and goes on. */
  const goOn = (say: (now: Question) => void): void => {
    const now = question();
    if (!now || !stands(now)) return;
    say(now);
    const to = nextFrom(index());
    if (to >= 0) go(to);
    else onEnd();
  };
  return {
    ...place,
    text,
    type,
    wrong,
    isUnread,
    known: () => {
      const now = question();
      return now ? knownOf(sheet, now) : null;
    },
    isPicked: (picks: Picks, pick: Pick): boolean => {
      const now = question();
      return now !== null && isPicked(sheet, firstOf(now), picks, pick);
    },
    pick: (picks: Picks, pick: Pick): void => {
      const now = question();
      if (!now) return;
      tell(now, picks.together ? picks.together(toggled(now, picks, pick)) : pick.told);
      if (now.ask.field && filledBy(now.ask.field).some((row) => row in pick.told)) restart();
    },
    isLast: (): boolean => nextFrom(index()) < 0,
    next: (): void =>
      goOn((now) => {
        const told = confirmed(sheet, now);
        // What stands there picked answers the question; what only stands beside it does not.
        const isPickedOne = now.ask.rows.some((row) => row in told);
        if (now.said || isPickedOne || text().trim() !== "") tell(now, told);
      }),
    notSure: (): void =>
      goOn((now) => {
        const said = read(now);
        if (said?.ok) tell(now, { ...confirmed(sheet, now), ...doubted(said.told) });
        else if (!now.said) tell(now, guess(sheet, now));
      }),
    /** False on the first screen. */
    back: (): boolean => {
      if (index() === 0) return false;
      go(index() - 1);
      return true;
    },
  };
}
