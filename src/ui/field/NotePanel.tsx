// A panel in which something is noted, of today or of an earlier day: what, of which part, how much or how.

import { createSignal, For, type JSX, Match, Show, Switch } from "solid-js";
import { noteKind } from "../../document/note-kinds.ts";
import type { Card } from "../../document/worksheet.ts";
import { isPriced, type Kinds, notedOf } from "../../kinds/kind.ts";
import { parseIsoDate } from "../../units/calendar.ts";
import { useSheet } from "../sheet.ts";
import { dayAndMonth } from "../words.ts";
import { Amounts } from "./Amounts.tsx";
import { ACTS, type Act, CHARGES } from "./acts.ts";
import { type ToNote, useNoting } from "./noting-here.tsx";
import { Panel } from "./Panel.tsx";
import { useTold } from "./told.ts";

/** What is said only of a thing that was bought: what grows and what is only reckoned never breaks. */
const OF_THINGS: ReadonlySet<string> = new Set(["broke", "mended"]);

/** Parts of which something can be noted: of the kinds that it is about, or any that stands in the garden. */
export function useParts() {
  const sheet = useSheet();
  const told = useTold();
  const isBroken = ({ id }: Card): boolean => told.of(id, "broke", "mended").at(-1)?.what === "broke";
  return (what: string): readonly Card[] => {
    const those = notedOf(sheet.kinds, what);
    const isAny = ({ kind }: Card): boolean => {
      const own = sheet.kinds[kind];
      return own !== undefined && own.single !== true && (!OF_THINGS.has(what) || isPriced(own));
    };
    const isOne = (card: Card) =>
      (those ? those.some((other) => other.kind === card.kind) : isAny(card)) &&
      (what !== "mended" || isBroken(card));
    return sheet.worksheet().cards.filter(isOne);
  };
}

/** Which part it is, where there are several. */
function Parts(props: { readonly of: readonly Card[]; readonly onChoose: (card: Card) => void }) {
  return (
    <div class="field-choices">
      <For each={props.of}>
        {(card) => (
          <button type="button" onClick={() => props.onChoose(card)}>
            {card.title}
          </button>
        )}
      </For>
    </div>
  );
}

function Charged(props: { readonly onNote: (what: ToNote) => void }) {
  const parts = useParts();
  const swapped = (card: Card): ToNote => ({
    said: { what: "swapped", where: card.id },
    words: `${card.title}, swapped for a charged one`,
  });
  const charged = (card: Card, { label, percent }: (typeof CHARGES)[number]): ToNote => ({
    said: { what: "charged", where: card.id, value: percent, unit: "%" },
    words: `${card.title}, charged: ${label.toLowerCase()}`,
  });
  return (
    <For each={parts("charged")}>
      {(card) => (
        <fieldset class="field-choices">
          <legend>{card.title}</legend>
          <For each={CHARGES}>
            {(charge) => (
              <button type="button" onClick={() => props.onNote(charged(card, charge))}>
                {charge.label}
              </button>
            )}
          </For>
          <button type="button" onClick={() => props.onNote(swapped(card))}>
            Swapped
          </button>
        </fieldset>
      )}
    </For>
  );
}

/**
 * What of a note that is kept alone would be counted, were it noted beside it: a bed that is wet as soaked, a drained tank
 * as dipped dry.
 */
function counting(act: Act, card: Card, kinds: Kinds, text?: string): NonNullable<ToNote["instead"]> {
  const beside = (label: string, said: ToNote["said"], words: string): NonNullable<ToNote["instead"]> => [
    { over: "count it:", label, beside: true, to: () => ({ said, words: `${card.title}, ${words}` }) },
  ];
  const where = card.id;
  if (act.what === "dug" && text === "wet")
    return beside("soaked through", { what: "soaked", where }, "soaked through");
  return act.what === "drained" && kinds[card.kind]?.vessel !== undefined
    ? beside("dipped at 0", { what: "dipped", where, value: 0, unit: "m" }, "dipped at 0")
    : [];
}

/** What it is that was done, then to which part, then how much or how. */
function Steps(props: { readonly first: Act | null; readonly onNote: (what: ToNote) => void }) {
  const sheet = useSheet();
  const parts = useParts();
  const [act, setAct] = createSignal<Act | null>(props.first);
  const [card, setCard] = createSignal<Card | null>(null);
  const offered = () => ACTS.filter(({ what }) => parts(what).length > 0);
  const part = () => {
    const all = parts(act()?.what ?? "");
    return card() ?? (all.length === 1 ? (all[0] ?? null) : null);
  };
  const plain = (one: Act, of: Card): boolean => {
    const kind = noteKind(one.what);
    if (kind?.value ?? kind?.words) return false;
    props.onNote({
      said: { what: one.what, where: of.id },
      words: `${of.title}, ${one.said}`,
      instead: counting(one, of, sheet.kinds),
    });
    return true;
  };
  const choose = (one: Act): void => {
    const all = parts(one.what);
    const only = all.length === 1 ? all[0] : undefined;
    if (!(only && plain(one, only))) setAct(one);
  };
  return (
    <Switch>
      <Match when={!act()}>
        <div class="field-choices">
          <For each={offered()}>
            {(one) => (
              <button type="button" onClick={() => choose(one)}>
                {one.label}
              </button>
            )}
          </For>
        </div>
      </Match>
      <Match when={act() && !part() && act()}>
        {(one) => (
          <>
            <p class="aside">{one().label}: which?</p>
            <Parts of={parts(one().what)} onChoose={(chosen) => plain(one(), chosen) || setCard(chosen)} />
          </>
        )}
      </Match>
      <Match when={act()}>
        {(one) => (
          <Show when={part()}>{(of) => <HowMuch act={one()} card={of()} onNote={props.onNote} />}</Show>
        )}
      </Match>
    </Switch>
  );
}

function HowMuch(props: { readonly act: Act; readonly card: Card; readonly onNote: (what: ToNote) => void }) {
  const sheet = useSheet();
  const words = () => {
    const kind = noteKind(props.act.what);
    // Where it has an amount to tell, that is asked: whether a dip was before or after the watering is no must.
    return kind?.value ? undefined : kind?.words;
  };
  return (
    <>
      <p class="aside">
        {/* Rain is of the place, whose name says nothing of it. */}
        {props.act.what === "rain" ? props.act.label : `${props.act.label}: ${props.card.title}`}
      </p>
      <Show when={words()} fallback={<Amounts act={props.act} card={props.card} onNote={props.onNote} />}>
        {(known) => (
          <div class="field-choices">
            <For each={known()}>
              {(text) => (
                <button
                  type="button"
                  onClick={() =>
                    props.onNote({
                      said: { what: props.act.what, where: props.card.id, text },
                      words: `${props.card.title}, ${props.act.said} ${text}`,
                      instead: counting(props.act, props.card, sheet.kinds, text),
                    })
                  }
                >
                  {text}
                </button>
              )}
            </For>
          </div>
        )}
      </Show>
    </>
  );
}

/** The same of an earlier day, and so are those that set it right. */
function onDay(what: ToNote, day: string, words: string): ToNote {
  const instead = what.instead?.map((one) => ({ ...one, to: () => onDay(one.to(), day, words) }));
  return {
    ...what,
    said: { ...what.said, day },
    words: `${what.words}, ${words}`,
    ...(instead ? { instead } : {}),
  };
}

/** The day on which it was: today, unless another is chosen. */
function OnDay(props: { readonly day: string; readonly onPut: (day: string) => void }) {
  const sheet = useSheet();
  return (
    <label class="field-day">
      On{" "}
      <input
        type="date"
        value={props.day}
        max={sheet.today()}
        onChange={({ currentTarget }) => {
          const day = currentTarget.value;
          // Nothing can be noted of a day to come.
          props.onPut(parseIsoDate(day) === null || day > sheet.today() ? sheet.today() : day);
          currentTarget.value = props.day;
        }}
      />
    </label>
  );
}

export type Opened = "charged" | "bucket" | "more";

const BUCKET: Act = { what: "bucket", label: "Bucket", said: "bucket" };
const TITLES: Readonly<Record<Opened, string>> = {
  charged: "Charged or swapped",
  bucket: "A bucket timed",
  more: "More to note",
};

/** @param children what stands at its foot */
export function NotePanel(props: {
  readonly which: Opened;
  readonly onClose: () => void;
  readonly children?: JSX.Element;
}) {
  const sheet = useSheet();
  const { note } = useNoting();
  const [day, setDay] = createSignal(sheet.today());
  const noted = (what: ToNote): void => {
    props.onClose();
    const date = parseIsoDate(day());
    const isToday = date === null || day() === sheet.today();
    note(isToday ? what : onDay(what, day(), dayAndMonth(date, sheet.worksheet().locale)));
  };
  return (
    <Panel title={TITLES[props.which]} onClose={props.onClose}>
      <Show when={props.which !== "bucket"}>
        <OnDay day={day()} onPut={setDay} />
      </Show>
      <Show when={props.which !== "charged"} fallback={<Charged onNote={noted} />}>
        <Steps first={props.which === "bucket" ? BUCKET : null} onNote={noted} />
      </Show>
      {props.children}
    </Panel>
  );
}
