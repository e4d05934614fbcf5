// A tiny drawing of each kind of thing, in one ink line.

import { Show } from "solid-js";
import { useSheet } from "../sheet.ts";

export function Icon(props: { readonly kind: string }) {
  const sheet = useSheet();
  const drawing = () => sheet.kinds[props.kind]?.icon;
  const color = () => drawing()?.color;
  return (
    <svg
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="2"
      stroke-linecap="round"
      stroke-linejoin="round"
      aria-hidden="true"
    >
      <Show when={drawing()}>
        {(shape) => (
          <>
            <path d={shape().ink} />
            <path d={shape().tone ?? ""} stroke={color() ? `var(--${color()})` : "currentColor"} />
          </>
        )}
      </Show>
    </svg>
  );
}
