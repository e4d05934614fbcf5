// The field that is being typed in, so that what stands in it counts wherever the page is left or something else is done.

import { onCleanup } from "solid-js";

/** Listens to the whole page for as long as its owner stands. */
export function listenToTyping() {
  let field: EventTarget | null = null;
  const begin = (event: Event): void => {
    field = event.target;
  };
  const end = (event: Event): void => {
    if (event.target === field) field = null;
  };
  document.addEventListener("input", begin, true);
  document.addEventListener("change", end, true);
  document.addEventListener("focusout", end, true);
  onCleanup(() => {
    document.removeEventListener("input", begin, true);
    document.removeEventListener("change", end, true);
    document.removeEventListener("focusout", end, true);
  });
  return {
    /** Takes what is typed as entered; the field keeps the focus. */
    enter: (): void => {
      const typed = field;
      if (!(typed instanceof HTMLElement) || !typed.isConnected) return;
      // A field listens to one or the other.
      typed.dispatchEvent(new Event("change", { bubbles: true }));
      typed.dispatchEvent(new FocusEvent("blur"));
      field = null;
    },
  };
}

export type Typing = ReturnType<typeof listenToTyping>;
