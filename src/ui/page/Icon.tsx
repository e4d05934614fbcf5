// A tiny drawing of each kind of thing, in one ink line.

import { Show } from "solid-js";
import type { Icon as Drawing } from "../../kinds/kind.ts";
import { useSheet } from "../sheet.ts";

export function IconOf(props: { readonly icon: Drawing | undefined }) {
  const color = () => props.icon?.color;
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
      <Show when={props.icon}>
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

export function Icon(props: { readonly kind: string }) {
  const sheet = useSheet();
  return <IconOf icon={sheet.kinds[props.kind]?.icon} />;
}
