// The place on paper, as wide as the sheet whatever screen it is printed from.

import { Show } from "solid-js";
import { printedLevels } from "../../telling/printed.ts";
import { Paper } from "../charts/Paper.tsx";
import { createScene } from "../charts/scene-model.ts";
import { createTankMover } from "../charts/tank-mover.ts";
import { createYearShown } from "../charts/year-shown.ts";
import { useSheet } from "../sheet.ts";

/** The sheet makes its width its own: its letters come to some seven points. */
const SIZE = { width: 1000, height: 320 };

export function PrintedPlace() {
  const sheet = useSheet();
  const scene = createScene(
    sheet,
    () => null,
    () => SIZE,
  );
  const mover = createTankMover(sheet, scene);
  const { dipped } = createYearShown(sheet);
  return (
    <Show when={scene.layout().parts.length > 0}>
      <figure class="drawing">
        <Paper scene={scene} mover={mover} />
        <figcaption>{printedLevels(dipped())}</figcaption>
      </figure>
    </Show>
  );
}
