// A panel over the foot of a page of the season, with targets for a thumb.

import type { JSX } from "solid-js";

export function Panel(props: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: JSX.Element;
}) {
  return (
    <dialog
      class="field-panel"
      aria-label={props.title}
      ref={(element) => queueMicrotask(() => element.showModal())}
      onClose={() => props.onClose()}
    >
      <form method="dialog" class="field-head">
        <h2>{props.title}</h2>
        <button type="submit">Close</button>
      </form>
      {props.children}
    </dialog>
  );
}
