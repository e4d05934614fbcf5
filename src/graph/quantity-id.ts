// How a quantity is named.

/** `card_id.row_name`, e.g. `blue_tank.capacity`. */
export type QuantityId = string;
