// Under the answers, where numbers are not sure: which doubt matters most, and how it is best measured.

import { Show } from "solid-js";
import { useSheet } from "../sheet.ts";
import type { NotSureSaid } from "./doubting.ts";
import "./not-sure.css";

export function NotSure(props: { readonly said: NotSureSaid }) {
  const sheet = useSheet();
  const isDone = () => props.said.done === props.said.of;
  return (
    <li class="not-sure" aria-busy={!isDone()}>
      <Show
        when={isDone() && props.said.most !== ""}
        fallback={
          <p>
            {isDone()
              ? "What is not sure moves none of these answers."
              : `Not sure: ${props.said.done} of ${props.said.of} runs are in.`}
          </p>
        }
      >
        <p title={props.said.asked}>
          <b>{props.said.about}.</b>{" "}
          {[props.said.many, props.said.beyond, props.said.most, props.said.measuring]
            .filter((text) => text !== "")
            .join(" ")}{" "}
          <Show when={props.said.first}>
            {(id) => (
              <button type="button" class="link" onClick={() => sheet.edit.askFor(id())}>
                Take it in hand
              </button>
            )}
          </Show>
        </p>
      </Show>
    </li>
  );
}
