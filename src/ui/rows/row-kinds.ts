// Rows that the reader fills in, told apart from those that are worked out.

import type { Row } from "../../graph/types.ts";

const FILLED_IN = ["given", "choice", "link", "text", "date", "list"];

/** Whether a row is filled in by the reader. */
export const isGiven = (row: Row): boolean => FILLED_IN.includes(row.row);
