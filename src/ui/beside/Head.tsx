// The head of a plan's column: its name, what differs from the sheet, and what may be done with it.

import { createSignal, For, Show } from "solid-js";
import type { PlanHead, Plans } from "./plans.ts";

function Acts(props: { readonly name: string; readonly plans: Plans; readonly onDone: () => void }) {
  const act = (what: () => void) => () => {
    props.onDone();
    what();
  };
  return (
    <div class="acts">
      <button type="button" class="link" onClick={act(() => props.plans.takeOver(props.name))}>
        Take over
      </button>
      <button type="button" class="link" onClick={act(() => props.plans.drop(props.name))}>
        Drop
      </button>
      <label>
        <span class="unseen">Name of this plan</span>
        <input
          value={props.name}
          maxLength={200}
          onChange={(event) => {
            const { value } = event.currentTarget;
            props.onDone();
            props.plans.rename(props.name, value);
          }}
        />
      </label>
    </div>
  );
}

export function Head(props: { readonly head: PlanHead; readonly plans: Plans }) {
  const [open, setOpen] = createSignal(false);
  let button: HTMLButtonElement | undefined;
  return (
    <th
      scope="col"
      class="plan-head"
      onFocusOut={(event) => {
        const next = event.relatedTarget;
        if (next instanceof Node && !event.currentTarget.contains(next)) setOpen(false);
      }}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !open()) return;
        event.stopPropagation();
        setOpen(false);
        button?.focus();
      }}
    >
      <button
        type="button"
        class="name"
        ref={button}
        aria-expanded={open()}
        title={`${props.head.name}: take over, drop, name`}
        onClick={() => setOpen(!open())}
      >
        <span>{props.head.name}</span>
      </button>
      <Show
        when={open()}
        fallback={
          <>
            <For each={props.head.differs}>{(line) => <span class="aside">{line}</span>}</For>
            <For each={props.head.left}>{(line) => <span class="aside left">{line}</span>}</For>
            <Show when={props.head.dearer}>{(dearer) => <span class="price">{dearer()}</span>}</Show>
          </>
        }
      >
        <Acts name={props.head.name} plans={props.plans} onDone={() => setOpen(false)} />
      </Show>
    </th>
  );
}
