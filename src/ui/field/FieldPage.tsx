// At the bed: tanks dipped with a finger, beds soaked, each noted with one touch and said to be once it is stored; undo.

import { createSignal, For, Show } from "solid-js";
import { Portal } from "solid-js/web";
import type { Card } from "../../document/worksheet.ts";
import { isReady, valueIn } from "../../graph/readers.ts";
import type { Kind } from "../../kinds/kind.ts";
import type { LastsFromToday } from "../../kinds/season/ahead.ts";
import { type Dip, dipBy, stepOf } from "../../scene/dip-level.ts";
import { lastsSaid, restsOn } from "../../telling/from-today.ts";
import { showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import "./field.css";
import { FieldTank } from "./FieldTank.tsx";

type Dipped = { readonly card: Card; readonly dip: Dip };

type Noted = {
  readonly id: string;
  readonly said: string;
  readonly where: string;
  /** A dip may be set right by a step of the stick; a soak may not. */
  readonly dip: Dipped | null;
};

type Foot = { readonly state: "noting" | "noted" | "refused" | "undone"; readonly noted: Noted };

const FOOT_WORDS: Readonly<Record<Foot["state"], string>> = {
  noting: "Noting",
  noted: "Noted on this device",
  refused: "Not stored",
  undone: "Taken back",
};

function useNoting() {
  const sheet = useSheet();
  const [foot, setFoot] = createSignal<Foot | null>(null);
  const say = async (stored: Promise<boolean>, noted: Noted, done: Foot["state"]): Promise<void> => {
    setFoot({ state: "noting", noted });
    setFoot({ state: (await stored) ? done : "refused", noted });
  };
  const note = (card: Card, dip: Dip | null): void => {
    const gallons = dip ? `, ${showQuantity(dip.volume, "volume", sheet.showOptions())}` : "";
    const said = dip ? `${card.title}, ${dip.value} ${dip.unit}${gallons}` : `${card.title}, soaked through`;
    const written = sheet.edit.note(
      dip
        ? { what: "dipped", where: card.id, value: dip.value, unit: dip.unit }
        : { what: "soaked", where: card.id },
    );
    void say(written.stored, { id: written.id, said, where: card.id, dip: dip && { card, dip } }, "noted");
  };
  const undo = (noted: Noted): void => {
    const { stored } = sheet.edit.note({ what: "undid", where: noted.where, undoes: noted.id });
    void say(stored, noted, "undone");
  };
  return { foot, note, undo };
}

function Lasts() {
  const sheet = useSheet();
  const ahead = () => valueIn(sheet.result("season.ahead")) as LastsFromToday | null;
  const titleOf = (id: string) => sheet.worksheet().cards.find((card) => card.id === id)?.title ?? id;
  return (
    <div class="field-lasts" aria-live="polite" classList={{ working: sheet.working() }}>
      <Show when={ahead()} fallback={<p>Dip a tank, and it is told how long the water lasts.</p>}>
        {(held) => (
          <>
            <p class="lead">{lastsSaid(held())}</p>
            <For each={restsOn(held(), titleOf)}>{(said) => <p class="aside">{said}</p>}</For>
          </>
        )}
      </Show>
    </div>
  );
}

function FieldBed(props: { readonly card: Card; readonly onSoaked: () => void }) {
  const sheet = useSheet();
  const row = (name: string) => sheet.result(`${props.card.id}.${name}`);
  const shown = (name: string) => sheet.shown(`${props.card.id}.${name}`);
  const since = () => (isReady(row("last_soaked")) ? `soaked ${shown("last_soaked")}` : "no soak noted");
  const lacks = () => (isReady(row("lacks_today")) ? `, lacks ${shown("lacks_today")} now` : "");
  return (
    <li class="field-bed">
      <div>
        <h3>{props.card.title}</h3>
        <p class="aside">
          {since()}
          {lacks()}
        </p>
      </div>
      <button
        type="button"
        aria-label={`Soaked through: ${props.card.title}`}
        onClick={() => props.onSoaked()}
      >
        Soaked through
      </button>
    </li>
  );
}

function FieldFoot(props: {
  readonly foot: Foot | null;
  readonly onStep: (dipped: Dipped, by: number) => void;
  readonly onUndo: (noted: Noted) => void;
}) {
  const isNoted = () => props.foot?.state === "noted";
  return (
    <div class="field-foot">
      <p role="status">
        <Show when={props.foot} fallback="What you note stays on this device, and in the file.">
          {(foot) => (
            <>
              {FOOT_WORDS[foot().state]}: <b>{foot().noted.said}</b>
            </>
          )}
        </Show>
      </p>
      <Show when={isNoted() && props.foot}>
        {(foot) => (
          <div class="field-buttons">
            <Show when={foot().noted.dip}>
              {(dipped) => (
                <For each={[-1, 1]}>
                  {(by) => (
                    <button type="button" onClick={() => props.onStep(dipped(), by)}>
                      {by < 0 ? "−" : "+"}
                      {stepOf(dipped().dip.unit)} {dipped().dip.unit}
                    </button>
                  )}
                </For>
              )}
            </Show>
            <button type="button" onClick={() => props.onUndo(foot().noted)}>
              Undo
            </button>
          </div>
        )}
      </Show>
    </div>
  );
}

/** Tanks and beds of the sheet, told by what their kinds have. */
function Rows(props: { readonly onNote: (card: Card, dip: Dip | null) => void }) {
  const sheet = useSheet();
  const cards = (has: (kind: Kind) => boolean) =>
    sheet.worksheet().cards.filter((card) => {
      const kind = sheet.kinds[card.kind];
      return kind !== undefined && has(kind);
    });
  return (
    <>
      <ul class="field-tanks">
        <For each={cards(({ vessel }) => vessel !== undefined)}>
          {(card) => <FieldTank card={card} onNote={props.onNote} />}
        </For>
      </ul>
      <ul class="field-beds">
        <For each={cards(({ views }) => views?.week !== undefined)}>
          {(card) => <FieldBed card={card} onSoaked={() => props.onNote(card, null)} />}
        </For>
      </ul>
      <p class="aside">After watering, dip again: what was taken from a tank is not counted by itself.</p>
    </>
  );
}

export function FieldPage(props: { readonly onClose: () => void }) {
  const { foot, note, undo } = useNoting();
  const sheet = useSheet();
  const stepped = ({ card, dip }: Dipped, by: number): void => {
    const vessel = valueIn(sheet.result(`${card.id}.vessel`)) as Parameters<typeof dipBy>[0] | null;
    if (vessel) note(card, dipBy(vessel, dip, by));
  };
  return (
    <Portal>
      <dialog
        class="field"
        aria-label="At the bed"
        ref={(element) => queueMicrotask(() => element.showModal())}
        onClose={() => props.onClose()}
      >
        <form method="dialog" class="field-head">
          <h2>At the bed</h2>
          <button type="submit" class="close">
            Sheet
          </button>
        </form>
        <div class="field-body">
          <Lasts />
          <Rows onNote={note} />
        </div>
        <FieldFoot foot={foot()} onStep={stepped} onUndo={undo} />
      </dialog>
    </Portal>
  );
}
