// A column that is read with a finger: the level follows the finger's movement and is noted on lifting; a touch alone changes nothing.

import { createSignal, For, Show } from "solid-js";
import {
  type Level,
  levelAt,
  levelBy,
  levelMoved,
  marksOf,
  mostOf,
  type Stick,
} from "../../scene/dip-level.ts";

/** A level noted before, as a share of the height, drawn dashed. */
export type Dashed = { readonly share: number };

/** Keys that move the level, by how many steps. */
const KEYS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: 6,
  PageDown: -6,
};

/** A thumb that rests moves by less than so much [px]. */
const REST = 5;

/** A level while it is moved: by a finger from where it was taken, or by keys. */
export function createMoving(stick: () => Stick, resting: () => Level, onNote: (level: Level) => void) {
  const [moving, setMoving] = createSignal<Level | null>(null);
  const level = () => moving() ?? resting();
  let from: { y: number; readonly level: Level; taken: boolean } | null = null;
  const drop = (): void => {
    from = null;
    setMoving(null);
  };
  const lift = (): void => {
    const held = moving();
    drop();
    if (held) onNote(held);
  };
  const finger = {
    down: (y: number): void => {
      from = { y, level: level(), taken: false };
    },
    /** @param height of the column as it is drawn [px] */
    move: (y: number, height: number): void => {
      if (!from) return;
      if (!from.taken && Math.abs(y - from.y) < REST) return;
      // From where it left its rest, not from where it was put down: the level never jumps.
      if (!from.taken) from = { ...from, y: from.y + Math.sign(y - from.y) * REST, taken: true };
      setMoving(levelMoved(stick(), from.level, (from.y - y) / height));
    },
  };
  const press = (event: KeyboardEvent): void => {
    const by = KEYS[event.key];
    if (event.key === "Escape" && moving()) {
      // It puts back what was there, and does not leave the page.
      event.stopPropagation();
      setMoving(null);
    } else if ((event.key === "Enter" || event.key === " ") && moving()) lift();
    else if (by !== undefined) setMoving(levelBy(stick(), level(), by));
    else return;
    event.preventDefault();
  };
  return { moving, level, finger, drop, lift, press };
}

export type Moving = ReturnType<typeof createMoving>;

export const atRest = (stick: Stick, depth: number | null, unknown: number): Level =>
  levelAt(stick, depth ?? stick.height * unknown);

/** So near to the water's line its own number would be struck through [share of the height]. */
const CROSSED = 0.05;

export function Column(props: {
  /** Spoken name, and the value in words. */
  readonly name: string;
  readonly said: string;
  readonly stick: Stick;
  readonly moving: Moving;
  /** Whether nobody ever noted a level: there is no water to draw. */
  readonly unknown: boolean;
  readonly dashed: Dashed | null;
}) {
  let column: HTMLDivElement | undefined;
  const level = () => props.moving.level();
  const isMoving = () => props.moving.moving() !== null;
  return (
    <div
      class="dip-column"
      ref={column}
      classList={{ moving: isMoving(), unknown: props.unknown && !isMoving() }}
    >
      <div class="water" style={{ height: `${level().share * 100}%` }} />
      <For each={marksOf(props.stick)}>
        {(mark) => (
          <span class="mark" aria-hidden="true" style={{ bottom: `${mark.share * 100}%` }}>
            {Math.abs(mark.share - level().share) < CROSSED ? "" : mark.label}
          </span>
        )}
      </For>
      <Show when={props.dashed}>
        {(dashed) => <i class="dashed" aria-hidden="true" style={{ bottom: `${dashed().share * 100}%` }} />}
      </Show>
      {/* biome-ignore lint/a11y/useFocusableInteractive: it has a tabindex, in the spelling of this framework */}
      <div
        class="grip"
        role="slider"
        tabindex="0"
        aria-label={props.name}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={mostOf(props.stick)}
        aria-valuenow={level().value}
        aria-valuetext={props.said}
        style={{ bottom: `${level().share * 100}%` }}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          props.moving.finger.down(event.clientY);
        }}
        onPointerMove={(event) => props.moving.finger.move(event.clientY, column?.clientHeight ?? 1)}
        onPointerUp={() => props.moving.lift()}
        onPointerCancel={() => props.moving.drop()}
        onKeyDown={(event) => props.moving.press(event)}
        onBlur={() => props.moving.drop()}
      >
        <i aria-hidden="true" />
      </div>
    </div>
  );
}
