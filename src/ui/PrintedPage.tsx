// What only paper shows: the shopping list with its total, what to set and do by hand, and the cautions.

import { For, Show } from "solid-js";
import { handSettings } from "../cards/hand-settings.ts";
import type { Card } from "../document/worksheet.ts";
import { type Sheet, useSheet } from "./sheet.ts";

function isReady(sheet: Sheet, id: string): boolean {
  return sheet.result(id)?.state === "ready" && sheet.shown(id) !== "";
}

function Shopping() {
  const sheet = useSheet();
  const priced = () => sheet.worksheet().cards.filter((card) => isReady(sheet, `${card.id}.price`));
  return (
    <Show when={priced().length > 0}>
      <section>
        <h2>To buy</h2>
        <table>
          <tbody>
            <For each={priced()}>
              {(card) => (
                <tr>
                  <th scope="row">{card.title}</th>
                  <td>{sheet.kinds[card.kind]?.label ?? card.kind}</td>
                  <td>{sheet.shown(`${card.id}.price`)}</td>
                </tr>
              )}
            </For>
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">All together</th>
              <td />
              <td>{sheet.shown("cost.total")}</td>
            </tr>
          </tfoot>
        </table>
      </section>
    </Show>
  );
}

function Settings() {
  const sheet = useSheet();
  const ids = (card: Card) =>
    handSettings(card.kind)
      .map((name) => `${card.id}.${name}`)
      .filter((id) => isReady(sheet, id));
  const cards = () => sheet.worksheet().cards.filter((card) => ids(card).length > 0);
  return (
    <Show when={cards().length > 0}>
      <section>
        <h2>To set and to do by hand</h2>
        <ul>
          <For each={cards()}>
            {(card) => (
              <li>
                <b>{card.title}</b>:{" "}
                {ids(card)
                  .map((id) => `${sheet.label(id)} ${sheet.shown(id)}`)
                  .join("; ")}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}

function AllCautions() {
  const sheet = useSheet();
  return (
    <Show when={sheet.cautions().length > 0}>
      <section>
        <h2>Cautions</h2>
        <ul>
          <For each={sheet.cautions()}>
            {(caution) => (
              <li>
                <b>{sheet.place(caution.card)}</b>: {caution.text}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}

export function PrintedPage() {
  return (
    <div class="printed width">
      <Shopping />
      <Settings />
      <AllCautions />
    </div>
  );
}
