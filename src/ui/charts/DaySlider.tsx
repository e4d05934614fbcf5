// The line over a chart that reads a day: dragged, or with arrow keys; the whole chart is its track.

import { createSignal } from "solid-js";
import type { Frame } from "../../scene/plot-marks.ts";
import type { Year } from "../../scene/stored-water.ts";
import { textWidth } from "../../scene/text-block.ts";

const WEEK = 7;
const MONTH = 30;
/** So far sideways a finger means the day [px]; so little moved it has only pointed. */
const SIDEWAYS = 6;
const STILL = 10;

const within = (day: number, { from, to }: Pick<Year, "from" | "to">): number =>
  Math.max(from, Math.min(to, day));

const stepOf = (key: string, { from, to }: Pick<Year, "from" | "to">, day: number): number | null => {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: day + 1,
    ArrowUp: day + 1,
    ArrowLeft: day - 1,
    ArrowDown: day - 1,
    PageUp: day + MONTH,
    PageDown: day - MONTH,
    Home: from,
    End: to,
  };
  const wished = steps[key];
  return wished === undefined ? null : within(wished, { from, to });
};

/** The day that a key leads to; a week at a time with the shift key. Null: no key of these. */
function dayByKey(
  { key, shiftKey }: KeyboardEvent,
  span: Pick<Year, "from" | "to">,
  day: number,
): number | null {
  const next = stepOf(key, span, day);
  return next !== null && shiftKey ? within(day + (next - day) * WEEK, span) : next;
}

/** Where words stand beside the ring: right of it, left where there is no room, at the end where there is neither. */
function wordsAt(
  label: string,
  x: number,
  width: number,
): { readonly x: number; readonly anchor: "start" | "end" } {
  const room = textWidth(label, 13, true) + 15;
  if (x + room <= width) return { x: x + 13, anchor: "start" };
  return { x: x - room >= 0 ? x - 13 : width, anchor: "end" };
}

/** The line at the day with its ring; the whole chart is its track. */
export function DaySlider(props: {
  readonly frame: Frame;
  /** First and last day. */
  readonly span: Pick<Year, "from" | "to">;
  readonly day: number;
  readonly name: string;
  /** What stands beside the ring, and what is said of the day. */
  readonly label: string;
  readonly said: string;
  readonly onDay: (day: number) => void;
}) {
  const x = () => props.frame.across(props.day + 0.5);
  const words = () => wordsAt(props.label, x(), props.frame.width);
  const [dragging, setDragging] = createSignal(false);
  /** Where a finger was put down that has not yet moved sideways: it may only mean to scroll the page. */
  let touched: { readonly x: number; readonly y: number } | null = null;
  const letGo = (): void => {
    touched = null;
    setDragging(false);
  };
  const isStill = ({ clientX, clientY }: PointerEvent): boolean =>
    touched !== null && Math.hypot(clientX - touched.x, clientY - touched.y) <= STILL;
  const isSideways = ({ clientX, clientY }: PointerEvent): boolean => {
    const [across, down] = [
      Math.abs(clientX - (touched?.x ?? clientX)),
      Math.abs(clientY - (touched?.y ?? clientY)),
    ];
    return across > SIDEWAYS && across > down;
  };
  const toPointer = (event: PointerEvent & { readonly currentTarget: SVGElement }): void => {
    const svg = event.currentTarget.ownerSVGElement;
    const box = svg?.getBoundingClientRect();
    if (!box || box.width === 0) return;
    const at = ((event.clientX - box.left) / box.width) * props.frame.width;
    const day = Math.floor(props.frame.atX(at));
    props.onDay(within(day, props.span));
  };
  return (
    <g
      role="slider"
      class="day"
      tabindex="0"
      aria-label={props.name}
      aria-valuemin={props.span.from}
      aria-valuemax={props.span.to}
      aria-valuenow={props.day}
      aria-valuetext={props.said}
      onKeyDown={(event) => {
        const next = dayByKey(event, props.span, props.day);
        if (next === null) return;
        event.preventDefault();
        props.onDay(next);
      }}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        if (event.pointerType === "touch") touched = { x: event.clientX, y: event.clientY };
        else {
          setDragging(true);
          toPointer(event);
        }
      }}
      onPointerMove={(event) => {
        if (touched && isSideways(event)) {
          touched = null;
          setDragging(true);
        }
        if (dragging()) toPointer(event);
      }}
      onPointerUp={(event) => {
        // A finger that was lifted where it was put down points at a day; one that scrolled is called off instead.
        if (touched && isStill(event)) toPointer(event);
        letGo();
      }}
      onPointerCancel={letGo}
    >
      <rect class="hit" x="0" y="-18" width={props.frame.width} height={props.frame.height + 40} />
      <line x1={x()} x2={x()} y1="-4" y2={props.frame.height} />
      <circle cx={x()} cy="-9" r="5.5" />
      <text class="date" x={words().x} y="-4.5" text-anchor={words().anchor}>
        {props.label}
      </text>
    </g>
  );
}
