// "What is there?": a picture as counted, and a row for everything that can be counted.

import { createMemo, createSignal, For, Show } from "solid-js";
import type { UnitSystemName } from "../../document/worksheet.ts";
import { type Counted, type Question, questionsOf } from "../../kinds/asking.ts";
import type { Icon as Drawing } from "../../kinds/kind.ts";
import { counting, FIRST_WISH, type Wish } from "../../kinds/lay-out.ts";
import { IconOf } from "../page/Icon.tsx";
import { useSheet } from "../sheet.ts";
import type { Beginning, Begun } from "./beginning.ts";
import { Sketch } from "./Sketch.tsx";

type Row = Counted & { readonly drawing: Drawing | undefined };

function Steps(props: {
  readonly row: Row;
  readonly count: number;
  readonly onCount: (count: number) => void;
}) {
  const { label, most } = props.row;
  let more: HTMLButtonElement | undefined;
  const less = (): void => {
    props.onCount(props.count - 1);
    // At none there is nothing less, and the button goes.
    if (props.count === 0) more?.focus();
  };
  return (
    <>
      <Show when={props.count > 0} fallback={<span class="none">none</span>}>
        <button type="button" class="step" aria-label={`One less: ${label}`} onClick={less}>
          −
        </button>
        <output aria-label={label}>{props.count}</output>
      </Show>
      <button
        type="button"
        class="step"
        ref={more}
        aria-label={`One more: ${label}`}
        // Never disabled: the focus would be gone with the last of them.
        aria-disabled={props.count >= most}
        onClick={() => props.count < most && props.onCount(props.count + 1)}
      >
        +
      </button>
    </>
  );
}

const STANDING: readonly (readonly [boolean, string])[] = [
  [true, "joined, as one"],
  [false, "each by itself"],
];

/** How several tanks at the roof stand to each other. */
function Standing(props: { readonly wish: Wish; readonly onWish: (wish: Wish) => void }) {
  return (
    <fieldset class="standing">
      <legend>The {props.wish.tanks} tanks stand</legend>
      <div class="picks">
        <For each={STANDING}>
          {([joined, label]) => (
            <button
              type="button"
              class="pick"
              aria-pressed={props.wish.joined === joined}
              onClick={() => props.onWish({ ...props.wish, joined })}
            >
              {label}
            </button>
          )}
        </For>
      </div>
    </fieldset>
  );
}

const isNumber = ({ ask }: Question): boolean => ask.field !== undefined && ask.picked === undefined;

/** What still waters no bed, or lets no water run: said before it is laid out. */
function lacking(wish: Wish): string | null {
  if (wish.beds > 0 && wish.pumps + wish.cans === 0)
    return "Nothing waters the beds yet: count a pump, or cans.";
  if (wish.pumps > 0 && wish.batteries + wish.panels === 0)
    return "The pump runs on nothing yet: count a battery, or a panel.";
  return null;
}

function Units(props: { readonly units: UnitSystemName; readonly onUnits: (units: UnitSystemName) => void }) {
  return (
    <select
      aria-label="Units"
      value={props.units}
      onChange={(event) => props.onUnits(event.currentTarget.value as UnitSystemName)}
    >
      <option value="us">feet, gallons</option>
      <option value="imperial">feet, imperial gallons</option>
      <option value="metric">meters, liters</option>
    </select>
  );
}

/** What stands in the place, row by row. */
function Counts(props: {
  readonly rows: readonly Row[];
  readonly wish: Wish;
  readonly onWish: (wish: Wish) => void;
}) {
  return (
    <ul class="counts">
      <For each={props.rows}>
        {(row) => (
          <>
            <li classList={{ absent: props.wish[row.sort] === 0 }}>
              <IconOf icon={row.drawing} />
              <span class="what">
                <b>{row.label}</b>
                <Show when={row.help}>
                  <small>{row.help}</small>
                </Show>
              </span>
              <Steps
                row={row}
                count={props.wish[row.sort]}
                onCount={(count) => props.onWish(counting(props.wish, row.sort, count))}
              />
            </li>
            <Show when={row.sort === "tanks" && props.wish.tanks > 1}>
              <li>
                <Standing wish={props.wish} onWish={props.onWish} />
              </li>
            </Show>
          </>
        )}
      </For>
    </ul>
  );
}

export function Counting(props: {
  readonly beginning: Beginning;
  readonly begun: Begun;
  readonly onClose: () => void;
}) {
  const sheet = useSheet();
  const [wish, setWish] = createSignal<Wish>(props.begun.wish ?? FIRST_WISH);
  const [units, setUnits] = createSignal<UnitSystemName>(sheet.worksheet().units);
  const rows: readonly Row[] = Object.entries(props.beginning.starts)
    .flatMap(([kind, { counted = [] }]) =>
      counted.map((row) => ({ ...row, drawing: row.icon ?? sheet.kinds[kind]?.icon })),
    )
    .toSorted((a, b) => a.place - b.place);
  const place = createMemo(() => props.beginning.preview(wish(), units()));
  const questions = createMemo(() => questionsOf(props.beginning.starts, place().worksheet.cards));
  const numbers = () => questions().filter(isNumber).length;
  const nothing = () => rows.every(({ sort }) => wish()[sort] === 0);
  const goOn = (): void => {
    const { here } = props.begun;
    props.beginning.lay(wish(), units(), here);
    sheet.looking.begin(here ? { step: "ask", wish: wish(), here } : null);
  };
  return (
    <>
      <header>
        <button type="button" class="back" onClick={() => props.onClose()}>
          ‹ Back
        </button>
        <Units units={units()} onUnits={setUnits} />
      </header>
      <h2>What is there?</h2>
      <Sketch place={place()} washed={null} />
      <Counts rows={rows} wish={wish()} onWish={setWish} />
      <footer>
        <p role="status">
          <Show
            when={lacking(wish())}
            fallback={
              <>
                Then <b>{numbers() === 1 ? "1 number" : `${numbers()} numbers`}</b> to read off or pace out
              </>
            }
          >
            {(text) => text()}
          </Show>
        </p>
        <button type="button" class="go" disabled={nothing()} onClick={goOn}>
          {wish().roofs > 0 ? "The roof ›" : "Go on ›"}
        </button>
      </footer>
    </>
  );
}
