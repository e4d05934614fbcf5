// Next money, in the place of time: an amount, the best buys for it, and everything that could be bought with its price.

import { createSignal, createUniqueId, For, type JSX, Show } from "solid-js";
import { useSheet } from "../sheet.ts";
import type { Money, MoneyBuy, MoneyRow } from "./money.ts";

/** A field for money: entered when it is left or Enter is pressed; what cannot be read stays, with the reason. */
function MoneyField(props: {
  readonly label: string;
  readonly value: string;
  readonly placeholder?: string;
  readonly onEnter: (text: string) => string;
  readonly describe?: JSX.Element;
}) {
  const [wrong, setWrong] = createSignal("");
  const why = createUniqueId();
  const enter = (field: HTMLInputElement): void => {
    if (field.value === props.value) return void setWrong("");
    const reason = props.onEnter(field.value);
    setWrong(reason);
    if (!reason) field.value = props.value;
  };
  return (
    <>
      <input
        class="amount"
        aria-label={props.label}
        aria-invalid={wrong() ? "true" : "false"}
        aria-describedby={wrong() ? why : undefined}
        autocomplete="off"
        inputmode="decimal"
        placeholder={props.placeholder ?? ""}
        value={props.value}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => enter(event.currentTarget)}
      />
      <Show when={wrong()}>
        <span class="wrong" id={why}>
          {wrong()}
        </span>
      </Show>
    </>
  );
}

function Bar(props: { readonly share: number }) {
  return (
    <i class="bar" aria-hidden="true">
      <i style={{ width: `${100 * props.share}%` }} />
    </i>
  );
}

function Buy(props: { readonly buy: MoneyBuy; readonly money: Money }) {
  const sheet = useSheet();
  return (
    <li>
      <p>{props.buy.said}.</p>
      <Bar share={props.buy.share} />
      <p class="ways">
        <button
          type="button"
          class="link"
          aria-label={`Keep beside: ${props.buy.said}`}
          onClick={() => {
            props.money.keep(props.buy.name);
            sheet.looking.showTime("beside");
          }}
        >
          Keep beside
        </button>
        <button
          type="button"
          class="link"
          aria-label={`Put it on the sheet: ${props.buy.said}`}
          onClick={() => props.money.take(props.buy.name)}
        >
          Put it on the sheet
        </button>
      </p>
    </li>
  );
}

function Row(props: { readonly row: MoneyRow; readonly money: Money }) {
  return (
    <tr>
      <th scope="row">{props.row.title}</th>
      <td class="alone">
        {props.row.alone}
        <Bar share={props.row.share} />
      </td>
      <td>
        <MoneyField
          label={`Price: ${props.row.title}`}
          value={props.row.price}
          placeholder={props.row.apiece || "no price"}
          onEnter={(text) => props.money.price(props.row.name, text)}
        />
      </td>
    </tr>
  );
}

/** Everything that could be bought; rows stay where they are while a price is typed. */
function Things(props: { readonly money: Money }) {
  const names = () => props.money.rows().map(({ name }) => name);
  const rowOf = (name: string) => props.money.rows().find((row) => row.name === name);
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">What could be bought</th>
          <th scope="col">Short days, by itself</th>
          <th scope="col">Price</th>
        </tr>
      </thead>
      <tbody>
        <For each={names()}>
          {(name) => <Show when={rowOf(name)}>{(row) => <Row row={row()} money={props.money} />}</Show>}
        </For>
      </tbody>
    </table>
  );
}

function Body(props: { readonly money: Money }) {
  const names = () => props.money.best().map(({ name }) => name);
  const buyOf = (name: string) => props.money.best().find((buy) => buy.name === name);
  return (
    <>
      <div
        role="status"
        class="found"
        aria-busy={props.money.working()}
        classList={{ old: props.money.working() }}
      >
        <Show when={props.money.working()}>
          <p class="aside">Working it out …</p>
        </Show>
        <Show when={props.money.none()}>{(why) => <p>{why()}</p>}</Show>
        <ol>
          <For each={names()}>
            {(name) => <Show when={buyOf(name)}>{(buy) => <Buy buy={buy()} money={props.money} />}</Show>}
          </For>
        </ol>
      </div>
      <Things money={props.money} />
    </>
  );
}

export function NextMoney() {
  const sheet = useSheet();
  const [money, setMoney] = createSignal<Money | null>(null);
  const [failed, setFailed] = createSignal(false);
  sheet.nextMoney().then(
    (made) => setMoney(() => made),
    () => setFailed(true),
  );
  return (
    <section class="next-money" aria-labelledby="next-money">
      <header>
        <h2 id="next-money">Next money</h2>
        <Show when={money()}>
          {(made) => <MoneyField label="Next money" value={made().amount()} onEnter={made().setAmount} />}
        </Show>
        <button type="button" class="link back" onClick={() => sheet.looking.showTime("year")}>
          Back to the year
        </button>
      </header>
      <Show when={failed()}>
        <p role="alert">This could not be fetched. Look whether you are connected, and press again.</p>
      </Show>
      <Show when={money()}>{(made) => <Body money={made()} />}</Show>
    </section>
  );
}
