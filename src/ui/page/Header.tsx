// The one line at the head of the page: its name, what is made up, what is held, and the tools.

import { createSignal, lazy, Match, Show, Switch } from "solid-js";
import { bare } from "../../document/title-apart.ts";
import { lazyAfterAnswers } from "../after-answers.ts";
import { fetchInSeason } from "../field/fetch-in-season.ts";
import { createTyped, titleField } from "../rows/typed-text.ts";
import { useSheet } from "../sheet.ts";
import type { InAddress } from "./season-in-address.ts";
import type { Opened } from "./Tools.tsx";

const Tools = lazyAfterAnswers(async () => (await import("./Tools.tsx")).Tools);
const StartDialog = lazy(async () => ({ default: (await import("../dialogs/StartDialog.tsx")).StartDialog }));
const ShareDialog = lazy(async () => ({ default: (await import("../dialogs/ShareDialog.tsx")).ShareDialog }));
const WeekDialog = lazy(async () => ({ default: (await import("./WeekPlan.tsx")).WeekDialog }));

const InSeason = lazy(async () => ({ default: await fetchInSeason() }));

export function Header(props: { readonly season: InAddress }) {
  const sheet = useSheet();
  const [opened, setOpened] = createSignal<Opened>(null);
  const [draft, setDraft] = createTyped(sheet, () => titleField.of(null));
  const close = () => {
    setOpened(null);
  };
  return (
    <header class="top">
      <input
        class="title"
        aria-label="Name of this worksheet"
        dir="auto"
        title={bare(sheet.worksheet().title)}
        value={draft() ?? bare(sheet.worksheet().title)}
        onInput={(event) => setDraft(event.currentTarget.value)}
        onChange={(event) => {
          sheet.edit.page({ title: event.currentTarget.value });
          setDraft(null);
        }}
      />
      <div class="asides">
        <Show when={sheet.madeUp()}>{(text) => <span class="madeup">{text()}</span>}</Show>
        {/* Seen and never said: every step is saved, and what could not be is an alert of its own. */}
        <span class="saved">{sheet.saved()}</span>
      </div>
      <Tools onOpen={setOpened} />
      <Switch>
        <Match when={opened() === "worksheets"}>
          <StartDialog onClose={close} />
        </Match>
        <Match when={opened() === "share"}>
          <ShareDialog onClose={close} />
        </Match>
        <Match when={props.season.page()}>
          {(page) => <InSeason page={page()} onClose={props.season.leave} />}
        </Match>
        <Match when={opened() === "week"}>
          <WeekDialog onClose={close} />
        </Match>
      </Switch>
    </header>
  );
}
