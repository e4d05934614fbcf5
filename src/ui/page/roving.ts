// One tab stop for a row of buttons: the arrow keys go from one to the next, Tab leads on.

import { type Accessor, createSignal } from "solid-js";

const STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 };

export type Roving = {
  readonly tabindex: (name: string) => 0 | -1;
  /** For the element around them; `data-stop` on each says which it is. */
  readonly onKeyDown: (event: KeyboardEvent & { readonly currentTarget: HTMLElement }) => void;
  readonly onFocusIn: (event: FocusEvent) => void;
};

const stopOf = (target: EventTarget | null): string | null =>
  target instanceof Element ? (target.closest<HTMLElement>("[data-stop]")?.dataset["stop"] ?? null) : null;

/** @param names of those that can have the focus now, in their order */
export function createRoving(names: Accessor<readonly string[]>): Roving {
  const [last, setLast] = createSignal<string | null>(null);
  const active = () => {
    const name = last();
    return name !== null && names().includes(name) ? name : names()[0];
  };
  return {
    tabindex: (name) => (name === active() ? 0 : -1),
    onFocusIn: ({ target }) => {
      const name = stopOf(target);
      if (name !== null) setLast(name);
    },
    onKeyDown: (event) => {
      const by = STEPS[event.key];
      const isSelect = event.target instanceof HTMLSelectElement && /Up|Down/.test(event.key);
      if (by === undefined || isSelect || event.ctrlKey || event.metaKey || event.altKey) return;
      const at = names().indexOf(stopOf(event.target) ?? "");
      const next = names()[(at + by + names().length) % names().length];
      if (at < 0 || next === undefined) return;
      event.preventDefault();
      event.currentTarget.querySelector<HTMLElement>(`[data-stop="${next}"]`)?.focus();
    },
  };
}
