// A tank that is dipped with a finger: its water, its depth and gallons as they move, noted on lifting.

import { createSignal, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { isReady, valueIn } from "../../graph/readers.ts";
import { type Dip, type DipUnit, dipAt, dipBy, dipMoved } from "../../scene/dip-level.ts";
import { showQuantity } from "../../units/show.ts";
import { useSheet } from "../sheet.ts";

type Vessel = Parameters<typeof dipAt>[0];

/** Height of a column of water as field.css draws it [px]. */
const DRAWN = 190;

/** Keys that move the level, by how many steps. */
const KEYS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: 6,
  PageDown: -6,
};

export function FieldTank(props: { readonly card: Card; readonly onNote: (card: Card, dip: Dip) => void }) {
  const sheet = useSheet();
  const unit = (): DipUnit => (sheet.worksheet().units === "metric" ? "cm" : "in");
  const vessel = () => valueIn(sheet.result(`${props.card.id}.vessel`)) as Vessel | null;
  const level = () => sheet.result(`${props.card.id}.level_today`);
  const isDipped = () => isReady(level());
  const [moving, setMoving] = createSignal<Dip | null>(null);
  const dipOf = (held: Vessel): Dip =>
    moving() ?? dipAt(held, isDipped() ? Number(valueIn(level())) : held.height / 2, unit());
  const gallons = (held: Vessel) => showQuantity(dipOf(held).volume, "volume", sheet.showOptions());
  let from: { readonly y: number; readonly dip: Dip } | null = null;
  const lift = (): void => {
    const dip = moving();
    from = null;
    setMoving(null);
    if (dip) props.onNote(props.card, dip);
  };
  const press = (event: KeyboardEvent, held: Vessel): void => {
    const by = KEYS[event.key];
    if (event.key === "Escape" && moving()) {
      event.stopPropagation();
      event.preventDefault();
      setMoving(null);
    } else if ((event.key === "Enter" || event.key === " ") && moving()) {
      event.preventDefault();
      lift();
    } else if (by !== undefined) {
      event.preventDefault();
      setMoving(dipBy(held, dipOf(held), by));
    }
  };
  return (
    <li class="field-tank">
      <h3>{props.card.title}</h3>
      <Show when={vessel()} fallback={<p>Its size is not known.</p>}>
        {(held) => (
          <>
            <p class="depth">
              {dipOf(held()).value} <span>{unit()}</span>
            </p>
            <p class="gallons">{gallons(held())}</p>
            <p class="aside">{isDipped() ? sheet.shown(`${props.card.id}.dipped_on`) : "not dipped"}</p>
            <div
              class="dip-column"
              classList={{ moving: moving() !== null, unknown: !isDipped() && moving() === null }}
            >
              <div class="water" style={{ height: `${dipOf(held()).share * 100}%` }} />
              {/* biome-ignore lint/a11y/useFocusableInteractive: it has a tabindex, in the spelling of this framework */}
              <div
                class="grip"
                role="slider"
                tabindex="0"
                aria-label={`Depth in ${props.card.title}`}
                aria-orientation="vertical"
                aria-valuemin={0}
                aria-valuemax={dipAt(held(), held().height, unit()).value}
                aria-valuenow={dipOf(held()).value}
                aria-valuetext={`${dipOf(held()).value} ${unit()}, ${gallons(held())}`}
                style={{ bottom: `${dipOf(held()).share * 100}%` }}
                onPointerDown={(event) => {
                  event.currentTarget.setPointerCapture(event.pointerId);
                  from = { y: event.clientY, dip: dipOf(held()) };
                }}
                onPointerMove={(event) => {
                  if (from) setMoving(dipMoved(held(), from.dip, (from.y - event.clientY) / DRAWN));
                }}
                onPointerUp={lift}
                onPointerCancel={() => {
                  from = null;
                  setMoving(null);
                }}
                onKeyDown={(event) => press(event, held())}
                onBlur={() => setMoving(null)}
              >
                <i aria-hidden="true" />
              </div>
            </div>
          </>
        )}
      </Show>
    </li>
  );
}
