// What is noted on the pages of the season: said to be only once it is stored, set right by one touch, taken back.

import { createContext, createSignal, For, type JSX, onCleanup, Show, useContext } from "solid-js";
import type { Note } from "../../document/worksheet.ts";
import type { FromToday } from "../../telling/from-today.ts";
import { useSheet } from "../sheet.ts";
import type { Lasting } from "./lasting.ts";

type Said = Omit<Note, "id" | "day" | "minute">;

/** What is to be noted, with its words for the foot and what it can be set right to with one touch. */
export type ToNote = {
  readonly said: Said;
  readonly words: string;
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

type Foot = { readonly state: "noting" | "noted" | "refused" | "undone"; readonly noted: Noted };

const FOOT_WORDS: Readonly<Record<Foot["state"], string>> = {
  noting: "Noting",
  noted: "Noted on this phone",
  refused: "Not stored",
  undone: "Taken back",
};

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

function createNoting() {
  const sheet = useSheet();
  const [foot, setFoot] = createSignal<Foot | null>(null);
  const [before, setBefore] = createSignal<FromToday | null>(null);
  const lasting = useLasting();
  const lasts = () => lasting()?.settled() ?? null;
  const say = async (stored: Promise<boolean>, noted: Noted, done: Foot["state"]): Promise<void> => {
    setFoot({ state: "noting", noted });
    const state = (await stored) ? done : "refused";
    // The next note may be on its way already: then the foot is its own.
    if (foot()?.noted === noted) setFoot({ state, noted });
  };
  return {
    foot,
    lasting,
    lasts,
    /** How long it lasted before the last note. */
    before,
    /** Notes it, in the place of another where one is named. */
    note: (what: ToNote, instead?: string): void => {
      if (instead === undefined) setBefore(lasts());
      const { id, stored } = sheet.edit.note(what.said, instead);
      void say(stored, { ...what, id }, "noted");
    },
    /** Brings a note of before back into the foot, to be set right or taken back. */
    recall: (id: string, what: ToNote): void => {
      setFoot({ state: "noted", noted: { ...what, id } });
    },
    undo: (): void => {
      const noted = foot()?.noted;
      if (!noted) return;
      setBefore(lasts());
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

/** The foot of every page of the season. */
export function FieldFoot() {
  const { foot, note, undo } = useNoting();
  const sheet = useSheet();
  // What is held in a hand is a phone; what is broader may be anything.
  const words = (state: Foot["state"]) =>
    sheet.looking.width() === "phone" ? FOOT_WORDS[state] : FOOT_WORDS[state].replace("phone", "device");
  const noted = () => (foot()?.state === "noted" ? foot()?.noted : undefined);
  return (
    <div class="field-foot">
      <p role="status">
        <Show when={foot()} fallback={"What you note stays here, and in the file."}>
          {(said) => (
            <>
              {words(said().state)}: <b>{said().noted.words}</b>
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
    </div>
  );
}
