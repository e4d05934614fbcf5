// A strip with a tank's volumes at their true heights, to print, cut and glue to a stick.

import { createMemo, createSignal, For, Show } from "solid-js";
import { Portal } from "solid-js/web";
import type { Card } from "../../document/worksheet.ts";
import { isReady, valueIn } from "../../graph/readers.ts";
import { type DipPiece, dipStripOf } from "../../scene/dip-strip.ts";
import type { ToldStick } from "../../telling/stick.ts";
import { unitFor, unitLabel } from "../../units/show.ts";
import { useSeasonAnswer } from "../field/use-season-answer.ts";
import { useSheet } from "../sheet.ts";

/** Of the strip, of a mark, of a mark with a number, and of the line to check the print by [mm]. */
const WIDTH = 34;
const SHORT = 9;
const LONG = 16;
const CHECK = 100;

function Piece(props: { readonly piece: DipPiece; readonly unit: string; readonly name: string }) {
  const { piece } = props;
  return (
    <svg
      width={`${WIDTH}mm`}
      height={`${piece.height}mm`}
      viewBox={`0 0 ${WIDTH} ${piece.height}`}
      role="img"
      aria-label={props.name}
    >
      <rect class="edge" x="0" y="0" width={WIDTH} height={piece.height} />
      <For each={piece.marks}>
        {(mark) => (
          <>
            <line class="mark" x1="0" x2={mark.label === null ? SHORT : LONG} y1={mark.y} y2={mark.y} />
            <Show when={mark.label}>
              <text x={LONG + 1} y={Math.min(piece.height - 0.5, Math.max(4, mark.y + 1.4))}>
                {mark.label}
              </text>
            </Show>
          </>
        )}
      </For>
      <For each={piece.months}>
        {(mark) => (
          <>
            <line class="mark month" x1={WIDTH - SHORT} x2={WIDTH} y1={mark.y} y2={mark.y} />
            <text class="month" x={WIDTH - 1} y={Math.max(4, mark.y - 0.8)}>
              {mark.label}
            </text>
          </>
        )}
      </For>
    </svg>
  );
}

/** What the marks of the months mean, how they were found, and how each past year would have gone by them. */
function Stick(props: { readonly told: ToldStick }) {
  return (
    <>
      <p>
        <b>{props.told.rule}</b> {props.told.over}
      </p>
      <p>{props.told.tuned}</p>
      <table>
        <thead>
          <tr>
            <th scope="col">Season</th>
            <th scope="col">Lost by these marks</th>
            <th scope="col">As the sheet waters</th>
          </tr>
        </thead>
        <tbody>
          <For each={props.told.years}>
            {(year) => (
              <tr>
                <th scope="row">{year.year}</th>
                <td>{year.loss}</td>
                <td>{year.plain}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </>
  );
}

function Sheets(props: { readonly card: Card; readonly row: string }) {
  const sheet = useSheet();
  const stick = useSeasonAnswer((answers) => answers.stick(props.card.id));
  const strip = createMemo(() => {
    const result = sheet.result(`${props.card.id}.${props.row}`);
    const unit = unitFor("volume", sheet.showOptions().units);
    return isReady(result) ? dipStripOf(valueIn(result), unit, stick.answer()?.marks) : null;
  });
  return (
    <Show when={strip()} fallback={<p>What this tank holds is not known yet.</p>}>
      {(whole) => (
        <>
          <p>
            Marks in {unitLabel(whole().unit)}, joined tanks together. Print it at its actual size, not fitted
            to the page, and measure this line: it must be {CHECK} mm long.
          </p>
          <svg
            class="check"
            width={`${CHECK + 2}mm`}
            height="6mm"
            viewBox={`-1 0 ${CHECK + 2} 6`}
            role="img"
            aria-label={`${CHECK} mm`}
          >
            <path class="mark" d={`M0 1v4M0 3h${CHECK}M${CHECK} 1v4`} />
          </svg>
          <p>
            Cut along the edges. Glue the pieces on end to end, the first with its 0 at the end that stands on
            the floor.
          </p>
          <Show when={stick.answer()} fallback={<p>{stick.failure()}</p>}>
            {(told) => <Stick told={told()} />}
          </Show>
          <ol class="pieces">
            <For each={whole().pieces}>
              {(piece, index) => (
                <li>
                  <Piece
                    piece={piece}
                    unit={whole().unit}
                    name={`${props.card.title}, piece ${index() + 1} of ${whole().pieces.length}`}
                  />
                  <span>
                    {props.card.title}, piece {index() + 1} of {whole().pieces.length}
                  </span>
                </li>
              )}
            </For>
          </ol>
        </>
      )}
    </Show>
  );
}

/** The button of a card whose kind has a vessel, and the strip behind it. */
export function DipStrip(props: { readonly card: Card; readonly row: string; readonly onOpen: () => void }) {
  const [open, setOpen] = createSignal(false);
  return (
    <>
      <button
        type="button"
        onClick={() => {
          props.onOpen();
          setOpen(true);
        }}
      >
        Dip-stick strip
      </button>
      <Show when={open()}>
        <Portal>
          <dialog
            class="dip sheet-of-paper"
            aria-label={`Dip-stick strip of ${props.card.title}`}
            ref={(element) => queueMicrotask(() => element.showModal())}
            onClose={() => setOpen(false)}
          >
            <form method="dialog">
              <button type="button" class="tool" onClick={() => window.print()}>
                Print the strip
              </button>
              <button type="submit" class="close">
                Close
              </button>
            </form>
            <h2>Dip-stick strip: {props.card.title}</h2>
            <Sheets card={props.card} row={props.row} />
          </dialog>
        </Portal>
      </Show>
    </>
  );
}
