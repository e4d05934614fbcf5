// What is held: everything that moved since, sorted, and the ways out of it.

import { createMemo, createSignal, For, Show } from "solid-js";
import type { Moved as MovedOne } from "../../telling/what-moved.ts";
import { keepBeside } from "../beside/show.ts";
import { useSheet } from "../sheet.ts";
import { named } from "./named.ts";
import { toneOf } from "./tones.ts";

/** Answers listed before the rest is asked for. */
const FIRST = 8;

function Line(props: { readonly moved: MovedOne }) {
  const sheet = useSheet();
  const percent = (at: number | null) => `${100 * (at ?? 0)}%`;
  const from = () => Math.min(props.moved.wasAt ?? 0, props.moved.nowAt ?? 0);
  const to = () => Math.max(props.moved.wasAt ?? 0, props.moved.nowAt ?? 0);
  return (
    <Show when={props.moved.wasAt !== null}>
      <i class="track" data-tone={toneOf(sheet, props.moved.id)} aria-hidden="true">
        <i class="way" style={{ left: percent(from()), width: percent(to() - from()) }} />
        <i class="dot hollow" style={{ left: percent(props.moved.wasAt) }} />
        <i class="dot" style={{ left: percent(props.moved.nowAt) }} />
      </i>
    </Show>
  );
}

function Row(props: { readonly moved: MovedOne }) {
  const sheet = useSheet();
  return (
    <li classList={{ words: props.moved.wasAt === null }}>
      <button type="button" class="link" onClick={() => sheet.edit.goTo(props.moved.id)}>
        {named(sheet, props.moved.id, null)}
      </button>
      <Line moved={props.moved} />
      <span class="values">
        <span class="was">{props.moved.was} →</span> <b>{props.moved.now}</b>
      </span>
    </li>
  );
}

export function Moved(props: {
  /** Also where nothing has moved. */
  readonly always?: boolean;
}) {
  const sheet = useSheet();
  const all = createMemo(() => sheet.since.moved());
  const [open, setOpen] = createSignal(false);
  const listed = () => (open() ? all().answers : all().answers.slice(0, FIRST));
  const left = () => all().answers.length - listed().length;
  return (
    <Show when={sheet.held() && (props.always || all().givens.length + all().answers.length > 0)}>
      <section class="moved-list" aria-label="What moved since you held">
        <h2>What moved since you held</h2>
        <Show when={all().givens.length > 0} fallback={<p class="aside">Nothing has changed since.</p>}>
          <ul class="changed">
            <For each={all().givens}>
              {({ id, was, now }) => (
                <li>
                  {named(sheet, id, null)}: <span class="was">{was} →</span> <b>{now}</b>
                </li>
              )}
            </For>
          </ul>
        </Show>
        <ul>
          <For each={listed()}>{(moved) => <Row moved={moved} />}</For>
        </ul>
        <p class="aside">
          <Show when={left() > 0}>
            <button type="button" class="link more" onClick={() => setOpen(true)}>
              {left()} more moved
            </button>{" "}
            ·{" "}
          </Show>
          {all().unmoved} did not
          <Show when={all().answers.length > 1}>
            <br />
            First what the answer on top says, then what moved furthest.
          </Show>
        </p>
        <p class="ways">
          <Show when={all().givens.length > 0}>
            <button type="button" class="tool" onClick={() => sheet.since.goBack()}>
              Go back
            </button>
            <button type="button" class="tool" onClick={() => keepBeside(sheet)}>
              Keep beside
            </button>
          </Show>
          <button type="button" class="tool" onClick={() => sheet.edit.hold()}>
            Let go
          </button>
        </p>
      </section>
    </Show>
  );
}
