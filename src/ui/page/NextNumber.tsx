// Walks a new worksheet's owner from one number that is still missing to the next, at the foot of the screen.

import { createMemo, createSignal, Show } from "solid-js";
import { useSheet } from "../sheet.ts";

export function NextNumber() {
  const sheet = useSheet();
  const [asked, setAsked] = createSignal<readonly string[]>([]);
  const [isDone, setDone] = createSignal(false);
  // Those not asked yet come first; then round again through what was passed by.
  const next = createMemo(() => {
    const missing = sheet.missing();
    const behind = missing.slice(missing.indexOf(asked().at(-1) ?? "") + 1);
    return missing.find((id) => !asked().includes(id)) ?? behind[0] ?? missing[0];
  });
  const ask = (id: string) => {
    setAsked([...asked().filter((other) => other !== id), id]);
    sheet.edit.askFor(id);
  };
  return (
    <Show when={!isDone() && next()}>
      {(id) => (
        <aside class="next-number" aria-label="Numbers still to put in">
          <button type="button" class="button strong" onClick={() => ask(id())}>
            <small>{sheet.missing().length} to go. Next:</small>
            {sheet.place(id())}
          </button>
          <button type="button" class="small" onClick={() => setDone(true)}>
            Not now
          </button>
        </aside>
      )}
    </Show>
  );
}
