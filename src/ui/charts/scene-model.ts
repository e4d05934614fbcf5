// What the drawing shows now: the place out of the results, its layout, the water of the day, and the same in words.

import { type Accessor, createMemo, createSignal, untrack } from "solid-js";
import { shownIn, valueIn } from "../../graph/readers.ts";
import type { Result } from "../../graph/types.ts";
import type { WeekSpan } from "../../kinds/season/week.ts";
import { type Water, waterOf, waterToday } from "../../scene/day-water.ts";
import { type DrawnPart, type Kept, type Layout, layoutPlace } from "../../scene/layout.ts";
import type { Place } from "../../scene/place.ts";
import { readPlace, type SceneInput } from "../../scene/read-place.ts";
import { type Spoken, spoken } from "../../scene/spoken.ts";
import type { Sheet } from "../sheet.ts";
import type { Size } from "./element-size.ts";

const NARROWEST = 240;
const LOWEST = 90;

type Ask = (id: string) => Result | undefined;

/** Water in the tanks as the notes come to it by now; null while that is worked out. */
function carriedOn(ask: Ask): Readonly<Record<string, number>> | null {
  const span = valueIn(ask("season.week_span")) as WeekSpan | null;
  return span?.now ?? null;
}

export type SceneModel = {
  readonly place: Accessor<Place>;
  readonly layout: Accessor<Layout>;
  readonly part: (id: string) => DrawnPart | undefined;
  readonly waters: Accessor<ReadonlyMap<string, Water>>;
  /** Of the same day as it was held; nothing while nothing is held. */
  readonly heldWaters: Accessor<ReadonlyMap<string, Water>>;
  readonly heldPlace: Accessor<Place | null>;
  readonly spoken: Accessor<readonly Spoken[]>;
  /** Keeps the scales while a tank is dragged. */
  readonly keepScale: (keep: boolean) => void;
};

/** A tank's water on a day of the record, by whoever is asked. */
function waterOn(ask: Ask, day: number, first: number): (id: string) => number | null {
  return (id) => {
    const value = shownIn(ask(`${id}.stored`));
    return value instanceof Float64Array ? (value[day - first] ?? null) : null;
  };
}

function createHeld(
  sheet: Sheet,
  asked: Accessor<SceneInput>,
  dayWater: (place: Place, ask: Ask) => ReadonlyMap<string, Water>,
) {
  const place = createMemo<Place | null>(() => {
    if (!sheet.held()) return null;
    const input = { ...untrack(asked), cards: sheet.heldCards(), result: sheet.heldResult, troubles: [] };
    return readPlace({ ...input, shown: () => "" });
  });
  const waters = createMemo(() => {
    const held = place();
    return held ? dayWater(held, sheet.heldResult) : new Map<string, Water>();
  });
  return { place, waters };
}

/**
 * @param day of the record that is shown [days since 1970-01-01]; null: as it stands today
 * @param size of the paper [px]
 */
export function createScene(sheet: Sheet, day: Accessor<number | null>, size: Accessor<Size>): SceneModel {
  const [dragged, setDragged] = createSignal(false);
  const asked = createMemo<SceneInput>(() => ({
    kinds: sheet.kinds,
    cards: sheet.worksheet().cards,
    result: sheet.result,
    shown: sheet.shown,
    troubles: sheet.troubles(),
    options: sheet.showOptions(),
  }));
  const dayWater = (place: Place, ask: Ask): ReadonlyMap<string, Water> => {
    const [on, first] = [day(), sheet.stored()?.firstDay];
    if (on === null || first === undefined) return waterToday(place, carriedOn(ask));
    return waterOf(place, waterOn(ask, on, first));
  };
  const place = createMemo(() => readPlace(asked()));
  const held = createHeld(sheet, asked, dayWater);
  const layout = createMemo<Layout>((before) => {
    const { width, height } = size();
    const isSame = before?.width === width && before.height === height;
    const kept: Kept | null = (dragged() || sheet.moving()) && before && isSame ? before.kept : null;
    return layoutPlace(place(), {
      width: Math.max(NARROWEST, width),
      height: Math.max(LOWEST, height),
      small: sheet.looking.width() === "phone",
      open: sheet.looking.part(),
      held: held.place(),
      kept,
    });
  });
  const parts = createMemo(() => new Map(layout().parts.map((part) => [part.id, part])));
  const waters = createMemo(() => dayWater(place(), sheet.result));
  const datum = () => sheet.worksheet().datum || "height nought";
  return {
    place,
    layout,
    part: (id) => parts().get(id),
    waters,
    heldWaters: held.waters,
    heldPlace: held.place,
    spoken: createMemo(() => spoken({ asked: asked(), place: place(), waters: waters(), datum: datum() })),
    keepScale: setDragged,
  };
}
