// How much, with two large steps, and how long, with a watch that runs while the bucket fills.

import { createSignal, onCleanup, Show } from "solid-js";
import { noteKind } from "../../document/note-kinds.ts";
import type { Card } from "../../document/worksheet.ts";
import { showQuantity, unitFor } from "../../units/show.ts";
import { toSi } from "../../units/unit.ts";
import { useSheet } from "../sheet.ts";
import type { Act } from "./acts.ts";
import type { ToNote } from "./noting-here.tsx";

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

/** A number that is stepped or typed. */
function Stepped(props: {
  readonly name: string;
  readonly unit: string;
  readonly value: number;
  readonly step: number;
  readonly onPut: (value: number) => void;
}) {
  const put = (value: number) => {
    if (Number.isFinite(value) && value >= 0) props.onPut(Math.round(value * 10) / 10);
  };
  return (
    <div class="field-stepped">
      <button type="button" aria-label={`Less: ${props.name}`} onClick={() => put(props.value - props.step)}>
        −
      </button>
      <label>
        <input
          aria-label={props.name}
          inputmode="decimal"
          value={props.value}
          onChange={(event) => put(Number(event.currentTarget.value.replace(",", ".")))}
        />{" "}
        {props.unit}
      </label>
      <button type="button" aria-label={`More: ${props.name}`} onClick={() => put(props.value + props.step)}>
        +
      </button>
    </div>
  );
}

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

export function Amounts(props: {
  readonly act: Act;
  readonly card: Card;
  readonly onNote: (what: ToNote) => void;
}) {
  const sheet = useSheet();
  const measure = noteKind(props.act.what)?.value ?? "volume";
  const unit = unitFor(measure, sheet.worksheet().units);
  const isTimed = () => noteKind(props.act.what)?.with !== undefined;
  const isBucket = () => props.act.what === "bucket";
  const sort = () => (isBucket() ? "bucket" : measure);
  const [volume, setVolume] = createSignal(FIRST[sort()]?.[unit] ?? 10);
  const [seconds, setSeconds] = createSignal(0);
  // A refill takes hours: nobody stands by with a watch.
  const perUnit = () => (isBucket() ? 1 : 60);
  const shownTime = () => Math.round((seconds() / perUnit()) * 10) / 10;
  const said = (value: number): ToNote => ({
    said: {
      what: props.act.what,
      where: props.card.id,
      value,
      unit,
      ...(isTimed() ? { with: { value: Math.round(seconds() * 10) / 10, unit: "s" } } : {}),
    },
    words: [
      props.card.title,
      `${showQuantity(toSi(value, unit), measure, sheet.showOptions())} ${props.act.said}`,
      ...(isTimed() ? [`in ${shownTime()} ${isBucket() ? "s" : "min"}`] : []),
    ].join(", "),
    instead:
      isTimed() || measure !== "volume"
        ? []
        : [
            { over: "half", label: `${value / 2} ${unit}`, to: () => said(value / 2) },
            { over: "double", label: `${value * 2} ${unit}`, to: () => said(value * 2) },
          ],
  });
  // A tank may be dipped dry.
  const canNote = () => (volume() > 0 || measure === "depth") && (!isTimed() || seconds() > 0);
  return (
    <>
      <Stepped
        name={isBucket() ? "The bucket holds" : "How much"}
        unit={unit}
        value={volume()}
        step={STEPS[sort()]?.[unit] ?? 5}
        onPut={setVolume}
      />
      <Show when={isTimed()}>
        <Stepped
          name="How long it took"
          unit={isBucket() ? "s" : "min"}
          value={shownTime()}
          step={isBucket() ? 1 : 5}
          onPut={(value) => setSeconds(value * perUnit())}
        />
      </Show>
      <Show when={isBucket()}>
        <Watch onRead={setSeconds} />
      </Show>
      <div class="field-choices">
        <button
          type="button"
          class="note-it"
          disabled={!canNote()}
          onClick={() => props.onNote(said(volume()))}
        >
          Note it
        </button>
      </div>
    </>
  );
}
