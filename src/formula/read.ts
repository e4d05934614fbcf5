// Formula text to a checked formula. What is not in the small language is refused with a reason and the place marked.

import { checkGrammar, LONGEST } from "./grammar.ts";
import { parseTokens } from "./parse.ts";
import { scanTokens } from "./tokens.ts";
import {
  type BinaryNode,
  type Formula,
  type FormulaProblem,
  FormulaTrouble,
  isComparison,
  isCondition,
  isLogic,
  type Node,
  orProblem,
} from "./tree.ts";

export type { Formula, FormulaProblem } from "./tree.ts";

function requireCondition(node: Node, where: string): void {
  if (isCondition(node)) return;
  throw new FormulaTrouble(`${where} a comparison is needed, such as level > 2 ft.`, node);
}

/** 1 < x < 5 would ask whether a yes or no is less than 5. */
function refuseChain(node: BinaryNode): void {
  const [left, right] = [isCondition(node.left), isCondition(node.right)];
  const isEquality = node.sign === "==" || node.sign === "!=";
  if ((!left && !right) || (left && right && isEquality)) return;
  throw new FormulaTrouble("Compare two things at a time, joined by and: 1 < x and x < 5.", node);
}

function checkConditions(node: Node): void {
  switch (node.kind) {
    case "unary":
      if (node.sign === "not") requireCondition(node.of, "After not, in brackets,");
      checkConditions(node.of);
      break;
    case "binary":
      if (isLogic(node.sign)) {
        requireCondition(node.left, `Before ${node.sign}`);
        requireCondition(node.right, `After ${node.sign}`);
      }
      if (isComparison(node.sign)) refuseChain(node);
      checkConditions(node.left);
      checkConditions(node.right);
      break;
    case "choice":
      requireCondition(node.condition, "Before the ?");
      checkConditions(node.condition);
      checkConditions(node.yes);
      checkConditions(node.no);
      break;
    case "call":
      node.args.forEach(checkConditions);
      break;
    default:
  }
}

function formulaOf(text: string, currency: string): Formula {
  if (text.length > LONGEST) {
    throw new FormulaTrouble(
      `A formula may have ${LONGEST} signs at the most; this one has ${text.length}.`,
      {
        start: LONGEST,
        end: text.length,
      },
    );
  }
  const tokens = scanTokens(text, currency);
  const calls = checkGrammar(tokens);
  const root = parseTokens(tokens, calls, { start: 0, end: text.length });
  checkConditions(root);
  const names = tokens.flatMap((token, index) =>
    token.kind === "name" && !calls.has(index)
      ? [Object.freeze({ name: token.name, start: token.start, end: token.end })]
      : [],
  );
  return Object.freeze({ text, names: Object.freeze(names), isCondition: isCondition(root), root });
}

/**
 * Reads formula text.
 * @param text at most 500 signs
 * @param options `currency`: the worksheet's money sign or code, "$" when left out
 * @returns the formula, or one problem with its columns [start, end) in the text
 */
export function readFormula(
  text: string,
  options: { readonly currency?: string } = {},
):
  | { readonly ok: true; readonly formula: Formula }
  | { readonly ok: false; readonly problem: FormulaProblem } {
  return orProblem(() => ({ formula: formulaOf(text, options.currency ?? "$") }));
}
