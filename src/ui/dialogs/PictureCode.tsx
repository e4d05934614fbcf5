// An address as a picture that another phone reads.

import { generate } from "lean-qr";
import { createMemo, type JSX, Show } from "solid-js";

/** Characters that a phone still reads off another phone's glass. */
const MOST_CHARACTERS = 2200;
const MARGIN = 4;

/** Dark squares as one path, and how many squares a side has. */
function drawn(text: string): { readonly path: string; readonly size: number } | null {
  if (text.length > MOST_CHARACTERS) return null;
  const code = generate(text);
  let path = "";
  for (let y = 0; y < code.size; y++) {
    for (let x = 0; x < code.size; x++) if (code.get(x, y)) path += `M${x} ${y}h1v1h-1z`;
  }
  return { path, size: code.size };
}

export function PictureCode(props: {
  readonly text: string;
  /** What stands there where the text is too long for a code. */
  readonly tooLong: JSX.Element;
}) {
  const code = createMemo(() => drawn(props.text));
  return (
    <Show when={code()} fallback={props.tooLong}>
      {(made) => (
        <svg
          class="code"
          viewBox={`${-MARGIN} ${-MARGIN} ${made().size + 2 * MARGIN} ${made().size + 2 * MARGIN}`}
          role="img"
          aria-label="The link as a picture code"
        >
          <rect
            x={-MARGIN}
            y={-MARGIN}
            width={made().size + 2 * MARGIN}
            height={made().size + 2 * MARGIN}
            fill="#fff"
          />
          <path d={made().path} fill="#000" />
        </svg>
      )}
    </Show>
  );
}
