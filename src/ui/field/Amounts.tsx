// How much, with two large steps, and how long, with a watch that runs while the bucket fills.

import { createSignal, onCleanup, Show } from "solid-js";
import { noteKind } from "../../document/note-kinds.ts";
import type { Card } from "../../document/worksheet.ts";
import { showQuantity, unitFor } from "../../units/show.ts";
import { fromSi, toSi } from "../../units/unit.ts";
import { useSheet } from "../sheet.ts";
import type { Act } from "./acts.ts";
import type { ToNote } from "./noting-here.tsx";
import { createAmount, Stepped } from "./Stepped.tsx";

/** A bucket as it is sold, and what a tank is filled with: common practice, no source. A dip and a rain to be set right. */
const FIRST: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  bucket: { gal: 5, "imp gal": 2, L: 10 },
  volume: { gal: 20, "imp gal": 20, L: 100 },
  depth: { in: 10, ft: 1, mm: 250, cm: 25, m: 0.3 },
  rain: { in: 0.5, mm: 10 },
};

/** What a press adds, of other units and measures five. */
const STEPS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  bucket: { gal: 1, "imp gal": 1, L: 1 },
  depth: { in: 0.5, ft: 0.1, mm: 10, cm: 1, m: 0.1 },
  rain: { in: 0.1, mm: 1 },
};

/** A watch that is started and stopped by presses, whose own times it counts by. */
function Watch(props: { readonly onRead: (seconds: number) => void }) {
  const [started, setStarted] = createSignal<number | null>(null);
  let frame = 0;
  const read = (now: number): void => {
    const from = started();
    if (from === null) return;
    props.onRead((now - from) / 1000);
    frame = requestAnimationFrame(read);
  };
  const press = ({ timeStamp }: MouseEvent): void => {
    const from = started();
    cancelAnimationFrame(frame);
    setStarted(from === null ? timeStamp : null);
    if (from === null) frame = requestAnimationFrame(read);
    else props.onRead((timeStamp - from) / 1000);
  };
  onCleanup(() => cancelAnimationFrame(frame));
  return (
    <button type="button" class="field-watch" classList={{ running: started() !== null }} onClick={press}>
      {started() === null ? "Start the watch" : "Stop: it is full"}
    </button>
  );
}

/** How much it is, and of what takes its time how long: seconds of a bucket, minutes of a refill, by which nobody stands with a watch. */
function createAsked(act: Act) {
  const sheet = useSheet();
  const kind = noteKind(act.what);
  const measure = kind?.value ?? "volume";
  const unit = unitFor(measure, sheet.worksheet().units);
  const isBucket = act.what === "bucket";
  const sort = isBucket ? "bucket" : measure;
  const much = createAmount({
    measure,
    unit,
    first: FIRST[sort]?.[unit] ?? 10,
    step: STEPS[sort]?.[unit] ?? 5,
    // A tank may be dipped dry.
    least: measure === "depth" ? "none" : "some",
  });
  const time = kind?.with
    ? createAmount({
        measure: kind.with,
        unit: isBucket ? "s" : "min",
        first: 0,
        step: isBucket ? 1 : 5,
        least: "some",
      })
    : null;
  return { measure, isBucket, much, time };
}

type Asked = ReturnType<typeof createAsked>;

/** What is noted of an amount: as it was typed, and in words in the sheet's unit as well. */
function useSaying(props: { readonly act: Act; readonly card: Card }, { measure, much, time }: Asked) {
  const sheet = useSheet();
  const words = (value: number, unit: string): string => {
    const own = showQuantity(toSi(value, unit), measure, sheet.showOptions());
    if (unit === much.unit) return own;
    return `${showQuantity(toSi(value, unit), measure, { ...sheet.showOptions(), unit })} (${own})`;
  };
  /** What an amount of rain is of: the part is the place, whose name says nothing of it. */
  const subject = () => (props.act.what === "rain" ? "rain" : props.card.title);
  const said = (value: number, unit: string, seconds: number | null): ToNote => ({
    said: {
      what: props.act.what,
      where: props.card.id,
      value,
      unit,
      ...(seconds === null ? {} : { with: { value: Math.round(seconds * 10) / 10, unit: "s" } }),
    },
    words: [
      subject(),
      `${words(value, unit)} ${props.act.said}`,
      ...(time && seconds !== null
        ? [`in ${Math.round(fromSi(seconds, time.unit) * 10) / 10} ${time.unit}`]
        : []),
    ].join(", "),
    instead:
      time || measure !== "volume"
        ? []
        : (
            [
              ["half", value / 2],
              ["double", value * 2],
            ] as const
          ).map(([over, other]) => ({
            over,
            label: showQuantity(toSi(other, unit), measure, { ...sheet.showOptions(), unit }),
            to: () => said(other, unit, seconds),
          })),
  });
  return said;
}

export function Amounts(props: {
  readonly act: Act;
  readonly card: Card;
  readonly onNote: (what: ToNote) => void;
}) {
  let box: HTMLDivElement | undefined;
  const asked = createAsked(props.act);
  const said = useSaying(props, asked);
  const { much, time } = asked;
  const note = (): void => {
    const [found, took] = [much.read(), time?.read()];
    const isRead = [much.done(), time?.done() ?? true].every((is) => is);
    if (isRead && found.ok) props.onNote(said(found.value, found.unit, took?.ok ? took.si : null));
    else box?.querySelector<HTMLInputElement>("[aria-invalid=true]")?.focus();
  };
  return (
    <div ref={box}>
      <Stepped name={asked.isBucket ? "The bucket holds" : "How much"} of={much} />
      <Show when={time}>{(took) => <Stepped name="How long it took" of={took()} />}</Show>
      <Show when={asked.isBucket && time}>{(took) => <Watch onRead={took().put} />}</Show>
      <div class="field-choices">
        <button type="button" class="note-it" onClick={note}>
          Note it
        </button>
      </div>
    </div>
  );
}
