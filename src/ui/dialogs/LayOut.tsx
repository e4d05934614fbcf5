// An empty sheet asks what there is: roofs, tanks, beds and who waters; out of that it lays a whole place, joined up.

import { createSignal, For, type JSX, Show } from "solid-js";
import { FIRST_WISH, MOST_OF_A_SORT, type Wish } from "../../kinds/lay-out.ts";
import { useSheet } from "../sheet.ts";

type Sort = "roofs" | "tanks" | "small" | "openBeds" | "tunnels";

const SORTS: readonly (readonly [Sort, string, string])[] = [
  ["roofs", "Roofs", "that could have a gutter"],
  ["tanks", "Tanks", "that the roofs fill"],
  ["small", "Small tanks", "lower down at the beds, filled by a hose with a float valve"],
  ["tunnels", "Beds under cover", "in a tunnel or under glass"],
  ["openBeds", "Beds under the sky", "that the rain reaches"],
];

const WAYS: readonly (readonly [Wish["wateredBy"], string])[] = [
  ["cans", "by can"],
  ["pump", "by pump and battery"],
  ["both", "by both"],
];

function Count(props: {
  readonly label: string;
  readonly help: string;
  readonly count: number;
  readonly onChange: (count: number) => void;
}) {
  return (
    <fieldset class="count">
      <legend>
        {props.label} <small>{props.help}</small>
      </legend>
      <button
        type="button"
        aria-label={`One less: ${props.label}`}
        disabled={props.count === 0}
        onClick={() => props.onChange(props.count - 1)}
      >
        −
      </button>
      <output>{props.count}</output>
      <button
        type="button"
        aria-label={`One more: ${props.label}`}
        disabled={props.count === MOST_OF_A_SORT}
        onClick={() => props.onChange(props.count + 1)}
      >
        +
      </button>
    </fieldset>
  );
}

const STANDING: readonly (readonly [Wish["joined"], string])[] = [
  [false, "each by itself"],
  [true, "joined at the base, as one"],
];

function Ways<T>(props: {
  readonly asked: string;
  readonly ways: readonly (readonly [T, string])[];
  readonly chosen: T;
  readonly onPick: (way: T) => void;
}): JSX.Element {
  return (
    <fieldset class="ways">
      <legend>{props.asked}</legend>
      <For each={props.ways}>
        {([way, label]) => (
          <button type="button" aria-pressed={props.chosen === way} onClick={() => props.onPick(way)}>
            {label}
          </button>
        )}
      </For>
    </fieldset>
  );
}

export function LayOut() {
  const sheet = useSheet();
  const [wish, setWish] = createSignal<Wish>(FIRST_WISH);
  return (
    <section class="width lay-out" aria-labelledby="lay-out">
      <h2 id="lay-out">What is there, or could be?</h2>
      <p>
        Count what you have or think of having. It is laid out and joined up with usual sizes; then you put in
        your own numbers, one after the other.
      </p>
      <For each={SORTS}>
        {([sort, label, help]) => (
          <>
            <Count
              label={label}
              help={help}
              count={wish()[sort]}
              onChange={(count) => setWish({ ...wish(), [sort]: count })}
            />
            <Show when={sort === "tanks" && wish().tanks > 1}>
              <Ways
                asked={`The ${wish().tanks} tanks stand`}
                ways={STANDING}
                chosen={wish().joined}
                onPick={(joined) => setWish({ ...wish(), joined })}
              />
            </Show>
          </>
        )}
      </For>
      <Ways
        asked="The beds are watered"
        ways={WAYS}
        chosen={wish().wateredBy}
        onPick={(wateredBy) => setWish({ ...wish(), wateredBy })}
      />
      <p>
        <button type="button" class="button strong" onClick={() => sheet.edit.layOut(wish())}>
          Lay it out
        </button>{" "}
        <small>Or add things one by one in their groups.</small>
      </p>
    </section>
  );
}
