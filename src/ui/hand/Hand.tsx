// The number in hand: its value, round steps, and the curve of an answer over the axis that it is turned along. On a phone
// it is a dock at the foot, elsewhere it stands at the head of its part.

import { For, Show } from "solid-js";
import type { Origin } from "../../document/worksheet.ts";
import { useSheet } from "../sheet.ts";
import { Turning } from "./Curve.tsx";
import type { InHand } from "./hand.ts";
import { Value } from "./Value.tsx";

/** In full, and as the rows of a phone say it. */
const ORIGINS: readonly (readonly [Origin, string, string])[] = [
  ["guessed", "guessed", "guessed"],
  ["borrowed", "borrowed from somebody", "borrowed"],
  ["label", "read off a label", "label"],
  ["measured", "measured", "measured"],
];

function StepButton(props: { readonly by: 1 | -1 }) {
  const { hand } = useSheet();
  const text = () => (props.by === 1 ? hand.steps().up : hand.steps().down);
  return (
    <button
      type="button"
      class="step"
      aria-label={`${props.by === 1 ? "A step up" : "A step down"}${text() ? `, ${text()}` : ""}`}
      disabled={text() === null}
      onClick={(event) => hand.step(props.by, event.shiftKey)}
    >
      {text() ?? (props.by === 1 ? "+" : "−")}
    </button>
  );
}

/** Where the number comes from; and the usual one again. */
function From(props: { readonly turned: InHand; readonly brief?: true }) {
  const sheet = useSheet();
  const { hand } = sheet;
  const row = () => (props.turned.row.row === "given" ? props.turned.row : null);
  return (
    <Show when={row()}>
      {(given) => (
        <select
          class="from"
          aria-label="Where the number comes from"
          value={hand.origin()}
          disabled={hand.entry() === null && hand.place() === null}
          onChange={(event) => hand.setOrigin(event.currentTarget.value as Origin | "")}
        >
          <Show when={given().default !== null || hand.entry() === null}>
            <option value="default">
              {given().default === null ? "not given" : props.brief ? "usual" : "the usual value"}
            </option>
          </Show>
          <option value="">your own</option>
          <For each={ORIGINS}>
            {([word, label, brief]) => <option value={word}>{props.brief ? brief : label}</option>}
          </For>
        </select>
      )}
    </Show>
  );
}

/** Makes a span of the number, or one number of it again. */
function Unsure() {
  const sheet = useSheet();
  const doubting = () => sheet.doubting();
  return (
    <Show when={doubting()?.span() || doubting()?.mayDoubt()}>
      <button
        type="button"
        class="unsure"
        onClick={() => (doubting()?.span() ? doubting()?.sure() : doubting()?.doubt())}
      >
        {doubting()?.span() ? "Sure of it" : "Not sure"}
      </button>
    </Show>
  );
}

/** What the thing costs, which is a number to take in hand like any other. */
function Price(props: { readonly turned: InHand }) {
  const sheet = useSheet();
  const kind = () => sheet.worksheet().cards.find(({ id }) => id === props.turned.card)?.kind ?? "";
  const isPriced = () =>
    sheet.kinds[kind()]?.rows.some(
      (row) => row.row === "given" && row.stored === "card" && row.name === "price",
    );
  const id = () => `${props.turned.card}.price`;
  return (
    <Show when={isPriced() && id() !== props.turned.id}>
      <button type="button" class="link price" onClick={() => sheet.looking.take(id())}>
        {sheet.result(id())?.state === "ready" ? `costs ${sheet.shown(id())}` : "what it cost"}
      </button>
    </Show>
  );
}

function InHandView(props: { readonly turned: InHand }) {
  const sheet = useSheet();
  const { hand, looking } = sheet;
  const dock = () => looking.width() === "phone";
  const bare = () => dock() && looking.typing();
  const putDown = (): void => {
    const { id } = props.turned;
    looking.take(null);
    document.getElementById(id)?.focus({ preventScroll: true });
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    event.stopPropagation();
    const wasTyping = hand.text() !== null;
    hand.setText(null);
    if (!hand.restore() && !wasTyping) putDown();
  };
  return (
    <section
      class="hand"
      classList={{ dock: dock(), bare: bare() }}
      aria-label={`In hand: ${sheet.place(props.turned.id)}`}
      onKeyDown={onKey}
    >
      <div class="head">
        <span class="what">{props.turned.row.label}</span>
        <Show when={dock() && !bare()}>
          <From turned={props.turned} brief />
        </Show>
        <div class="ends">
          <Unsure />
          <button type="button" class="done" onClick={putDown}>
            Done
          </button>
        </div>
      </div>
      <div class="value-and-steps">
        <Show when={!bare() && hand.axis() && !sheet.doubting()?.span()}>
          <StepButton by={-1} />
          <StepButton by={1} />
        </Show>
        <Value turned={props.turned} />
      </div>
      <Show when={sheet.failure(props.turned.id)}>{(why) => <p class="wrong">{why()}</p>}</Show>
      <Show when={!bare()}>
        <Turning turned={props.turned} dock={dock()} />
        <Show when={!dock()}>
          <div class="origins">
            <From turned={props.turned} />
            <Price turned={props.turned} />
          </div>
        </Show>
      </Show>
    </section>
  );
}

export function Hand() {
  const { hand } = useSheet();
  return (
    <Show when={hand.turned()} keyed>
      {(turned) => <InHandView turned={turned} />}
    </Show>
  );
}
