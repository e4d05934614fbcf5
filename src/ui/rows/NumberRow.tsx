// A given number at rest: one button with its label, number, unit and where it is from. Pressed, it is in hand.

import { Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { isReady } from "../../graph/readers.ts";
import type { NumberGiven } from "../../graph/types.ts";
import { useSheet } from "../sheet.ts";
import { Cautions } from "./Cautions.tsx";
import { entryOf } from "./enter-number.ts";
import { keepInView } from "./in-view.ts";
import { startText } from "./number-text.ts";
import { Moved } from "./Quantity.tsx";
import { Shown } from "./Shown.tsx";
import { Working } from "./Working.tsx";

type Props = { readonly card: Card; readonly row: NumberGiven };

/** What begins a number when it is typed. */
const BEGINS_A_NUMBER = /^[\d.,+\-−(]$/;

const handField = () => document.querySelector<HTMLInputElement>(".in-hand-value");

/** Under the number in hand: what it means, and how it is worked out. */
function About(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const open = () => sheet.opened() === id() && sheet.looking.openedAt() === "row";
  return (
    <div class="about">
      <button
        type="button"
        class="small"
        aria-expanded={open()}
        onClick={() => sheet.looking.openWorking(open() ? null : id())}
      >
        What it means, where it is from
      </button>
      <Show when={open()}>
        <Show when={sheet.looking.width() !== "wide"}>
          <Working quantity={id()} card={props.card} row={props.row} />
        </Show>
      </Show>
    </div>
  );
}

/** The field of the hand comes with the number; what is pressed on the row goes on there. */
function goOnInHand(event: KeyboardEvent, take: () => void): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const isArrow = event.key === "ArrowUp" || event.key === "ArrowDown";
  if (!isArrow && !BEGINS_A_NUMBER.test(event.key)) return;
  take();
  const field = handField();
  field?.focus({ preventScroll: true });
  field?.select();
  if (!isArrow) return;
  event.preventDefault();
  const { key, shiftKey } = event;
  field?.dispatchEvent(new KeyboardEvent("keydown", { key, shiftKey, bubbles: true, cancelable: true }));
}

/** Letters that a line of the dock holds. */
const DOCK_LINE = 46;

export function NumberRow(props: Props) {
  const sheet = useSheet();
  const id = () => `${props.card.id}.${props.row.name}`;
  const held = () => sheet.looking.inHand() === id();
  /** The hand says what is wrong with its own number, but a dock has no room for more than a line. */
  const wrong = () => {
    const why = sheet.failure(id());
    const isSaidThere = held() && (sheet.looking.width() !== "phone" || (why ?? "").length <= DOCK_LINE);
    return isSaidThere ? null : why;
  };
  const asked = () => sheet.opened() === id() && sheet.looking.openedAt() === "row";
  const isUnsure = () =>
    entryOf(props.card, props.row)?.low !== undefined && !props.card.measured[props.row.name];
  const text = () => {
    const result = sheet.result(id());
    if (isReady(result) && !isUnsure()) return sheet.shown(id());
    if (result?.state === "none") return result.reason;
    return startText(sheet, entryOf(props.card, props.row), id(), props.row.measure);
  };
  let line: HTMLDivElement | undefined;
  keepInView(sheet, { id, held, line: () => line });
  const isNone = () => sheet.result(id())?.state === "none";
  return (
    <div class="row given" classList={{ held: held(), unsure: isUnsure() }} ref={line}>
      <button
        type="button"
        class="line"
        id={id()}
        aria-pressed={held()}
        onClick={() => sheet.looking.take(id())}
        onKeyDown={(event) => goOnInHand(event, () => sheet.looking.take(id()))}
      >
        <span class="label">{props.row.label}</span>
        <Shown text={text()} none={isNone()} />
        <span class="from">
          <Show when={!isUnsure()} fallback="not sure">
            <Show when={sheet.moved(id())} fallback={sheet.originOf(id())}>
              <Moved quantity={id()} />
            </Show>
          </Show>
        </span>
      </button>
      <Show when={!held() && sheet.typed(id())}>{(left) => <p class="wrong">Not read: {left()}</p>}</Show>
      <Show when={wrong()}>{(why) => <p class="wrong">{why()}</p>}</Show>
      <Show when={held() || asked()}>
        <About {...props} />
      </Show>
      <Cautions card={props.card} beside={props.row.name} />
    </div>
  );
}
