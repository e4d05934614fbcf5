// The drawing itself: the ground, each part with its water of the day, what was held, the discs of trouble.

import { createMemo, For, Index, Show } from "solid-js";
import { gradeLine, surfaceOn, waterShapes, waterWords } from "../../scene/day-water.ts";
import { PAINTED } from "../../scene/layout.ts";
import type { PlacedWords } from "../../scene/place.ts";
import { fitted, textWidth } from "../../scene/text-block.ts";
import { useSheet } from "../sheet.ts";
import { PartButton } from "./PartButton.tsx";
import type { SceneModel } from "./scene-model.ts";
import type { TankMover } from "./tank-mover.ts";

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

/** A tank as it was held, and its water on the same day: dashed. */
function Held(props: { readonly scene: SceneModel; readonly id: string }) {
  const outline = () => props.scene.layout().held.get(props.id);
  const level = createMemo(() => {
    const tank = props.scene.heldPlace()?.tanks.find(({ id }) => id === props.id);
    const water = props.scene.heldWaters().get(props.id);
    const vessels = outline()?.vessels;
    return tank && water && vessels ? surfaceOn(vessels, tank, water) : "";
  });
  return (
    <Show when={outline()}>
      {(was) => (
        <>
          <path class="held" d={was().shape.d} />
          <path class="held" d={level()} />
        </>
      )}
    </Show>
  );
}

/** How a part looks; it answers to nothing, the buttons over it do. */
export function Painted(props: { readonly scene: SceneModel; readonly id: string }) {
  const sheet = useSheet();
  const part = () => props.scene.part(props.id);
  return (
    <g classList={{ open: sheet.looking.part() === props.id }}>
      <Index each={part()?.shapes}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
      <Water scene={props.scene} id={props.id} />
      <Index each={part()?.walls}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
      <Held scene={props.scene} id={props.id} />
    </g>
  );
}

function Said(props: { readonly scene: SceneModel; readonly id: string }) {
  const live = useLive(props.scene, props.id);
  return (
    <Index each={props.scene.part(props.id)?.labels}>
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
  );
}

function Disc(props: { readonly scene: SceneModel; readonly id: string }) {
  const part = () => props.scene.part(props.id);
  return (
    <Show when={part()?.mark}>
      {(mark) => (
        <g class="mark" transform={`translate(${mark().x} ${mark().y})`}>
          <circle r="9.5" />
          <text y="4.4">{part()?.part.number ?? "!"}</text>
        </g>
      )}
    </Show>
  );
}

/** The open part's ground, so that it stands out. */
export function Wash(props: { readonly scene: SceneModel }) {
  const sheet = useSheet();
  const box = () => props.scene.part(sheet.looking.part() ?? "")?.box;
  return (
    <Show when={box()}>
      {(around) => (
        <rect
          class="wash"
          x={around().x - 7}
          y={around().y - 7}
          width={around().width + 14}
          height={around().height + 14}
          rx="4"
        />
      )}
    </Show>
  );
}

/** The height of the tank that is being dragged, under it. */
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

export function Ground(props: { readonly scene: SceneModel }) {
  return (
    <Show when={props.scene.layout().ground}>
      {(ground) => (
        <>
          <path class="ground" d={ground().area} />
          <path class="hatched" d={ground().area} fill="url(#soil)" />
        </>
      )}
    </Show>
  );
}

/** Everything that is drawn, from the back to the front, and over it what answers to a touch. */
export function Paper(props: { readonly scene: SceneModel; readonly mover: TankMover }) {
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
      <Ground scene={props.scene} />
      <Wash scene={props.scene} />
      <path class="ink" d={layout().ground?.line ?? ""} />
      {/* biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus; the buttons below say it all */}
      <g aria-hidden="true">
        <For each={layout().grades}>
          {(grade) => <path class="grade" d={gradeLine(layout(), grade, props.scene.waters())} />}
        </For>
        <For each={painted()}>{(id) => <Painted scene={props.scene} id={id} />}</For>
        <Index each={layout().front}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
        <For each={painted()}>{(id) => <Said scene={props.scene} id={id} />}</For>
        <For each={ids()}>{(id) => <Disc scene={props.scene} id={id} />}</For>
      </g>
      <For each={ids()}>
        {(id) => <PartButton scene={props.scene} mover={props.mover} id={id} name={names().get(id) ?? ""} />}
      </For>
      <Readout scene={props.scene} mover={props.mover} />
    </svg>
  );
}
