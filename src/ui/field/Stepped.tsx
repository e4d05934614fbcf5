// A number that is stepped or typed, and what is not understood of it beside it.

import { createSignal } from "solid-js";
import type { MeasureName } from "../../units/measures.ts";
import type { Reading } from "../../units/read.ts";
import { showNumber, showQuantity } from "../../units/show.ts";
import { fromSi } from "../../units/unit.ts";
import { useSheet } from "../sheet.ts";
import { type Least, readAmount } from "./read-amount.ts";

export type AskedAmount = {
  readonly measure: MeasureName;
  /** Of a bare number. */
  readonly unit: string;
  /** What stands there before anything is typed, and what a press adds, in that unit. */
  readonly first: number;
  readonly step: number;
  readonly least: Least;
};

/** So finely a number is shown that a step or a watch gave; what is typed stands as it was typed. */
const DECIMALS = 10;
const FIGURES = 6;
/** So wide a field is at the least [letters]. */
const SHORT = 5;

/** What is typed or stepped, as it is read; why it cannot be noted is said once somebody is done with typing. */
export function createAmount(asked: AskedAmount) {
  const sheet = useSheet();
  const { measure, unit, step, least } = asked;
  const options = () => ({ ...sheet.readOptions(), measure, defaultUnit: unit });
  const textOf = (value: number): string =>
    showNumber(Math.round(value * DECIMALS) / DECIMALS, FIGURES, sheet.showOptions().locale);
  const [text, setText] = createSignal(textOf(asked.first));
  const [isDone, setDone] = createSignal(false);
  const read = (): Reading => readAmount(text(), options(), least);
  const put = (value: number): void => {
    setText(textOf(Math.max(0, value)));
    setDone(false);
  };
  /** What was read last, in the field's unit. */
  const value = (): number => {
    const found = read();
    return found.ok ? fromSi(found.si, unit) : 0;
  };
  return {
    unit,
    text,
    read,
    put,
    value,
    step: (by: number): void => {
      // What is typed and not understood is not stepped away: it is said, and stays.
      if (!read().ok && text().trim() !== "") setDone(true);
      else put(value() + by * step);
    },
    type: (typed: string): void => {
      setText(typed);
      setDone(false);
    },
    /** Says from now on what is not understood; whether all is. */
    done: (): boolean => {
      setDone(true);
      return read().ok;
    },
    wrong: (): string => {
      const found = read();
      return isDone() && !found.ok ? found.message : "";
    },
    /** What it comes to in the sheet's own unit, where it was typed in another; how it was read, where that is not plain. */
    beside: (): string => {
      const found = read();
      if (!found.ok) return "";
      const own = found.unit === unit ? "" : `= ${showQuantity(found.si, measure, sheet.showOptions())}`;
      return [own, found.note ?? ""].filter((words) => words !== "").join(". ");
    },
  };
}

export type Typed = ReturnType<typeof createAmount>;

export function Stepped(props: { readonly name: string; readonly of: Typed }) {
  const isOther = () => {
    const found = props.of.read();
    return found.ok && found.unit !== props.of.unit;
  };
  return (
    <div class="field-stepped">
      <button type="button" aria-label={`Less: ${props.name}`} onClick={() => props.of.step(-1)}>
        −
      </button>
      <label>
        <input
          aria-label={props.name}
          inputmode="decimal"
          autocomplete="off"
          value={props.of.text()}
          style={{ width: `${Math.max(SHORT, props.of.text().length + 1)}ch` }}
          aria-invalid={props.of.wrong() !== ""}
          onInput={(event) => props.of.type(event.currentTarget.value)}
          onChange={() => props.of.done()}
        />{" "}
        <span classList={{ unsaid: isOther() }}>{props.of.unit}</span>
      </label>
      <button type="button" aria-label={`More: ${props.name}`} onClick={() => props.of.step(1)}>
        +
      </button>
      {/* Its line is kept free: what comes to stand there moves no button from under a thumb. */}
      <p class="aside" role="status" classList={{ wrong: props.of.wrong() !== "" }}>
        {props.of.wrong() || props.of.beside()}
      </p>
    </div>
  );
}
