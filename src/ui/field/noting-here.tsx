// What is noted on the pages of the season: said to be only once it is stored, set right by one touch, taken back.

import {
  createContext,
  createEffect,
  createSignal,
  For,
  type JSX,
  on,
  onCleanup,
  Show,
  useContext,
} from "solid-js";
import { isKeptAlone } from "../../document/note-kinds.ts";
import { askOfNote, type NoteAsking } from "../../document/note-question.ts";
import type { ToBeNoted } from "../../document/worksheet.ts";
import { valueIn } from "../../graph/readers.ts";
import type { WeekSpan } from "../../kinds/season/week.ts";
import { heldAtDepth } from "../../scene/dip-level.ts";
import type { FromToday } from "../../telling/from-today.ts";
import { MINUTE } from "../../units/constants.ts";
import { showQuantity } from "../../units/show.ts";
import { useWeekSpan } from "../page/plan-voice.ts";
import { useSheet } from "../sheet.ts";
import type { Lasting } from "./lasting.ts";

/** What is to be noted, with its words for the foot and what it can be set right to with one touch. */
export type ToNote = {
  readonly said: ToBeNoted;
  readonly words: string;
  /** The sheet itself offers so much: nobody is asked whether its tank can hold it. */
  readonly sure?: true;
  readonly instead?: readonly Instead[];
};

/** What stands in its place once it is pressed, or `beside` it; `over` in small type above the label. */
type Instead = {
  readonly over?: string;
  readonly label: string;
  readonly beside?: true;
  readonly to: () => ToNote;
};

type Noted = ToNote & { readonly id: string };

/** A note that can hardly be right, before it counts; a choice without an act leaves it out. */
type Asked = {
  readonly question: string;
  readonly choices: readonly { readonly label: string; readonly take?: () => void }[];
};

type Foot = { readonly state: "noting" | "noted" | "refused" | "undone"; readonly noted: Noted };

const FOOT_WORDS: Readonly<Record<Foot["state"], string>> = {
  noting: "Noting",
  noted: "Noted on this phone",
  refused: "Not stored",
  undone: "Taken back",
};

const KEPT = ". It is kept; today's plan does not change by it.";

/** How long it lasts, asked for as long as the pages of the season are open. */
function useLasting() {
  const [lasting, setLasting] = createSignal<Lasting | null>(null);
  let [open, end] = [true, () => {}];
  void useSheet()
    .lasting()
    .then((made) => {
      if (!open) return;
      end = made.look();
      setLasting(made);
    });
  onCleanup(() => {
    open = false;
    end();
  });
  return lasting;
}

/** What is known where a note is asked about. */
export function useAsking(): () => NoteAsking {
  const sheet = useSheet();
  return () => ({
    worksheet: sheet.worksheet(),
    value: (id) => valueIn(sheet.result(id)),
    show: (si, measure) => showQuantity(si, measure, sheet.showOptions()),
    today: sheet.today(),
    now: Math.round(sheet.timeOfDay() / MINUTE),
    held: heldAtDepth,
  });
}

/** What is to be asked of a note before it counts, and what each choice would note instead. */
function useQuestion() {
  const sheet = useSheet();
  const asking = useAsking();
  return (what: ToNote, note: (what: ToNote) => void, instead?: string): Asked | null => {
    const said = { ...what.said, day: what.said.day ?? sheet.today() };
    const asked = askOfNote(asking(), said, { sure: what.sure, instead });
    if (!asked) return null;
    const choices = asked.choices.map(({ label, note: chosen, words }) => {
      if (!chosen) return { label };
      const { day: _day, minute: _now, ...rest } = chosen;
      const on = what.said.day === undefined ? {} : { day: what.said.day };
      const other =
        chosen === said ? what : { said: { ...rest, ...on }, words: words ?? `${what.words}: ${label}` };
      return { label, take: () => note(other) };
    });
    return { question: asked.question, choices };
  };
}

/** How long it lasted and what the week was before the last note. */
function createBefore(lasts: () => FromToday | null) {
  const [before, setBefore] = createSignal<FromToday | null>(null);
  const [week, setWeek] = createSignal<WeekSpan | null>(null);
  const span = useWeekSpan();
  return {
    before,
    /** The plan from the same day on as it was before the last note. */
    weekBefore: (first: string): WeekSpan | null => (week()?.first === first ? week() : null),
    remember: (): void => {
      setBefore(lasts());
      setWeek(span());
    },
    forget: (): void => {
      setBefore(null);
      setWeek(null);
    },
  };
}

function createNoting() {
  const sheet = useSheet();
  const [foot, setFoot] = createSignal<Foot | null>(null);
  const [asked, setAsked] = createSignal<Asked | null>(null);
  const question = useQuestion();
  const lasting = useLasting();
  const lasts = () => lasting()?.settled() ?? null;
  const { before, weekBefore, remember, forget } = createBefore(lasts);
  // What was noted yesterday, and how long it lasted then, is no news in the morning.
  createEffect(
    on(
      sheet.today,
      () => {
        setFoot(null);
        forget();
      },
      { defer: true },
    ),
  );
  const say = async (stored: Promise<boolean>, noted: Noted, done: Foot["state"]): Promise<void> => {
    setAsked(null);
    setFoot({ state: "noting", noted });
    const state = (await stored) ? done : "refused";
    // The next note may be on its way already: then the foot is its own.
    if (foot()?.noted === noted) setFoot({ state, noted });
  };
  const write = (what: ToNote, instead?: string): void => {
    if (instead === undefined) remember();
    const { id, stored } = sheet.edit.note(what.said, instead);
    void say(stored, { ...what, id }, "noted");
  };
  return {
    foot,
    lasting,
    asked,
    leave: () => setAsked(null),
    lasts,
    before,
    weekBefore,
    /** Notes it, in the place of another where one is named; what can hardly be right is asked about first. */
    note: (what: ToNote, instead?: string): void => {
      const doubt = question(what, (chosen) => write(chosen, instead), instead);
      if (doubt) setAsked(doubt);
      else write(what, instead);
    },
    /** Brings a note of before back into the foot, to be set right or taken back. */
    recall: (id: string, what: ToNote): void => {
      setAsked(null);
      setFoot({ state: "noted", noted: { ...what, id } });
    },
    undo: (): void => {
      const noted = foot()?.noted;
      if (!noted) return;
      remember();
      const { stored } = sheet.edit.note({ what: "undid", where: noted.said.where, undoes: noted.id });
      void say(stored, { ...noted }, "undone");
    },
  };
}

type Noting = ReturnType<typeof createNoting>;

const NotingContext = createContext<Noting>();

/** One foot for all pages of the season: what was noted on one is still said, and undone, on the next. */
export function NotingHere(props: { readonly children: JSX.Element }) {
  return <NotingContext.Provider value={createNoting()}>{props.children}</NotingContext.Provider>;
}

/** What the pages of the season note with. */
export function useNoting(): Noting {
  const noting = useContext(NotingContext);
  if (!noting) throw new Error("A page of the season stands outside its shell.");
  return noting;
}

export function Question(props: { readonly asked: Asked; readonly onLeave: () => void }) {
  return (
    <>
      <p role="status">{props.asked.question}</p>
      <div class="field-buttons asked">
        <For each={props.asked.choices}>
          {({ label, take }) => (
            <button type="button" onClick={() => (take ? take() : props.onLeave())}>
              {label}
            </button>
          )}
        </For>
      </div>
    </>
  );
}

function SaidNoted(props: { readonly unsaid?: string | undefined }) {
  const { foot, note, undo } = useNoting();
  const sheet = useSheet();
  // What is held in a hand is a phone; what is broader may be anything.
  const words = (state: Foot["state"]) =>
    sheet.looking.width() === "phone" ? FOOT_WORDS[state] : FOOT_WORDS[state].replace("phone", "device");
  const noted = () => (foot()?.state === "noted" ? foot()?.noted : undefined);
  return (
    <>
      <p role="status">
        <Show when={foot()} fallback={props.unsaid ?? "What you note stays here, and in the file."}>
          {(said) => (
            <>
              {words(said().state)}: <b>{said().noted.words}</b>
              <Show when={noted() && isKeptAlone(said().noted.said.what)}>{KEPT}</Show>
            </>
          )}
        </Show>
      </p>
      <Show when={noted()}>
        {(held) => (
          <div class="field-buttons">
            <For each={held().instead ?? []}>
              {(other) => (
                <button type="button" onClick={() => note(other.to(), other.beside ? undefined : held().id)}>
                  <Show when={other.over}>{(over) => <small>{over()} </small>}</Show>
                  <span>{other.label}</span>
                </button>
              )}
            </For>
            <button type="button" class="undo" onClick={undo}>
              <span aria-hidden="true">↶ </span>Undo
            </button>
          </div>
        )}
      </Show>
    </>
  );
}

/** The foot of every page of the season; what it says before anything is noted, and what else can be pressed in it. */
export function FieldFoot(props: { readonly unsaid?: string; readonly children?: JSX.Element }) {
  const { asked, leave } = useNoting();
  return (
    <div class="field-foot">
      <Show when={asked()} fallback={<SaidNoted unsaid={props.unsaid} />}>
        {(held) => <Question asked={held()} onLeave={leave} />}
      </Show>
      {props.children}
    </div>
  );
}
