// A value in the columns of the rows: its number, and its unit beside it where that is short and the number is one.

import { createMemo } from "solid-js";
import type { Tone } from "../../telling/asked.ts";

/** A number and a unit that fits its column; "1 h 48 min" and "per square foot" stay in one piece. */
const ONE_UNIT = /^([^\u00a0]*\d[^\u00a0]*)\u00a0([^\u00a0]{1,7})$/;

/** A number of things, with no unit at all. */
const PLAIN = /^[\d.,\s−-]+$/;

export function Shown(props: {
  readonly text: string;
  readonly none?: boolean;
  readonly old?: boolean;
  readonly tone?: Tone | undefined;
}) {
  const parts = createMemo(() => ONE_UNIT.exec(props.text));
  const isWhole = () => parts() === null && !PLAIN.test(props.text);
  return (
    <span
      class="value"
      classList={{ none: props.none === true, old: props.old === true, whole: isWhole() }}
      data-tone={props.none ? undefined : props.tone}
    >
      {/* The space between them is in the first: by itself it would be a column of its own. */}
      <span class="figure-part">{parts() ? `${parts()?.[1]}\u00a0` : props.text}</span>
      <span class="unit">{parts()?.[2] ?? ""}</span>
    </span>
  );
}
