// The place from the side: one order at every width, heights to scale; each thing opens its part.

import { type Accessor, createEffect, createSignal, Index, onCleanup, Show } from "solid-js";
import { afterPaint } from "../after-paint.ts";
import { useSheet } from "../sheet.ts";
import { createElementSize, type Size } from "./element-size.ts";
import { Paper } from "./Paper.tsx";
import { createScene, type SceneModel } from "./scene-model.ts";
import { createTankMover } from "./tank-mover.ts";
import { createYearShown } from "./year-shown.ts";

/** Until it is measured [px]. */
const SIZE = { width: 840, height: 320 };
/** The answers take a line more or less while a number is turned: the paper follows them when the key has been answered [ms]. */
const PAUSE = 100;

function InWords(props: { readonly scene: SceneModel }) {
  const sheet = useSheet();
  return (
    <details class="in-words">
      <summary>In words</summary>
      <div>
        <ul>
          <Index each={props.scene.spoken()}>{(sentence) => <li>{sentence().text}</li>}</Index>
        </ul>
        <Show when={sheet.givesOut()}>
          {(said) => (
            <p class="gives-out">
              {sheet.doubting()?.said() ? "In the middle of what you are not sure of: " : ""}
              {said()}
            </p>
          )}
        </Show>
        <p>
          Heights are to scale, distances are not; a tank's area goes with what it holds.
          <Show when={props.scene.layout().grades.length > 0}>
            {" "}
            The blue dashes are how high the water in a hose could stand.
          </Show>{" "}
          Drag a tank to raise or lower it.
        </p>
      </div>
    </details>
  );
}

/** Whether water glides to a new level: not where all of the paper is laid out anew, or it would come from beside its tank. */
function createGlides(size: Accessor<Size>): Accessor<boolean> {
  const [painted, setPainted] = createSignal<Size | null>(null);
  createEffect(() => {
    const now = size();
    onCleanup(afterPaint(() => setPainted(now)));
  });
  return () => painted() === size();
}

export function Drawing() {
  const sheet = useSheet();
  const { size, watch } = createElementSize(SIZE, PAUSE);
  const glides = createGlides(size);
  const shown = createYearShown(sheet);
  const day = () => (shown.asDipped() ? null : shown.day());
  const model = createScene(sheet, day, size);
  const mover = createTankMover(sheet, model);
  const empty = () => model.layout().parts.length === 0;
  return (
    <section
      class="drawing"
      aria-label="The place from the side; each thing opens its part"
      classList={{ old: sheet.working() && !empty(), glides: glides() }}
    >
      <div class="paper" ref={watch}>
        <Show
          when={!empty()}
          fallback={<p class="width bare">Nothing stands here yet. What you add is drawn here.</p>}
        >
          <Paper scene={model} mover={mover} />
        </Show>
      </div>
      <p class="unseen" role="status">
        {mover.moved() ? mover.readout(mover.moved() ?? "") : ""}
      </p>
      <Show when={!empty()}>
        <InWords scene={model} />
      </Show>
    </section>
  );
}
