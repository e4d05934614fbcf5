// The place as it is told so far, for looking at only: each thing as it will be drawn, the one asked about washed.

import { For, Index } from "solid-js";
import { PAINTED } from "../../scene/layout.ts";
import { createElementSize } from "../charts/element-size.ts";
import { Ground, Painted, Wash } from "../charts/Paper.tsx";
import { createScene } from "../charts/scene-model.ts";
import { type Sheet, SheetContext, useSheet } from "../sheet.ts";
import type { Preview } from "./beginning.ts";

const SIZE = { width: 390, height: 132 };

/** The sheet as a picture of it sees it: nothing in hand, nothing held, no words, one thing washed. */
function seenOf(sheet: Sheet, place: () => Preview, washed: () => string | null): Sheet {
  const none = () => null;
  return {
    ...sheet,
    worksheet: () => place().worksheet,
    result: (id) => place().result(id),
    shown: () => "",
    troubles: () => [],
    stored: none,
    held: () => false,
    looking: { ...sheet.looking, part: washed, inHand: none, width: () => "phone" },
  };
}

export function Sketch(props: { readonly place: Preview; readonly washed: string | null }) {
  const { size, watch } = createElementSize(SIZE);
  const seen = seenOf(
    useSheet(),
    () => props.place,
    () => props.washed,
  );
  const scene = createScene(seen, () => null, size);
  const layout = () => scene.layout();
  const painted = () =>
    PAINTED.flatMap((shape) =>
      layout()
        .parts.filter((part) => part.shape === shape)
        .map(({ id }) => id),
    );
  return (
    <div class="drawing sketch" aria-hidden="true">
      <div class="paper" ref={watch}>
        <SheetContext.Provider value={seen}>
          {/* biome-ignore lint/a11y/noSvgWithoutTitle: the counts beside it, and the question below it, say what it shows */}
          <svg
            viewBox={`0 0 ${layout().width} ${layout().height}`}
            width={layout().width}
            height={layout().height}
          >
            <Ground scene={scene} />
            <Wash scene={scene} />
            <path class="ink" d={layout().ground?.line ?? ""} />
            <For each={painted()}>{(id) => <Painted scene={scene} id={id} />}</For>
            <Index each={layout().front}>{(shape) => <path class={shape().look} d={shape().d} />}</Index>
          </svg>
        </SheetContext.Provider>
      </div>
    </div>
  );
}
