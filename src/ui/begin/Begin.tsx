// Beginning a place of one's own, over the page: what is there, then one number after the other.

import { createResource, Match, Show, Switch } from "solid-js";
import { useSheet } from "../sheet.ts";
import { Asking } from "./Asking.tsx";
import { Counting } from "./Counting.tsx";

export function Begin() {
  const sheet = useSheet();
  const [beginning] = createResource(() => sheet.beginning());
  const close = (): void => {
    sheet.looking.begin(null);
  };
  const onEnd = (): void => {
    if (sheet.looking.width() === "phone") sheet.looking.openPart(null);
    scrollTo({ top: 0 });
    close();
  };
  return (
    <Show when={sheet.looking.beginning() !== null}>
      <dialog
        class="begin"
        aria-label="A place of your own"
        ref={(element) => queueMicrotask(() => element.showModal())}
        onClose={close}
      >
        <Show when={beginning()}>
          {(made) => (
            <Show when={sheet.looking.beginning()}>
              {(begun) => (
                <Switch>
                  <Match when={begun().step === "count"}>
                    <Counting beginning={made()} begun={begun()} onClose={close} />
                  </Match>
                  <Match when={begun().step === "ask"}>
                    <Asking beginning={made()} begun={begun()} onClose={onEnd} />
                  </Match>
                </Switch>
              )}
            </Show>
          )}
        </Show>
      </dialog>
    </Show>
  );
}
