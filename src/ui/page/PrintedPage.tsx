// What only paper shows: the shopping list with its total, what to set and do by hand, and the cautions.

import { createMemo, For, Index, Show } from "solid-js";
import { textOrDate } from "../../graph/shown.ts";
import { printedFoot, printedWatering } from "../../telling/printed.ts";
import { byDanger, type SaidOnce, saidOnce } from "../../telling/said-once.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import { type Printing, settings, shopping, waterings } from "./printed.ts";

/** The open worksheet as the printed page asks it. */
const asking = (sheet: Sheet): Printing => ({ ...sheet, cards: sheet.worksheet().cards });

function Shopping() {
  const sheet = useSheet();
  const priced = createMemo(() => shopping(asking(sheet)));
  return (
    <Show when={priced().length > 0}>
      <section>
        <h2>To buy</h2>
        <table class="prices">
          <tbody>
            <Index each={priced()}>
              {(part) => (
                <tr>
                  <th scope="row">{part().title}</th>
                  <td>{part().kind}</td>
                  <td>{part().price}</td>
                </tr>
              )}
            </Index>
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
  const cards = createMemo(() => settings(asking(sheet)));
  return (
    <Show when={cards().length > 0}>
      <section>
        <h2>To set and to do by hand</h2>
        <ul>
          <Index each={cards()}>
            {(card) => (
              <li>
                <b>{card().title}</b>: {card().settings}
              </li>
            )}
          </Index>
        </ul>
      </section>
    </Show>
  );
}

function Waterings() {
  const sheet = useSheet();
  const beds = createMemo(() => waterings(asking(sheet)));
  return (
    <Show when={beds().length > 0}>
      <section>
        <h2>Each bed, when it is driest</h2>
        <table>
          <tbody>
            <Index each={beds()}>
              {(bed) => (
                <tr>
                  <th scope="row">{bed().title}</th>
                  <td>{printedWatering({ ...bed(), from: sheet.shown("site.today") })}</td>
                </tr>
              )}
            </Index>
          </tbody>
        </table>
      </section>
    </Show>
  );
}

/** What can hurt somebody first. */
const gathered = (sheet: Sheet): readonly SaidOnce[] =>
  saidOnce(byDanger(sheet.cautions()).map(({ card, text }) => ({ place: sheet.place(card), text })));

function AllCautions() {
  const sheet = useSheet();
  const cautions = createMemo(() => gathered(sheet));
  return (
    <Show when={cautions().length > 0}>
      <section>
        <h2>Cautions</h2>
        <ul>
          <For each={cautions()}>
            {({ text, places }) => (
              <li>
                <b>{places}</b>: {text}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}

export function PrintedPage() {
  const sheet = useSheet();
  const foot = () => {
    const { datum, made_by, made_on } = sheet.worksheet();
    return printedFoot({ datum, madeBy: made_by, madeOn: textOrDate(made_on, sheet.showOptions().locale) });
  };
  return (
    <div class="printed width">
      <Shopping />
      <Waterings />
      <Settings />
      <AllCautions />
      <p class="last">{foot()}</p>
    </div>
  );
}
