// Plans beside the sheet: a column each, five answers, a bar from nought on one scale a row, the best in bold.

import { createSignal, For, Show } from "solid-js";
import { answerName } from "../../telling/answer-names.ts";
import { useSheet } from "../sheet.ts";
import { Head } from "./Head.tsx";
import type { PlanCell, PlanRow, Plans } from "./plans.ts";

function Cell(props: { readonly cell: PlanCell; readonly id: string }) {
  return (
    <td classList={{ best: props.cell.best, old: props.cell.old }}>
      <span class="value">{props.cell.shown}</span>
      <Show when={props.cell.best}>
        <span class="unseen"> best</span>
      </Show>
      <i class="bar" aria-hidden="true">
        <i style={{ width: `${100 * (props.cell.share ?? 0)}%` }} />
      </i>
    </td>
  );
}

function Row(props: { readonly row: PlanRow }) {
  const sheet = useSheet();
  const { id } = props.row;
  return (
    <tr>
      <th scope="row">{answerName(id) ?? sheet.label(id)}</th>
      <For each={props.row.cells}>{(cell) => <Cell cell={cell} id={id} />}</For>
    </tr>
  );
}

/** The plans that are kept and do not stand beside the sheet. */
function Others(props: { readonly plans: Plans }) {
  return (
    <Show when={props.plans.others().length > 0}>
      <p class="others">
        Also kept:{" "}
        <For each={props.plans.others()}>
          {(name) => (
            <button type="button" class="link" onClick={() => props.plans.bring(name)}>
              {name}
            </button>
          )}
        </For>
      </p>
    </Show>
  );
}

function Table(props: { readonly plans: Plans }) {
  const sheet = useSheet();
  return (
    <table style={{ "--columns": props.plans.heads().length + 1 }}>
      <thead>
        <tr>
          <td class="corner" />
          <th scope="col" class="sheet-head">
            The sheet
            <span class="aside">{sheet.held() ? "as it is in hand" : "as it is now"}</span>
            <Show when={props.plans.price()}>{(price) => <span class="price">{price()}</span>}</Show>
            <Show when={props.plans.heads().length > 1}>
              <span class="aside swipe">{props.plans.heads().length} plans, swipe →</span>
            </Show>
          </th>
          <For each={props.plans.heads()}>{(head) => <Head head={head} plans={props.plans} />}</For>
        </tr>
      </thead>
      <tbody>
        <For each={props.plans.rows()}>{(row) => <Row row={row} />}</For>
      </tbody>
    </table>
  );
}

const HOW =
  "Hold the sheet as it is, turn a number or add a part, and keep that beside: the sheet goes back to what you held, and both stand here side by side.";

export function PlansBeside() {
  const sheet = useSheet();
  const [plans, setPlans] = createSignal<Plans | null>(null);
  const [failed, setFailed] = createSignal(false);
  const [said, setSaid] = createSignal("");
  const keep = () => setSaid(plans()?.keep() ? "" : "Nothing was changed since you held.");
  sheet.plans().then(
    (made) => setPlans(() => made),
    () => setFailed(true),
  );
  return (
    <section class="plans-beside" aria-labelledby="side-by-side">
      <header>
        <h2 id="side-by-side">Side by side</h2>
        <Show
          when={sheet.held()}
          fallback={
            <button type="button" class="link" onClick={() => sheet.edit.hold()}>
              Hold the sheet
            </button>
          }
        >
          <button type="button" class="link" onClick={() => keep()}>
            Keep this beside
          </button>
        </Show>
        <span role="status" class="aside">
          {said()}
        </span>
        <Show when={plans()}>{(made) => <Others plans={made()} />}</Show>
        <button type="button" class="link back" onClick={() => sheet.looking.showTime("year")}>
          Back to the year
        </button>
      </header>
      <Show when={failed()}>
        <p role="alert">The plans could not be fetched. Look whether you are connected, and press again.</p>
      </Show>
      <Show when={plans()}>
        {(made) => (
          <>
            <Show when={made().failure()}>{(reason) => <p role="alert">{reason()}</p>}</Show>
            <Show when={made().heads().length > 0} fallback={<p class="aside">{HOW}</p>}>
              <Table plans={made()} />
            </Show>
          </>
        )}
      </Show>
    </section>
  );
}
