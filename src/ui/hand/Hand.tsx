// The number in hand: its value, round steps, and the curve of an answer over the axis that it is turned along. On a phone
// it is a dock at the foot, elsewhere it stands at the head of its part, as low as a dock where the window is low.

import { For, onCleanup, onMount, Show } from "solid-js";
import type { Origin } from "../../document/worksheet.ts";
import { createMatching } from "../matching.ts";
import { useSheet } from "../sheet.ts";
import { Turning } from "./Curve.tsx";
import type { InHand } from "./hand.ts";
import { Value } from "./Value.tsx";

/** There the whole hand, under what stands over it, would reach below the window: the dock shows as much on less height. */
const TOO_LOW = "(max-height: 579px), (max-width: 1023px) and (max-height: 899px)";

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
      classList={{ long: (text() ?? "").length > 6 }}
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

/** What turns a word by keys, as in any list; a number's field has its own. */
const WORD_KEYS: ReadonlyMap<string, 1 | -1> = new Map([
  ["ArrowDown", 1],
  ["ArrowRight", 1],
  ["ArrowUp", -1],
  ["ArrowLeft", -1],
]);

/** What the keys do in the hand, and on the row of what is in it. */
function createKeys(turned: InHand) {
  const sheet = useSheet();
  const { hand, looking } = sheet;
  const putDown = (): void => {
    looking.take(null);
    document.getElementById(turned.id)?.focus({ preventScroll: true });
  };
  const turnWord = (event: KeyboardEvent): void => {
    const by = WORD_KEYS.get(event.key);
    const isWord = turned.row.row === "choice" && event.target instanceof Element;
    if (!by || !isWord || event.altKey || !(event.target as Element).matches("select.in-hand-value")) return;
    event.preventDefault();
    hand.step(by);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") {
      turnWord(event);
      return;
    }
    event.preventDefault();
    event.stopPropagation();
    const wasTyping = hand.text() !== null;
    hand.setText(null);
    if (!hand.restore() && !wasTyping) putDown();
    // What had the focus may have gone with what was put back, as the thumb of an end.
    else if (document.activeElement === document.body)
      document
        .querySelector<HTMLElement>(".hand .in-hand-slider, .in-hand-value")
        ?.focus({ preventScroll: true });
  };
  const onRow = (event: KeyboardEvent): void => {
    const isOwn = event.target instanceof Element && event.target.closest(".row.held") !== null;
    if (isOwn && event.key === "Escape" && !event.defaultPrevented) onKey(event);
  };
  onMount(() => document.addEventListener("keydown", onRow));
  onCleanup(() => document.removeEventListener("keydown", onRow));
  return { putDown, onKey };
}

/**
 * A word or a day gets the focus as a number does, whose field takes it by itself. It stays on the row where that has been
 * turned there, and where fingers point.
 */
function focusChoice(section: HTMLElement): void {
  const isTurning = document.activeElement?.matches("input, select") ?? false;
  if (isTurning || matchMedia("(pointer: coarse)").matches) return;
  section
    .querySelector<HTMLElement>(":is(select, input).in-hand-value, .in-hand-value :is(select, input)")
    ?.focus({ preventScroll: true });
}

function InHandView(props: { readonly turned: InHand }) {
  const sheet = useSheet();
  const { hand, looking } = sheet;
  const isTooLow = createMatching(TOO_LOW);
  const dock = () => looking.width() === "phone" || isTooLow();
  const bare = () => dock() && looking.typing();
  const { putDown, onKey } = createKeys(props.turned);
  let section: HTMLElement | undefined;
  onMount(() => section && focusChoice(section));
  return (
    <section
      ref={section}
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
      <Show when={hand.text() === null && sheet.failure(props.turned.id)}>
        {(why) => <p class="wrong">{why()}</p>}
      </Show>
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
