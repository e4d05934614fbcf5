// The worksheet on paper: first what it answers, the place, its parts and beds; on the next page what can hurt somebody.

import { createMemo, For, Index, Show } from "solid-js";
import { textOrDate } from "../../graph/shown.ts";
import {
  CAUTIONS_FOLLOW,
  DANGERS,
  PRINTED_EARLY,
  printedFoot,
  printedWatering,
} from "../../telling/printed.ts";
import { dangerOf, type SaidOnce, saidOnce } from "../../telling/said-once.ts";
import { type Sheet, SheetContext, useSheet } from "../sheet.ts";
import { atRest } from "./at-rest.ts";
import { PrintedPlace } from "./PrintedPlace.tsx";
import { type Printing, partsOnPaper, waterings } from "./printed.ts";
import { Pieces } from "./Sentence.tsx";

const nothing = (): void => undefined;

/** The open worksheet as the printed page asks it. */
const asking = (sheet: Sheet): Printing => ({ ...sheet, cards: sheet.worksheet().cards });

function Head() {
  const sheet = useSheet();
  return (
    <header>
      <h1>{sheet.worksheet().title}</h1>
      <Show when={sheet.madeUp()}>{(text) => <p>{text()}</p>}</Show>
      <Show when={sheet.working()}>
        <p>{PRINTED_EARLY}</p>
      </Show>
    </header>
  );
}

function Answers() {
  const sheet = useSheet();
  const first = () => {
    const known = sheet.givesOutFirst();
    return known && !known.old ? [known.sentence] : [];
  };
  const [lead, ...others] = sheet.answers();
  return (
    <section class="said">
      <Show when={lead}>
        {(said) => (
          <p class="lead">
            <Pieces sentence={said()} onPress={nothing} />
          </p>
        )}
      </Show>
      <ul>
        <For each={[...(lead?.id === "lead" ? first() : []), ...others]}>
          {(sentence) => (
            <li>
              <Pieces sentence={sentence} onPress={nothing} />
            </li>
          )}
        </For>
      </ul>
    </section>
  );
}

function Parts() {
  const sheet = useSheet();
  const parts = createMemo(() => partsOnPaper(asking(sheet)));
  const hasPrices = () => parts().some(({ price }) => price !== "");
  return (
    <Show when={parts().length > 0}>
      <section>
        <h2>Parts: sizes, and what is set by hand</h2>
        <table>
          <tbody>
            <Index each={parts()}>
              {(part) => (
                <tr>
                  <th scope="row">{part().title}</th>
                  <td>{part().settings}</td>
                  <Show when={hasPrices()}>
                    <td class="price">{part().price}</td>
                  </Show>
                </tr>
              )}
            </Index>
          </tbody>
          <Show when={hasPrices()}>
            <tfoot>
              <tr>
                <th scope="row">All together</th>
                <td />
                <td class="price">{sheet.shown("cost.total")}</td>
              </tr>
            </tfoot>
          </Show>
        </table>
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

/** Cautions of one place in the order of danger, each said once. */
function gathered(sheet: Sheet, danger: number): readonly SaidOnce[] {
  const said = sheet.cautions().filter((one) => dangerOf(one) === danger);
  return saidOnce(said.map(({ card, text }) => ({ place: sheet.place(card), text })));
}

function Cautions() {
  const sheet = useSheet();
  return (
    <section class="dangers">
      <h1>Cautions: {sheet.worksheet().title}</h1>
      <div class="columns">
        <For each={DANGERS}>
          {(title, danger) => (
            <Show when={gathered(sheet, danger()).length > 0}>
              <section>
                <h2>{title}</h2>
                <ul>
                  <For each={gathered(sheet, danger())}>
                    {({ text, places }) => (
                      <li>
                        <b>{places}</b>: {text}
                      </li>
                    )}
                  </For>
                </ul>
              </section>
            </Show>
          )}
        </For>
      </div>
    </section>
  );
}

export function PrintedPage() {
  const sheet = useSheet();
  const foot = () => {
    const { datum, made_by, made_on } = sheet.worksheet();
    return printedFoot({ datum, madeBy: made_by, madeOn: textOrDate(made_on, sheet.showOptions().locale) });
  };
  const hasCautions = () => sheet.cautions().length > 0;
  return (
    <SheetContext.Provider value={atRest(sheet)}>
      <article class="printed">
        <Head />
        <Answers />
        <PrintedPlace />
        <Parts />
        <Waterings />
        <p class="last">
          {foot()} {hasCautions() ? CAUTIONS_FOLLOW : ""}
        </p>
        <Show when={hasCautions()}>
          <Cautions />
        </Show>
      </article>
    </SheetContext.Provider>
  );
}
