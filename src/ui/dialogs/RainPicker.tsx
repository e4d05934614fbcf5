// Bringing in rain: pick, drop or paste; answer what the file does not say; look at it; take it.

import { createEffect, createSignal, For, Match, on, Show, Switch } from "solid-js";
import { createTyped } from "../rows/typed-text.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import { PreviewView } from "./RainPreview.tsx";
import { DrierSeasons, TakeBar } from "./RainReadings.tsx";
import type { RainQuestion } from "./rain-import.ts";

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
        if (event.dataTransfer?.files.length) take(event.dataTransfer.files);
        else sheet.edit.pasteRain(event.dataTransfer?.getData("text/plain") ?? "");
      }}
    >
      Bring in a file of daily rain
      <input
        class="unseen"
        type="file"
        aria-label="Rain record file"
        accept=".csv,.txt,.tsv,.dat,.dly,text/csv,text/plain"
        onChange={(event) => {
          take(event.currentTarget.files);
          event.currentTarget.value = "";
        }}
      />
    </label>
  );
}

function OwnGauge() {
  const sheet = useSheet();
  const [text, setText] = createTyped(sheet, () => "own gauge");
  const state = () => sheet.rain().state;
  createEffect(on(state, (now) => now === "taken" && setText(null), { defer: true }));
  return (
    <details class="gauge" open={sheet.typed("own gauge") !== null}>
      <summary>Type or paste your own gauge's readings</summary>
      <textarea
        rows="5"
        value={text() ?? ""}
        onInput={(event) => setText(event.currentTarget.value)}
        aria-label="Readings, one a line"
        placeholder={"12 Mar 0.4 in\n14 Mar trace"}
        onPaste={(event) => {
          const file = event.clipboardData?.files[0];
          if (!file) return;
          event.preventDefault();
          sheet.edit.importRain(file);
        }}
      />
      <button type="button" class="button" onClick={() => sheet.edit.pasteRain(text() ?? "")}>
        Look at these readings
      </button>
    </details>
  );
}

function Question(props: { readonly question: RainQuestion }) {
  const sheet = useSheet();
  return (
    <fieldset>
      <legend>{props.question.text}</legend>
      <div class="options">
        <For each={props.question.options}>
          {(option) => (
            <button type="button" onClick={() => sheet.edit.answerRain(props.question.id, option.value)}>
              {option.label}
              {option.value === props.question.likely ? " (likely)" : ""}
            </button>
          )}
        </For>
        <Show when={props.question.options.length === 0}>
          <input
            class="measure"
            aria-label={props.question.text}
            onChange={(event) => sheet.edit.answerRain(props.question.id, event.currentTarget.value)}
          />
        </Show>
      </div>
    </fieldset>
  );
}

/** What came in, once it is taken. */
function Taken(props: { readonly title: string; readonly facts: readonly string[] }) {
  return (
    <details>
      <summary>{props.title}</summary>
      <ul>
        <For each={props.facts}>{(fact) => <li>{fact}</li>}</For>
      </ul>
    </details>
  );
}

function Leave() {
  const sheet = useSheet();
  return (
    <button type="button" class="small" onClick={() => sheet.edit.cancelRain()}>
      Leave it
    </button>
  );
}

/** What can be done with the record that is in use. */
function OwnRecord() {
  const sheet = useSheet();
  return (
    <p class="options">
      <button type="button" class="small" onClick={() => sheet.edit.reopenRain()}>
        Look at this record again, to fill or to join
      </button>
      <button type="button" class="small" onClick={() => sheet.edit.dropRain()}>
        Back to made-up weather
      </button>
      <button type="button" class="small" onClick={() => sheet.edit.makeUpFromRain()}>
        Make up weather fitted to this record
      </button>
    </p>
  );
}

/** Of each step what matters; a refusal is an alert where it stands. */
function stepSaid(rain: ReturnType<Sheet["rain"]>): string {
  if (rain.state === "reading") return `Reading ${rain.name}`;
  if (rain.state === "asking") return rain.questions[0]?.text ?? "";
  if (rain.state === "taken") return rain.title;
  const told = rain.state === "shown" ? rain.preview.told : null;
  return told ? `${told.lead} ${told.yearly} ${told.wet}` : "";
}

export function RainPicker() {
  const sheet = useSheet();
  const as = <State extends string>(state: State) => {
    const rain = sheet.rain();
    return rain.state === state ? (rain as Extract<typeof rain, { state: State }>) : false;
  };
  const hasOwn = () => sheet.worksheet().cards.some((card) => card.givens["record"]?.value);
  return (
    <div class="import">
      <p class="unseen" role="status">
        {stepSaid(sheet.rain())}
      </p>
      <Switch>
        <Match when={as("reading")}>
          {(rain) => (
            <p>
              <progress aria-label={`Reading ${rain().name}`} value={rain().share} /> <Leave />
            </p>
          )}
        </Match>
        <Match when={as("asking")}>
          {(rain) => (
            <PreviewView preview={rain().preview}>
              <For each={rain().questions}>{(question) => <Question question={question} />}</For>
              <Leave />
            </PreviewView>
          )}
        </Match>
        <Match when={as("shown")}>
          {(rain) => (
            <PreviewView preview={rain().preview}>
              <TakeBar told={rain().preview.told} onTake={() => sheet.edit.takeRain()}>
                <Leave />
              </TakeBar>
            </PreviewView>
          )}
        </Match>
        <Match when={as("refused")}>
          {(rain) => (
            <p class="wrong" role="alert">
              {rain().reason}
            </p>
          )}
        </Match>
        <Match when={as("taken")}>{(rain) => <Taken title={rain().title} facts={rain().facts} />}</Match>
      </Switch>
      <DrierSeasons years={sheet.drier()} />
      <Pick />
      <p class="help">
        A national weather service, an airport or a neighbor's gauge has daily rain to bring in.
      </p>
      <OwnGauge />
      <Show when={hasOwn()}>
        <OwnRecord />
      </Show>
    </div>
  );
}
