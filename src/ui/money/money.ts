// What the components know of the next money, and what may be done with it. The app provides it.

import type { Accessor } from "solid-js";

/** Something that could be bought. */
export type MoneyRow = {
  readonly name: string;
  readonly title: string;
  /** As it stands in its field; "" where nobody has said. */
  readonly price: string;
  /** What it is reckoned with where nothing was said: what those that stand cost apiece; "" for nothing. */
  readonly apiece: string;
  /** What it takes away by itself; "" while that is worked out. */
  readonly alone: string;
  /** Of all short days, 0 to 1. */
  readonly share: number;
};

/** One of the best buys. */
export type MoneyBuy = {
  readonly name: string;
  readonly said: string;
  readonly share: number;
};

export type Money = {
  /** As it stands in its field. */
  readonly amount: Accessor<string>;
  /** Sets the amount; why it could not be read, or "". */
  readonly setAmount: (text: string) => string;
  readonly rows: Accessor<readonly MoneyRow[]>;
  readonly best: Accessor<readonly MoneyBuy[]>;
  /** Why nothing is suggested, or why it could not be worked out; "" where something is. */
  readonly none: Accessor<string>;
  readonly working: Accessor<boolean>;
  /** Sets what something would cost, nothing by ""; why it could not be read, or "". */
  readonly price: (name: string, text: string) => string;
  /** Puts a buy on the sheet. */
  readonly take: (buy: string) => void;
  /** Keeps a buy as a plan beside the sheet. */
  readonly keep: (buy: string) => void;
};
