// The words under the axis of the number in hand: its ends or what there is to choose among, what is held, what is best.

import { createMemo, Index } from "solid-js";
import { type AxisWord, placeAxisWords } from "../../scene/axis-words.ts";
import { bestOf, betterOf } from "../../telling/plans.ts";
import { createElementWidth } from "../charts/element-width.ts";
import { useSheet } from "../sheet.ts";
import type { SpanInHand } from "./doubting.ts";
import type { Curve, Hand } from "./hand.ts";

/** From either edge to the axis's ends: half of the slider's thumb [px]. */
export const INSET = 17;
const WORD_SIZE = 13;
/** A line of words; words to choose among have two, so that each dot is named [px]. */
export const WORD_ROW = 22;
export const WORD_ROWS = 2;

/** Of words to choose among those that are best for the drawn answer, all of them tried. */
function bestPlaces({ state, panels }: Curve): readonly number[] {
  const [panel] = panels;
  const better = panel && state === "ready" ? betterOf(panel.answer) : null;
  if (!panel || !better) return [];
  const { points } = panel;
  const best = bestOf(
    points.map(({ answer }) => answer),
    points.map(({ said }) => said),
    better,
  );
  return points.filter((_, at) => best.has(at)).map(({ place }) => place);
}

/** The words of an axis of words, those first that are looked for: what stands there, what was held, what is best. */
function wordsInOrder({ place, axis, before, curve }: Hand): readonly AxisWord[] {
  const best = new Set(bestPlaces(curve()));
  const [here, was] = [place(), before()];
  const marks = (axis()?.marks ?? []).map((mark): AxisWord & { readonly first: number } => {
    const text = mark.place === was?.place ? was.text : mark.text;
    const said = best.has(mark.place) ? `${text}: best` : text;
    if (mark.place === here) return { ...mark, text: said, look: "here", first: 0 };
    if (mark.place === was?.place) return { ...mark, text: said, look: "before", first: 1 };
    return best.has(mark.place)
      ? { ...mark, text: said, look: "enough", first: 2 }
      : { ...mark, look: "end", first: 3 };
  });
  return marks.sort((a, b) => a.first - b.first);
}

/** The ends of an axis, what is held, and from where on it is enough. */
function endsInOrder({ axis, before, curve }: Hand, span: SpanInHand | null): readonly AxisWord[] {
  const was = before();
  const enough = curve().panels[0]?.enough ?? null;
  const isAtEnough = enough !== null && was?.place === enough.place;
  const all: readonly (AxisWord | null)[] = [
    ...(span ? [span.low, span.high].map((end) => ({ ...end, look: "doubt" })) : []),
    enough && { ...enough, look: "enough" },
    was && !isAtEnough ? { place: was.place, text: was.text, look: "before" } : null,
    ...(axis()?.marks ?? []).map((mark) => ({ ...mark, look: "end" })),
  ];
  return all.filter((mark) => mark !== null);
}

/**
 * Ends or words of the axis, what is held, and from where on it is enough.
 *
 * @param props.lines that words to choose among may take
 */
export function AxisWords(props: { readonly lines: number }) {
  const { hand, doubting } = useSheet();
  const { width, watch } = createElementWidth(360);
  const isWords = () => hand.axis()?.form === "words";
  const words = createMemo(() =>
    placeAxisWords(
      isWords() ? wordsInOrder(hand) : endsInOrder(hand, doubting()?.span() ?? null),
      width(),
      INSET,
      WORD_SIZE,
      isWords() ? props.lines : 1,
    ),
  );
  return (
    <p class="axis-words" classList={{ two: isWords() && props.lines > 1 }} ref={watch}>
      <Index each={words()}>
        {(word) => (
          <span class={word().look} style={{ left: `${word().left}px`, top: `${word().row * WORD_ROW}px` }}>
            {word().text}
          </span>
        )}
      </Index>
    </p>
  );
}
