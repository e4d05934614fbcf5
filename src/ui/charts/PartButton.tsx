// What answers to a finger, a mouse or a key over a part of the drawing: it opens the part, and raises and lowers a tank.

import { Index, Show } from "solid-js";
import { hitPath } from "../../scene/layout.ts";
import { useSheet } from "../sheet.ts";
import type { SceneModel } from "./scene-model.ts";
import { stepsOfKey, type TankMover } from "./tank-mover.ts";

export function PartButton(props: {
  readonly scene: SceneModel;
  readonly mover: TankMover;
  readonly id: string;
  readonly name: string;
}) {
  const sheet = useSheet();
  const part = () => props.scene.part(props.id);
  const movable = () => props.mover.canMove(props.id);
  const open = () => sheet.looking.openPart(props.id);
  // On a phone the drawing is made anew over an open part: the focus goes on to that part.
  const openByKey = () => (sheet.looking.width() === "phone" ? sheet.edit.goTo(props.id) : open());
  const onKey = (event: KeyboardEvent): void => {
    const steps = movable() ? stepsOfKey(event.key, event.shiftKey) : null;
    if (steps !== null) props.mover.step(props.id, steps);
    else if (event.key === "Enter" || event.key === " ") openByKey();
    else return;
    event.preventDefault();
  };
  return (
    <Show when={part()}>
      {(drawn) => (
        // biome-ignore lint/a11y/useSemanticElements: no button element can stand within an SVG drawing
        <g
          class="part"
          classList={{ movable: movable() }}
          role="button"
          tabindex="0"
          aria-label={props.name}
          aria-current={sheet.looking.part() === props.id}
          aria-description={movable() ? "Arrow keys raise and lower it." : undefined}
          onKeyDown={onKey}
          onFocusOut={() => props.mover.leave()}
          onPointerDown={(event) => props.mover.down(props.id, event)}
          onPointerMove={(event) => props.mover.move(event)}
          onPointerUp={() => {
            if (!props.mover.up()) open();
          }}
          onPointerCancel={() => props.mover.up()}
        >
          <path class="hit" d={hitPath(drawn())} />
          <Index each={drawn().strokes}>{(d) => <path class="hit-stroke" d={d()} />}</Index>
          <rect
            class="focus"
            x={drawn().box.x - 3}
            y={drawn().box.y - 3}
            width={drawn().box.width + 6}
            height={drawn().box.height + 6}
            rx="3"
          />
        </g>
      )}
    </Show>
  );
}
