// Which answer the curve shows, and what it is.

import { For, Show } from "solid-js";
import { useSheet } from "../sheet.ts";
import { named } from "./named.ts";

/** Which answer is drawn, with what it is and was; pressed, another one is chosen. */
export function Caption(props: { readonly answer: string; readonly second: boolean }) {
  const sheet = useSheet();
  const isSpan = () => sheet.doubting()?.span() != null;
  const alone = () => sheet.doubting()?.alone(props.answer) ?? "";
  const isOld = () => sheet.result(props.answer)?.state === "pending" || (isSpan() && alone() === "");
  const was = () => {
    const text = sheet.hand.before()?.said(props.answer) ?? "";
    return text !== "" && text !== sheet.shown(props.answer) ? text : null;
  };
  const own = () => sheet.hand.turned()?.card ?? null;
  return (
    <p class="caption">
      <select
        aria-label={props.second ? "The second answer over it" : "The answer over it"}
        value={props.answer}
        onChange={(event) => {
          const id = event.currentTarget.value;
          sheet.looking.chooseAnswer(id === "" ? props.answer : id, props.second);
        }}
      >
        <Show when={props.second}>
          <option value={sheet.hand.answer() ?? ""}>only one answer</option>
        </Show>
        <For each={sheet.hand.answers().filter((id) => !props.second || id !== sheet.hand.answer())}>
          {(id) => (
            <option value={id} selected={id === props.answer}>
              {named(sheet, id, own())}
            </option>
          )}
        </For>
      </select>
      {/* The curve is this number's: so is the span, and what else is not sure stands under it. */}
      <b classList={{ old: isOld() }}>
        {(isSpan() ? alone() : sheet.doubting()?.spanOf(props.answer)) || sheet.shown(props.answer)}
      </b>
      <Show when={sheet.hand.without(props.answer)}>{(text) => <span class="was">{text()}</span>}</Show>
      <Show when={was()}>{(text) => <span class="was">was {text()}</span>}</Show>
    </p>
  );
}

/** What the first answer becomes with all else that is not sure. */
export function WithOthers(props: { readonly said: string }) {
  const { doubting } = useSheet();
  return (
    <Show when={props.said}>
      <p class="with-others" classList={{ old: doubting()?.isOld() === true }}>
        {props.said}
      </p>
    </Show>
  );
}

/** Offers to draw another answer over the same axis. */
export function Another() {
  const sheet = useSheet();
  const others = () => sheet.hand.answers().filter((id) => id !== sheet.hand.answer());
  return (
    <Show when={sheet.hand.second() === null && others().length > 0}>
      <select
        class="another"
        aria-label="Another answer over the same axis"
        value=""
        onChange={(event) => sheet.looking.chooseAnswer(event.currentTarget.value, true)}
      >
        <option value="">and …</option>
        <For each={others()}>
          {(id) => <option value={id}>{named(sheet, id, sheet.hand.turned()?.card ?? null)}</option>}
        </For>
      </select>
    </Show>
  );
}
