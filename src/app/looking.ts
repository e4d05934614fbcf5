// What the reader looks at, for as long as one worksheet stands open.

import { type Accessor, batch, createMemo, createSignal, onCleanup } from "solid-js";
import type { Card } from "../document/worksheet.ts";
import type { Kinds } from "../kinds/kind.ts";
import type { Begun } from "../ui/begin/beginning.ts";
import type { InTime, Looking, OpenedAt, Width } from "../ui/looking.ts";

/** The lead's answer. */
const FIRST_ANSWER = "season.worst_season_days_short";
/** The sixteenth of July, in the middle of most seasons. */
const FIRST_DAY = 196;
/** A window that is lower by so much has a keyboard before it [px]. */
const KEYBOARD = 140;

const WIDTHS: readonly (readonly [Width, string])[] = [
  ["wide", "(min-width: 1600px)"],
  ["bench", "(min-width: 1024px)"],
  ["list", "(min-width: 640px)"],
];

function createWidth(): Accessor<Width> {
  const queries = WIDTHS.map(([width, query]) => ({ width, list: matchMedia(query) }));
  const now = (): Width => queries.find(({ list }) => list.matches)?.width ?? "phone";
  const [width, setWidth] = createSignal(now());
  const look = (): void => {
    setWidth(now());
  };
  for (const { list } of queries) list.addEventListener("change", look);
  onCleanup(() => {
    for (const { list } of queries) list.removeEventListener("change", look);
  });
  return width;
}

/** Whether a keyboard covers part of the page; what is only magnified is no keyboard. */
function createTyping(): Accessor<boolean> {
  const screen = window.visualViewport;
  const [typing, setTyping] = createSignal(false);
  if (!screen) return typing;
  const look = (): void => {
    const isCovered = innerHeight - screen.height * screen.scale > KEYBOARD;
    // The page keeps its height under a keyboard: what must be seen keeps to what is left of it.
    document.documentElement.style.setProperty("--seen", isCovered ? `${screen.height}px` : "100dvh");
    setTyping(isCovered);
  };
  screen.addEventListener("resize", look);
  onCleanup(() => screen.removeEventListener("resize", look));
  return typing;
}

/** How long a number that was turned counts as moving still [ms]; keys that are held come in far less. */
const STILL = 500;

function createStirring(): Pick<Looking, "stirred" | "stir"> {
  const [stirred, setStirred] = createSignal(false);
  let timer: ReturnType<typeof setTimeout> | undefined;
  // A finger that rests on what it drags has not let go of it.
  let isPressed = false;
  const wait = (): void => {
    clearTimeout(timer);
    if (!isPressed) timer = setTimeout(() => setStirred(false), STILL);
  };
  const press = ({ type }: Event): void => {
    isPressed = type === "pointerdown";
    if (!isPressed) wait();
  };
  const presses = ["pointerdown", "pointerup", "pointercancel"];
  for (const type of presses) addEventListener(type, press, true);
  onCleanup(() => {
    clearTimeout(timer);
    for (const type of presses) removeEventListener(type, press, true);
  });
  return {
    stirred,
    stir: () => {
      wait();
      setStirred(true);
    },
  };
}

const cardOf = (id: string): string => id.split(".")[0] ?? id;

/** With room for it one part always stands open: at first one that holds water, for that is turned most. */
function firstPart(kinds: Kinds, cards: readonly Card[]): string | null {
  const open =
    cards.find(({ kind }) => kinds[kind]?.uses?.includes("holds_water")) ??
    cards.find(({ kind }) => !kinds[kind]?.single) ??
    cards[0];
  return open?.id ?? null;
}

function createParts(kinds: Kinds, cards: Accessor<readonly Card[]>, width: Accessor<Width>) {
  const [chosen, setChosen] = createSignal<string | null>(null);
  const [inHand, setInHand] = createSignal<string | null>(null);
  const [sought, setSought] = createSignal<string | null>(null);
  const stands = (card: string): boolean => cards().some(({ id }) => id === card);
  const part = createMemo(() => {
    const card = chosen();
    if (card !== null && stands(card)) return card;
    return width() === "phone" ? null : firstPart(kinds, cards());
  });
  const openPart = (card: string | null): void =>
    batch(() => {
      setChosen(card);
      setSought(card);
      // What is in hand is a number of the open part, or nothing is.
      setInHand((id) => (id !== null && cardOf(id) === card ? id : null));
    });
  return {
    part,
    openPart,
    sought,
    seek: (id: string): void =>
      batch(() => {
        openPart(cardOf(id));
        setSought(id);
      }),
    inHand: createMemo(() => {
      const id = inHand();
      return id !== null && cardOf(id) === part() ? id : null;
    }),
    take: (id: string | null): void =>
      batch(() => {
        if (id !== null) {
          setChosen(cardOf(id));
          setSought(id);
        }
        setInHand(id);
      }),
  };
}

function createWorking() {
  const [opened, setOpened] = createSignal<string | null>(null);
  const [openedAt, setOpenedAt] = createSignal<OpenedAt>("row");
  return {
    opened,
    openedAt,
    openWorking: (id: string | null, at: OpenedAt = "row"): void =>
      batch(() => {
        setOpened(id);
        setOpenedAt(at);
      }),
  };
}

export function createLooking(
  kinds: Kinds,
  cards: Accessor<readonly Card[]>,
  begun: Begun | null = null,
): Looking {
  const [beginning, begin] = createSignal(begun);
  const [chosen, setChosen] = createSignal<string | null>(null);
  const answer = (): string => chosen() ?? FIRST_ANSWER;
  const [second, setSecond] = createSignal<string | null>(null);
  const [year, chooseYear] = createSignal<number | null>(null);
  const [day, setDay] = createSignal<number | null>(null);
  const [time, setTime] = createSignal<InTime>("year");
  const width = createWidth();
  return {
    beginning,
    begin: (to) => {
      begin(to);
    },
    time,
    showTime: (what) => {
      setTime(what);
    },
    ...createParts(kinds, cards, width),
    ...createStirring(),
    answer,
    hasChosen: () => chosen() !== null,
    second,
    chooseAnswer: (id, isSecond = false) =>
      batch(() => {
        if (isSecond) setSecond(id === answer() ? null : id);
        else {
          setChosen(id);
          if (second() === id) setSecond(null);
        }
      }),
    year,
    chooseYear: (chosen) => {
      chooseYear(chosen);
    },
    day: () => day() ?? FIRST_DAY,
    setDay: (next) => {
      setDay(next);
    },
    dayChosen: () => day() !== null,
    width,
    typing: createTyping(),
    ...createWorking(),
  };
}
