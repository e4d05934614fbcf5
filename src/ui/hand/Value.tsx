// The value in hand, to be typed in any unit, or chosen where it is a word or a day.

import {
  createComputed,
  createEffect,
  createSignal,
  For,
  Match,
  on,
  onCleanup,
  onMount,
  Show,
  Switch,
} from "solid-js";
import type { Entry } from "../../document/worksheet.ts";
import type { ChoiceGiven, DateGiven, NumberGiven } from "../../graph/types.ts";
import { DayPicker } from "../rows/DayPicker.tsx";
import { enterNumber } from "../rows/enter-number.ts";
import { startText } from "../rows/number-text.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import type { InHand } from "./hand.ts";
import { isOtherUnit, isTaken, readAs, readHand, type TypedRead } from "./read-as.ts";

type Refused = {
  readonly typed: string;
  readonly message: string;
  readonly start: number;
  readonly end: number;
};

const NOTHING_TYPED: Refused = {
  typed: "",
  message: "Type a number, or leave it as it was.",
  start: 0,
  end: 0,
};

function Wrong(props: { readonly wrong: Refused }) {
  return (
    <p class="wrong" role="alert">
      <Show when={props.wrong.typed !== ""}>
        {props.wrong.typed.slice(0, props.wrong.start)}
        <mark>{props.wrong.typed.slice(props.wrong.start, props.wrong.end) || " "}</mark>
        {props.wrong.typed.slice(props.wrong.end)}:{" "}
      </Show>
      {props.wrong.message}
    </p>
  );
}

/** Typing rests for so long before the answers follow it [ms]. */
const PAUSE = 600;

const entryOf = (read: Extract<TypedRead, { readonly ok: true }>): Entry => ({
  value: read.value,
  unit: read.unit,
  ...("low" in read ? { low: read.low, high: read.high } : {}),
});

/** What is typed, and what becomes of it. */
/** What stands in the field while it is typed, what is wrong with it, and what is said of a field that was left empty. */
function createTyping(sheet: Sheet, id: string, row: NumberGiven) {
  const { hand } = sheet;
  const [wrong, setWrong] = createSignal<Refused | null>(null);
  const [kept, setKept] = createSignal("");
  let pending: string | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;
  let isFollowing = false;
  const setText = (text: string | null): void => {
    clearTimeout(pause);
    pending = text;
    setWrong(null);
    setKept("");
    hand.setText(text);
  };
  /** The answers go with what is typed, which goes on standing in the field; what is refused waits until it is entered. */
  const follow = (): void => {
    const read = pending === null || pending.trim() === "" ? null : readHand(sheet, id, row, pending);
    if (!read?.ok || !isTaken(row, read)) return;
    isFollowing = true;
    sheet.looking.stir();
    hand.put(entryOf(read));
    isFollowing = false;
  };
  const type = (text: string): void => {
    setText(text);
    pause = setTimeout(follow, PAUSE);
  };
  onCleanup(() => clearTimeout(pause));
  // Undo, or another tab, put something else there: what was typed before is not what stands there any more.
  createComputed(
    on(
      hand.entry,
      () => {
        if (!isFollowing) setText(null);
      },
      { defer: true },
    ),
  );
  return { setText, type, wrong, setWrong, kept, setKept, pending: () => pending };
}

function createEntering(sheet: Sheet, id: string, row: NumberGiven) {
  const { hand } = sheet;
  const { setText, type, wrong, setWrong, kept, setKept, pending } = createTyping(sheet, id, row);
  const start = () => startText(sheet, hand.entry() ?? undefined, id, row.measure);
  // Typing the usual value is saying it: from then on it is the grower's own.
  const isUsual = () => !hand.entry() || hand.entry()?.from === "default";
  const put = (entry: Entry | null): void => {
    setText(null);
    hand.put(entry);
  };
  /** Enters what is typed; false where it cannot be read. */
  const enter = (): boolean => {
    const typed = hand.text();
    if (typed === null) return true;
    if (typed.trim() === "") {
      // No other number takes its place unasked: the usual one is chosen by where the number is from.
      if (row.default === null) put(null);
      else setWrong(NOTHING_TYPED);
      return row.default === null;
    }
    if (!isUsual() && typed === start()) {
      setText(null);
      return true;
    }
    const read = readHand(sheet, id, row, typed);
    if (read.ok) put(entryOf(read));
    else setWrong({ ...read, typed });
    return read.ok;
  };
  /** The hand is at another number already: what was only typed is entered where it was typed; what cannot be read stays. */
  const leave = (): void => {
    const text = pending();
    const card = sheet.worksheet().cards.find((one) => one.id === id.split(".")[0]);
    if (text === null || text.trim() === "" || !card || card.measured[row.name]) return;
    if (enterNumber(sheet, card, row, text).ok) sheet.edit.typed(id, null);
  };
  /** The field is left: what was there before it was emptied stands there again. */
  const rest = (): void => {
    if (hand.text()?.trim() !== "" || row.default === null) {
      enter();
      return;
    }
    setText(null);
    setKept(`Nothing typed: still ${start()}.`);
  };
  const said = (): string => {
    const text = hand.text();
    return text === null || text.trim() === "" || wrong() ? kept() : readAs(sheet, id, row, text);
  };
  const isLoud = (): boolean => {
    const text = hand.text();
    return (
      text !== null && text.trim() !== "" && isOtherUnit(sheet, id, text, readHand(sheet, id, row, text))
    );
  };
  return { start, setText, type, enter, rest, leave, wrong, said, isLoud };
}

type Typed = ReturnType<typeof createEntering>;

function onKey(
  sheet: Sheet,
  typed: Typed,
  event: KeyboardEvent & { readonly currentTarget: HTMLInputElement },
) {
  const { key, shiftKey, currentTarget } = event;
  if (key === "ArrowUp" || key === "ArrowDown") {
    event.preventDefault();
    // A span is turned end by end, by its two thumbs.
    if (!typed.enter() || sheet.doubting()?.span()) return;
    sheet.hand.step(key === "ArrowUp" ? 1 : -1, shiftKey);
    // What is typed next replaces it.
    currentTarget.select();
  } else if (key === "Enter" && typed.enter()) currentTarget.select();
}

function NumberValue(props: { readonly turned: InHand; readonly row: NumberGiven }) {
  const sheet = useSheet();
  const { hand } = sheet;
  const { id } = props.turned;
  const typed = createEntering(sheet, id, props.row);
  const absent = () => {
    const result = sheet.result(id);
    if (result?.state === "none") return result.reason;
    return props.row.default === null ? "none" : "";
  };
  let input: HTMLInputElement | undefined;
  // After all else has changed: the browser lays the page out for what is written in a field that is selected.
  createEffect(() => {
    const text = hand.text() ?? typed.start();
    if (input) input.value = text;
  });
  // Where fingers type, a keyboard comes up with the focus and takes half of the screen: there it is asked for.
  onMount(() => {
    const left = sheet.typed(id);
    if (left !== null && hand.text() === null) {
      typed.setText(left);
      // Says at once what of it could not be read.
      typed.enter();
    }
    if (matchMedia("(pointer: coarse)").matches) return;
    input?.focus({ preventScroll: true });
    input?.select();
  });
  onCleanup(typed.leave);
  return (
    <>
      <input
        ref={input}
        class="in-hand-value"
        classList={{ long: (hand.text() ?? typed.start()).length > 11 }}
        aria-label={props.row.label}
        aria-invalid={typed.wrong() ? "true" : "false"}
        placeholder={absent()}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        enterkeyhint="done"
        onFocus={(event) => event.currentTarget.select()}
        onInput={(event) => typed.type(event.currentTarget.value)}
        onBlur={() => typed.rest()}
        onKeyDown={(event) => onKey(sheet, typed, event)}
      />
      <p class="read-as" classList={{ loud: typed.isLoud() }} role="status">
        {typed.said()}
      </p>
      <Show when={typed.wrong()}>{(wrong) => <Wrong wrong={wrong()} />}</Show>
    </>
  );
}

const wordOf = (sheet: Sheet, usual: string | null): string | null => {
  const entry = sheet.hand.entry();
  return typeof entry?.value === "string" ? entry.value : entry ? null : usual;
};

function WordValue(props: { readonly row: ChoiceGiven }) {
  const sheet = useSheet();
  const word = () => wordOf(sheet, props.row.default) ?? "";
  return (
    <span class="in-hand-word">
      {/* What a select shows never goes on in a second line, and long words would be cut. */}
      <span aria-hidden="true">{props.row.options.find((option) => option.word === word())?.label}</span>
      <select
        class="in-hand-value"
        aria-label={props.row.label}
        value={word()}
        onChange={(event) => sheet.hand.put({ value: event.currentTarget.value, unit: "" })}
      >
        <For each={props.row.options}>{(option) => <option value={option.word}>{option.label}</option>}</For>
      </select>
    </span>
  );
}

function DayValue(props: { readonly turned: InHand; readonly row: DateGiven }) {
  const sheet = useSheet();
  const put = (day: string | null) => sheet.hand.put(day ? { value: day, unit: "" } : null);
  const day = () => wordOf(sheet, props.row.default);
  return (
    <Show
      when={props.row.form === "month_day"}
      fallback={
        <input
          type="date"
          class="in-hand-value"
          aria-label={props.row.label}
          value={day() ?? ""}
          onChange={(event) => put(event.currentTarget.value || null)}
        />
      }
    >
      <span class="in-hand-value">
        <DayPicker
          id={`${props.turned.id}-in-hand`}
          label={props.row.label}
          value={day()}
          optional={props.row.default === null}
          onPick={put}
        />
      </span>
    </Show>
  );
}

export function Value(props: { readonly turned: InHand }) {
  const as = <Kind extends InHand["row"]>(kind: Kind["row"]): Kind | false =>
    props.turned.row.row === kind ? (props.turned.row as Kind) : false;
  return (
    <Switch>
      <Match when={as<NumberGiven>("given")}>
        {(row) => <NumberValue turned={props.turned} row={row()} />}
      </Match>
      <Match when={as<ChoiceGiven>("choice")}>{(row) => <WordValue row={row()} />}</Match>
      <Match when={as<DateGiven>("date")}>{(row) => <DayValue turned={props.turned} row={row()} />}</Match>
    </Switch>
  );
}
