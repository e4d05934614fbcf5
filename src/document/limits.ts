// How big a worksheet may be. Far above any garden, far below what would stall a phone; what is larger is refused.

export const LIMITS = {
  /** Cards of a worksheet. */
  cards: 200,
  /** Characters of an id or a card kind. */
  id: 64,
  /** Characters of a title, a name, a place. */
  title: 200,
  /** Characters of any other text: notes, formulas. */
  text: 2000,
  /** Characters of a unit as typed. */
  unit: 60,
  /** Givens, measured values or unknown keys of one object. */
  keys: 200,
  /** Plans of a worksheet. */
  plans: 400,
  /** Notes of a worksheet: many a day for many years. */
  notes: 20_000,
  /** Elements of a list. */
  list: 400,
  /** Numbers of one point. */
  point: 8,
  /** Objects within objects. */
  depth: 12,
  /** Values in the whole worksheet. */
  values: 200_000,
  /** Characters of a worksheet's text. */
  characters: 4_000_000,
} as const;
