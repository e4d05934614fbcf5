// At the bed: tanks dipped with a finger, beds soaked, each noted with one touch and said to be once it is stored; undo.

import { For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { isReady, valueIn } from "../../graph/readers.ts";
import type { Kind } from "../../kinds/kind.ts";
import { type Dip, dipBy, stepOf } from "../../scene/dip-level.ts";
import { lastsSaid, restsOn } from "../../telling/from-today.ts";
import { type ShowOptions, showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";
import { FieldTank } from "./FieldTank.tsx";
import { FieldFoot, type ToNote, useNoting } from "./noting-here.tsx";

type Vessel = Parameters<typeof dipBy>[0];

/** A dip, which a step of the stick sets right. */
function dipOf(card: Card, vessel: Vessel, dip: Dip, options: ShowOptions): ToNote {
  const gallons = showQuantity(dip.volume, "volume", options);
  return {
    said: { what: "dipped", where: card.id, value: dip.value, unit: dip.unit },
    words: `${card.title}, ${dip.value} ${dip.unit}, ${gallons}`,
    instead: [-1, 1].map((by) => ({
      label: `${by < 0 ? "−" : "+"}${stepOf(dip.unit)} ${dip.unit}`,
      to: () => dipOf(card, vessel, dipBy(vessel, dip, by), options),
    })),
  };
}

function Lasts() {
  const sheet = useSheet();
  const { lasts: ahead } = useNoting();
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

/** Tanks and beds of the sheet, told by what their kinds have. */
function Rows() {
  const sheet = useSheet();
  const { note } = useNoting();
  const cards = (has: (kind: Kind) => boolean) =>
    sheet.worksheet().cards.filter((card) => {
      const kind = sheet.kinds[card.kind];
      return kind !== undefined && has(kind);
    });
  const dipped = (card: Card, dip: Dip): void => {
    const vessel = valueIn(sheet.result(`${card.id}.vessel`)) as Vessel | null;
    if (vessel) note(dipOf(card, vessel, dip, sheet.showOptions()));
  };
  const soaked = (card: Card): void =>
    note({ said: { what: "soaked", where: card.id }, words: `${card.title}, soaked through` });
  return (
    <>
      <ul class="field-tanks">
        <For each={cards(({ vessel }) => vessel !== undefined)}>
          {(card) => <FieldTank card={card} onNote={dipped} />}
        </For>
      </ul>
      <ul class="field-beds">
        <For each={cards(({ views }) => views?.week !== undefined)}>
          {(card) => <FieldBed card={card} onSoaked={() => soaked(card)} />}
        </For>
      </ul>
      <p class="aside">After watering, dip again: what was taken from a tank is not counted by itself.</p>
    </>
  );
}

export function AtTheBed() {
  return (
    <>
      <div class="field-body">
        <Lasts />
        <Rows />
      </div>
      <FieldFoot />
    </>
  );
}
