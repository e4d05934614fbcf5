// What only paper shows: the shopping list with its total, what to set and do by hand, and the cautions.

import { createMemo, For, Show } from "solid-js";
import type { Card } from "../../document/worksheet.ts";
import { handSettings, WATERING } from "../../kinds/hand-settings.ts";
import { printedFoot, printedSettings, printedWatering } from "../../telling/printed.ts";
import { type Sheet, useSheet } from "../sheet.ts";
import { type SaidOnce, saidOnce } from "./printed-cautions.ts";

const WEIGHTS = ["harm", "trouble", "note"] as const;

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
        <table class="prices">
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
                {printedSettings(ids(card).map((id) => ({ label: sheet.label(id), shown: sheet.shown(id) })))}
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}

function Waterings() {
  const sheet = useSheet();
  const given = (id: string) => (isReady(sheet, id) ? sheet.shown(id) : "");
  const beds = () => sheet.worksheet().cards.filter((card) => isReady(sheet, `${card.id}.${WATERING.every}`));
  const words = ({ id }: Card) =>
    printedWatering({
      volume: given(`${id}.${WATERING.volume}`),
      every: given(`${id}.${WATERING.every}`),
      by: given(`${id}.${WATERING.by}`),
      days: given(`${id}.${WATERING.days}`),
      from: sheet.shown("site.today"),
    });
  return (
    <Show when={beds().length > 0}>
      <section>
        <h2>Each bed, when it is driest</h2>
        <table>
          <tbody>
            <For each={beds()}>
              {(bed) => (
                <tr>
                  <th scope="row">{bed.title}</th>
                  <td>{words(bed)}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
    </Show>
  );
}

/** What can hurt somebody first. */
function gathered(sheet: Sheet): readonly SaidOnce[] {
  const byWeight = WEIGHTS.flatMap((weight) => sheet.cautions().filter((one) => one.weight === weight));
  return saidOnce(byWeight.map(({ card, text }) => ({ place: sheet.place(card), text })));
}

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
    return printedFoot({ datum, madeBy: made_by, madeOn: made_on });
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
