// The axis of the number in hand: a slider, or a thumb for each end of a number that is not sure.

import { createSignal, For } from "solid-js";
import { startText, typedText } from "../rows/number-text.ts";
import { useSheet } from "../sheet.ts";
import { INSET } from "./AxisWords.tsx";
import type { End, SpanInHand } from "./doubting.ts";
import type { InHand } from "./hand.ts";

type Props = { readonly turned: InHand };

const STEP_KEYS: ReadonlyMap<string, 1 | -1> = new Map([
  ["ArrowUp", 1],
  ["ArrowRight", 1],
  ["PageUp", 1],
  ["ArrowDown", -1],
  ["ArrowLeft", -1],
  ["PageDown", -1],
]);

/** The axis itself: a slider whose scale stands still. */
export function Slider(props: Props) {
  const sheet = useSheet();
  const { hand } = sheet;
  /** As it stands in the field: what is rounded elsewhere is what was turned to here. */
  const spoken = (): string => {
    const { id, row } = props.turned;
    return row.row === "given"
      ? startText(sheet, hand.entry() ?? undefined, id, row.measure)
      : sheet.shown(id);
  };
  // Nought has no place on an axis in ratios: the thumb waits at its low end.
  const place = () => Math.min(1, Math.max(0, hand.place() ?? 0));
  return (
    <input
      type="range"
      class="in-hand-slider"
      classList={{ empty: hand.place() === null }}
      aria-label={`${props.turned.row.label}, slider`}
      aria-valuetext={spoken()}
      min="0"
      max="1"
      step="any"
      value={place()}
      onInput={(event) => {
        hand.slide(event.currentTarget.valueAsNumber);
        // The thumb stands on the round value, not where the finger is.
        event.currentTarget.value = String(place());
      }}
      onKeyDown={(event) => {
        const by = STEP_KEYS.get(event.key);
        if (by === undefined) return;
        event.preventDefault();
        hand.step(by, event.shiftKey || event.key.startsWith("Page"));
      }}
    />
  );
}

const ENDS: readonly (readonly [End, string])[] = [
  ["low", "at least"],
  ["high", "at most"],
];

/** The axis with a thumb for each end of a number that is not sure. */
export function TwoThumbs(props: Props & { readonly span: SpanInHand }) {
  const sheet = useSheet();
  const { doubting } = sheet;
  const place = (end: End) => props.span[end].place;
  // While one is drawn along, neither makes more room nor less: a finger that goes back finds what was there.
  const [gripped, setGripped] = createSignal<Readonly<Record<End, number>> | null>(null);
  const roomFor = (end: End) => gripped()?.[end] ?? place(end);
  const letGo = (): void => {
    setGripped(null);
  };
  const spoken = (end: End): string => {
    const entry = sheet.hand.entry();
    const value = entry?.[end];
    return value === undefined ? props.span[end].text : typedText(sheet, value, entry?.unit ?? "");
  };
  return (
    <div class="two-thumbs" style={{ "--low": roomFor("low"), "--high": roomFor("high") }}>
      <div
        class="between"
        style={{
          left: `calc(${INSET}px + ${place("low")} * (100% - ${2 * INSET}px))`,
          width: `calc(${place("high") - place("low")} * (100% - ${2 * INSET}px))`,
        }}
      />
      <For each={ENDS}>
        {([end, word]) => (
          <input
            type="range"
            class={`in-hand-slider ${end}`}
            aria-label={`${props.turned.row.label}, ${word}`}
            aria-valuetext={spoken(end)}
            min="0"
            max="1"
            step="any"
            value={place(end)}
            onPointerDown={() => setGripped({ low: place("low"), high: place("high") })}
            onPointerUp={letGo}
            onPointerCancel={letGo}
            onChange={letGo}
            onInput={(event) => {
              doubting()?.slide(end, event.currentTarget.valueAsNumber);
              event.currentTarget.value = String(place(end));
            }}
            onKeyDown={(event) => {
              const by = STEP_KEYS.get(event.key);
              if (by === undefined) return;
              event.preventDefault();
              letGo();
              doubting()?.step(end, by, event.shiftKey || event.key.startsWith("Page"));
            }}
          />
        )}
      </For>
    </div>
  );
}
