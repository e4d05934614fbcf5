// The year's other moments: the first frost, tanks that fill, a hose's first filling, this year against what was expected.

import { For, Index, type JSX, Show } from "solid-js";
import type { ToldYear } from "../../telling/this-year.ts";
import {
  FILLING_ASIDE,
  type FillingSteps,
  type FrostLine,
  FULL_ASIDE,
  type ToldMoments,
} from "../../telling/told-moments.ts";
import { Cautions } from "../rows/Cautions.tsx";
import { useSheet } from "../sheet.ts";
import { Missing } from "./Missing.tsx";
import { FieldFoot, useNoting } from "./noting-here.tsx";
import type { FieldPageProps } from "./pages.ts";
import { useSeasonAnswer } from "./use-season-answer.ts";
import "./year.css";

function Section(props: { readonly title: string; readonly children: JSX.Element }) {
  return (
    <section class="year-part">
      <h3>{props.title}</h3>
      {props.children}
    </section>
  );
}

function Frost(props: { readonly frost: ToldMoments["frost"] }) {
  const { note } = useNoting();
  const pressed = ({ id, title, done }: FrostLine): void =>
    done === null
      ? note({ said: { what: "drained", where: id }, words: `${title}, ready for frost` })
      : note({ said: { what: "undid", where: id, undoes: done }, words: `${title}, not ready yet` });
  return (
    <Section title="Before the first frost">
      <p>{props.frost.by}</p>
      <ul class="year-jobs">
        {/* By their places: what is pressed keeps the focus while all is worked out anew. */}
        <Index each={props.frost.lines}>
          {(line) => (
            <li>
              <button type="button" aria-pressed={line().done !== null} onClick={() => pressed(line())}>
                <span>
                  <b>{line().title}</b> {line().text} <small>{line().source}</small>
                </span>
                <i aria-hidden="true">{line().done === null ? "" : "✓"}</i>
              </button>
            </li>
          )}
        </Index>
      </ul>
      <p class="aside">
        A press notes it as done for this winter. Where ice can hurt a house, its plumber decides.
      </p>
    </Section>
  );
}

function Full(props: { readonly full: ToldMoments["full"] }) {
  return (
    <Section title="When an empty tank is full">
      <p class="aside">{FULL_ASIDE}</p>
      <dl>
        <For each={props.full}>
          {(tank) => (
            <>
              <dt>{tank.title}</dt>
              <dd>{tank.said}</dd>
            </>
          )}
        </For>
      </dl>
    </Section>
  );
}

function Filling(props: { readonly filling: FillingSteps }) {
  const sheet = useSheet();
  const card = () => sheet.worksheet().cards.find(({ id }) => id === props.filling.id);
  return (
    <details>
      <summary>{props.filling.title}</summary>
      <ol>
        <For each={props.filling.steps}>{(step) => <li>{step}</li>}</For>
      </ol>
      <Show when={card()}>{(held) => <Cautions card={held()} beside="length" />}</Show>
      <p class="aside">{FILLING_ASIDE}</p>
    </details>
  );
}

function ThisYear(props: { readonly year: ToldYear }) {
  return (
    <Section title="This year against what was expected">
      <p>{props.year.head}</p>
      <Show when={props.year.rows.length > 0}>
        <table>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Noted</th>
              <th scope="col">Expected</th>
            </tr>
          </thead>
          <tbody>
            <For each={props.year.rows}>
              {(row) => (
                <tr>
                  <th scope="row">{row.what}</th>
                  <td>{row.noted}</td>
                  <td>{row.expected}</td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </Show>
      <For each={props.year.missing}>{(text) => <p class="aside">{text}</p>}</For>
    </Section>
  );
}

function Told(props: { readonly told: ToldMoments }) {
  return (
    <>
      <Show when={props.told.thisYear}>{(year) => <ThisYear year={year()} />}</Show>
      <Frost frost={props.told.frost} />
      <Show when={props.told.full.length > 0}>
        <Full full={props.told.full} />
      </Show>
      <Show when={props.told.fillings.length > 0}>
        <Section title="Filling a hose for the first time">
          {/* By its place: what is unfolded stays so while all is worked out anew. */}
          <Index each={props.told.fillings}>{(filling) => <Filling filling={filling()} />}</Index>
        </Section>
      </Show>
    </>
  );
}

export function YearMoments(props: FieldPageProps) {
  const { answer, working, failure } = useSeasonAnswer((answers) => answers.moments());
  return (
    <>
      <div class="field-body" classList={{ working: working() }} aria-busy={working()}>
        <Missing {...props} />
        <Show when={answer()} fallback={<p class="year-part">{failure() || "Working it out …"}</p>}>
          {(told) => <Told told={told()} />}
        </Show>
      </div>
      <FieldFoot />
    </>
  );
}
