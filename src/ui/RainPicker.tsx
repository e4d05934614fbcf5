// Bringing in a rain record: pick or drop a file, answer what the file does not say, see what came in.

import { createSignal, For, Match, Show, Switch } from "solid-js";
import { useSheet } from "./sheet.ts";

function Pick() {
  const sheet = useSheet();
  const [over, setOver] = createSignal(false);
  const take = (files: FileList | null | undefined) => {
    const file = files?.[0];
    if (file) sheet.edit.importRain(file);
  };
  return (
    <label
      class="pick"
      classList={{ over: over() }}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        take(event.dataTransfer?.files);
      }}
    >
      Bring in a file of daily rain
      <input
        class="unseen"
        type="file"
        aria-label="Rain record file"
        accept=".csv,.txt,.tsv,.dat,text/csv,text/plain"
        onChange={(event) => {
          take(event.currentTarget.files);
          event.currentTarget.value = "";
        }}
      />
    </label>
  );
}

function Facts(props: { readonly facts: readonly string[] }) {
  return (
    <ul>
      <For each={props.facts}>{(fact) => <li>{fact}</li>}</For>
    </ul>
  );
}

export function RainPicker() {
  const sheet = useSheet();
  const as = <State extends string>(state: State) => {
    const rain = sheet.rain();
    return rain.state === state ? (rain as Extract<typeof rain, { state: State }>) : false;
  };
  return (
    <div class="import" aria-live="polite">
      <Switch>
        <Match when={as("reading")}>
          {(rain) => <progress aria-label="Reading the file" value={rain().share} />}
        </Match>
        <Match when={as("asking")}>
          {(rain) => (
            <For each={rain().questions}>
              {(question) => (
                <fieldset>
                  <legend>{question.text}</legend>
                  <div class="options">
                    <For each={question.options}>
                      {(option) => (
                        <button
                          type="button"
                          onClick={() => sheet.edit.answerRain(question.id, option.value)}
                        >
                          {option.label}
                          {option.value === question.likely ? " (likely)" : ""}
                        </button>
                      )}
                    </For>
                    <Show when={question.options.length === 0}>
                      <input
                        class="measure"
                        aria-label={question.text}
                        onChange={(event) => sheet.edit.answerRain(question.id, event.currentTarget.value)}
                      />
                    </Show>
                  </div>
                </fieldset>
              )}
            </For>
          )}
        </Match>
        <Match when={as("refused")}>
          {(rain) => (
            <p class="wrong" role="alert">
              {rain().reason}
            </p>
          )}
        </Match>
        <Match when={as("shown")}>
          {(rain) => (
            <details open>
              <summary>{rain().title}</summary>
              <Facts facts={rain().facts} />
            </details>
          )}
        </Match>
      </Switch>
      <Pick />
      <Show when={as("shown")}>
        <button type="button" class="small" onClick={() => sheet.edit.dropRain()}>
          Back to made-up weather
        </button>
      </Show>
    </div>
  );
}
