// What workings say: of a row, and beside an answer on top.

export { explain } from "../graph/explain.ts";
export { besideAnswer } from "../telling/beside.ts";
