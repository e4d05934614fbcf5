// The order in which the cards stand: the one in which water and power flow.

export type Group = { readonly title: string; readonly kinds: readonly string[] };

export const GROUPS: readonly Group[] = [
  { title: "Sky and place", kinds: ["weather", "site"] },
  { title: "Roofs", kinds: ["roof"] },
  { title: "Tanks", kinds: ["tank"] },
  { title: "Ways for the water", kinds: ["line", "tee", "filter", "draw", "delivery", "carry"] },
  { title: "Power", kinds: ["pump", "wire", "battery", "panel"] },
  { title: "Beds", kinds: ["bed"] },
  { title: "The season and the money", kinds: ["season", "cost"] },
  { title: "Lines of your own", kinds: ["own"] },
];
