// Parts in an order that does not hang on the order of cards.

/** Parts by their ids, whatever order they came in. */
export const byId = <Part extends { readonly id: string }>(parts: readonly Part[]): readonly Part[] =>
  [...parts].sort((a, b) => (a.id < b.id ? -1 : 1));
