// The lie of the land: the place drawn from the side, heights to scale, each part leading to its card.

import { createMemo, For, Index, Show } from "solid-js";
import { isReady } from "../../graph/readers.ts";
import { gradeLine, waterShapes, waterWords } from "../../scene/day-water.ts";
import { hitPath, PAINTED } from "../../scene/layout.ts";
import type { PlacedWords } from "../../scene/place.ts";
import { fitted, textWidth } from "../../scene/text-block.ts";
import { useSheet } from "../sheet.ts";
import { DayBar } from "./DayBar.tsx";
import { DayNotes } from "./DayNotes.tsx";
import { createDayPlayer } from "./day-player.ts";
import { createElementWidth } from "./element-width.ts";
import { createScene, type SceneModel } from "./scene-model.ts";
import { createTankMover, stepsOfKey, type TankMover } from "./tank-mover.ts";

const WIDTH = 1180;

/** Words that follow the day, cut to the room that was kept for them. */
function useLive(scene: SceneModel, id: string): (words: PlacedWords) => string {
  const sheet = useSheet();
  return (words) => {
    const tank = scene.place().tanks.find((candidate) => candidate.id === id);
    const water = scene.waters().get(id);
    if (words.room === null || !tank?.vessel || !water) return words.text;
    const { long, short } = waterWords(water.volume, tank.vessel.volume, sheet.showOptions());
    const { size } = scene.layout().type;
    const room = words.room + 0.5;
    return textWidth(long, size, words.bold) <= room ? long : fitted(short, room, size, words.bold);
  };
}

function Water(props: { readonly scene: SceneModel; readonly id: string }) {
  const shapes = createMemo(() => {
    const tank = props.scene.place().tanks.find((candidate) => candidate.id === props.id);
    const spot = props.scene.layout().spots.get(props.id);
    const water = props.scene.waters().get(props.id);
    return tank && spot && water ? waterShapes(spot, tank, water) : null;
  });
  return (
    <Show when={shapes()}>
      {(water) => (
        <>
          <path class="water-area" d={water().area} />
          <path class="water-surface" d={water().surface} />
        </>
      )}
    </Show>
  );
}

/** How a part looks; it answers to nothing, the buttons over it do. */
function Painted(props: { readonly scene: SceneModel; readonly id: string }) {
  const part = () => props.scene.part(props.id);
  const live = useLive(props.scene, props.id);
  return (
    <g>
      <Index each={part()?.shapes}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
      <Water scene={props.scene} id={props.id} />
      <Index each={part()?.walls}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
      <Index each={part()?.labels}>
        {(label) => (
          <Index each={label().words}>
            {(words) => (
              <text
                class={[words().tone, words().bold ? "bold" : "", label().under ? "under" : ""].join(" ")}
                x={words().x}
                y={words().y}
              >
                {live(words())}
              </text>
            )}
          </Index>
        )}
      </Index>
    </g>
  );
}

function Mark(props: { readonly scene: SceneModel; readonly id: string }) {
  return (
    <Show when={props.scene.part(props.id)?.mark}>
      {(mark) => (
        <g transform={`translate(${mark().x} ${mark().y})`}>
          <circle class="mark" r="10" />
          <path class="mark-sign" d="M0,-5.5v6.5M0,4.6v.2" />
        </g>
      )}
    </Show>
  );
}

function PartButton(props: {
  readonly scene: SceneModel;
  readonly mover: TankMover;
  readonly id: string;
  readonly name: string;
}) {
  const sheet = useSheet();
  const part = () => props.scene.part(props.id);
  const movable = () => props.mover.canMove(props.id);
  const onKey = (event: KeyboardEvent): void => {
    const steps = movable() ? stepsOfKey(event.key, event.shiftKey) : null;
    if (steps !== null) props.mover.step(props.id, steps);
    else if (event.key === "Enter" || event.key === " ") sheet.edit.goTo(props.id);
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
          aria-description={movable() ? "Arrow keys raise and lower it." : undefined}
          onKeyDown={onKey}
          onFocusOut={() => props.mover.leave()}
          onPointerDown={(event) => props.mover.down(props.id, event)}
          onPointerMove={(event) => props.mover.move(event)}
          onPointerUp={() => {
            if (!props.mover.up()) sheet.edit.goTo(props.id);
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

/** The height of the tank that is being dragged, over it. */
function Readout(props: { readonly scene: SceneModel; readonly mover: TankMover }) {
  const at = () => props.scene.layout().spots.get(props.mover.moving() ?? "");
  const text = () => props.mover.readout(props.mover.moving() ?? "");
  const width = () => textWidth(text(), props.scene.layout().type.size, true) + 12;
  const left = () => {
    const spot = at();
    const middle = spot ? spot.body.x + spot.body.width / 2 : 0;
    return Math.max(2, Math.min(middle - width() / 2, props.scene.layout().width - width() - 2));
  };
  return (
    <Show when={at()}>
      {(spot) => (
        <g class="readout">
          <rect x={left()} y={spot().floorY + 6} width={width()} height="24" rx="2" />
          <text class="bold" x={left() + width() / 2} y={spot().floorY + 23}>
            {text()}
          </text>
        </g>
      )}
    </Show>
  );
}

function Paper(props: { readonly scene: SceneModel; readonly mover: TankMover }) {
  const layout = () => props.scene.layout();
  const ids = createMemo<readonly string[]>((before) => {
    const next = layout().parts.map((part) => part.id);
    return before && next.join() === before.join() ? before : next;
  });
  const shapes = createMemo(() => new Map(layout().parts.map(({ id, shape }) => [id, shape])));
  const painted = () => PAINTED.flatMap((shape) => ids().filter((id) => shapes().get(id) === shape));
  const names = createMemo(() => new Map(props.scene.spoken().map(({ id, text }) => [id, text])));
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: the section names it, and a title would pop up over every part
    <svg
      viewBox={`0 0 ${layout().width} ${layout().height}`}
      width={layout().width}
      height={layout().height}
      font-size={`${layout().type.size}px`}
    >
      <defs>
        <pattern id="soil" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path class="hatch" d="M0,0v7" />
        </pattern>
      </defs>
      <Index each={layout().grounds}>
        {(ground) => (
          <>
            <path class="ground" d={ground().area} />
            <path class="hatched" d={ground().area} fill="url(#soil)" />
            <path class="ink" d={ground().line} />
          </>
        )}
      </Index>
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus; the buttons below say it all */}
      <g aria-hidden="true">
        <For each={layout().grades}>
          {(grade) => <path class="grade" d={gradeLine(layout(), grade, props.scene.waters())} />}
        </For>
        <For each={painted()}>{(id) => <Painted scene={props.scene} id={id} />}</For>
        <Index each={layout().front}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
        <For each={ids()}>{(id) => <Mark scene={props.scene} id={id} />}</For>
      </g>
      <For each={ids()}>
        {(id) => <PartButton scene={props.scene} mover={props.mover} id={id} name={names().get(id) ?? ""} />}
      </For>
      <Readout scene={props.scene} mover={props.mover} />
    </svg>
  );
}

function InWords(props: { readonly scene: SceneModel }) {
  return (
    <details class="in-words width">
      <summary>The same in words</summary>
      <ul>
        <For each={props.scene.spoken()}>{(sentence) => <li>{sentence.text}</li>}</For>
      </ul>
    </details>
  );
}

export function Drawing() {
  const sheet = useSheet();
  const { width, watch } = createElementWidth(WIDTH);
  const dipped = createMemo(() =>
    sheet.worksheet().cards.some(({ id }) => isReady(sheet.result(`${id}.level_today`))),
  );
  const player = createDayPlayer(sheet, dipped);
  const model = createScene(sheet, player.day, width);
  const mover = createTankMover(sheet, model);
  const empty = () => model.layout().parts.length === 0;
  return (
    <section
      class="drawing"
      aria-label="The place from the side; every part leads to its card"
      classList={{ old: sheet.working() }}
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
        {mover.moving() ? mover.readout(mover.moving() ?? "") : ""}
      </p>
      <Show when={!empty()}>
        <Show when={sheet.stored() && model.place().tanks.length > 0}>
          <DayBar player={player} dipped={dipped()} />
          <DayNotes player={player} />
        </Show>
        <Show when={sheet.givesOut()}>{(said) => <p class="gives-out width">{said()}</p>}</Show>
        <p class="key-line width">
          Heights are to scale, distances are not.
          <Show when={model.layout().grades.length > 0}> Dashed: how high the water could stand.</Show> Drag a
          tank to raise or lower it.
        </p>
        <InWords scene={model} />
      </Show>
    </section>
  );
}
