// What can be done about what the lead says: the one number to give, or where an empty sheet begins.

import { For, Match, Switch } from "solid-js";
import type { Act } from "../../telling/asked.ts";
import { actSaid } from "../../telling/stopped.ts";
import { rowAt } from "../row-at.ts";
import { useSheet } from "../sheet.ts";

function OpenFile(props: { readonly said: string }) {
  const sheet = useSheet();
  return (
    <label class="act">
      {props.said}
      <input
        class="unseen"
        type="file"
        accept=".json,application/json"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          event.currentTarget.value = "";
          if (file) sheet.edit.openFile(file);
        }}
      />
    </label>
  );
}

export function Acts(props: { readonly acts: readonly Act[] }) {
  const sheet = useSheet();
  /** What is hidden is mended on its card. */
  const seen = (at: string): string => {
    const place = rowAt(sheet, at);
    return place && !place.row.hidden ? at : (at.split(".")[0] ?? at);
  };
  const press = ({ does, at: named = "" }: Act): void => {
    const at = seen(named);
    if (does === "lay_out") sheet.looking.begin({ step: "count", wish: null, here: true });
    else if (does !== "go_to" && at.includes(".")) sheet.edit.askFor(at);
    else sheet.edit.goTo(at);
  };
  return (
    <p class="acts">
      <For each={props.acts}>
        {(act) => {
          const said = () => actSaid(act, sheet.label(seen(act.at ?? "")));
          return (
            <Switch>
              <Match when={act.does === "open_file"}>
                <OpenFile said={said()} />
              </Match>
              <Match when={true}>
                <button type="button" class="act" onClick={() => press(act)}>
                  {said()}
                </button>
              </Match>
            </Switch>
          );
        }}
      </For>
    </p>
  );
}
