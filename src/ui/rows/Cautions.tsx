// Cautions: beside their number where the number sets them off, or where they can kill and have not been read here yet;
// all others in one line at the foot of the part, which counts and names them and opens.

import { createMemo, createSignal, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import type { ShownCaution } from "../../graph/cautions.ts";
import { type Sheet, useSheet } from "../sheet.ts";

const HEADS = { harm: "Caution", trouble: "Look at this", note: "Worth knowing" } as const;

/** One kind of thing is read of once, however many there are. */
const readingOf = (card: Card, { id }: ShownCaution): string => `${card.kind}.${id}`;

function standsBeside(sheet: Sheet, card: Card, caution: ShownCaution): boolean {
  if (caution.kills) return !sheet.readOnce.isRead(readingOf(card, caution));
  return caution.weight === "trouble" || (caution.weight === "harm" && caution.setOff);
}

function Said(props: { readonly card: Card; readonly caution: ShownCaution }) {
  const sheet = useSheet();
  const unread = () => props.caution.kills && !sheet.readOnce.isRead(readingOf(props.card, props.caution));
  return (
    <div class="caution" data-weight={props.caution.weight}>
      <p>
        <b>{HEADS[props.caution.weight]}:</b> {props.caution.text}{" "}
        <small>Source: {props.caution.source}.</small>
      </p>
      <Show when={unread()}>
        <button
          type="button"
          class="small"
          onClick={() => sheet.readOnce.markRead(readingOf(props.card, props.caution))}
        >
          I have read this
        </button>
      </Show>
    </div>
  );
}

export function Cautions(props: { readonly card: Card; readonly beside: string }) {
  const sheet = useSheet();
  const here = createMemo(() =>
    sheet
      .cautionsAt(`${props.card.id}.${props.beside}`)
      .filter((caution) => standsBeside(sheet, props.card, caution)),
  );
  return <For each={here()}>{(caution) => <Said card={props.card} caution={caution} />}</For>;
}

/** The line at the foot of a part. */
export function CautionFoot(props: { readonly card: Card }) {
  const sheet = useSheet();
  const [open, setOpen] = createSignal(false);
  const folded = createMemo(() =>
    sheet
      .cautions()
      .filter(({ card }) => card === props.card.id)
      .filter((caution) => !standsBeside(sheet, props.card, caution)),
  );
  const names = () => [
    ...new Set(
      folded().map(({ card, beside }) =>
        sheet.label(beside.includes(".") ? beside : `${card}.${beside}`).toLowerCase(),
      ),
    ),
  ];
  return (
    <Show when={folded().length > 0}>
      <details
        class="cautions"
        onToggle={({ currentTarget }) => {
          setOpen(currentTarget.open);
          // Unfolded it lies at the end of its part, and over none of its numbers.
          if (currentTarget.open) currentTarget.scrollIntoView({ block: "nearest" });
        }}
      >
        <summary>
          <b>{folded().length === 1 ? "1 caution" : `${folded().length} cautions`}</b>: {names().join(", ")}
        </summary>
        <Show when={open()}>
          <For each={folded()}>{(caution) => <Said card={props.card} caution={caution} />}</For>
        </Show>
      </details>
    </Show>
  );
}
