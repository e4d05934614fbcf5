// A formula as a reader sees it: typeset signs, as few brackets as keep the meaning, conditions and functions in words.

import { FUNCTIONS } from "./functions.ts";
import type { BinaryNode, BinarySign, Formula, Node } from "./tree.ts";

/** How tightly a part holds together; a looser part inside a tighter one gets brackets. */
const CHOICE = 0;
const COMPARISON = 3;
const NEGATION = 6;
const POWER = 7;
const ATOM = 8;

type Shown = { readonly text: string; readonly binds: number };

const BINDS: Readonly<Record<BinarySign, number>> = {
  or: 1,
  and: 2,
  "<": COMPARISON,
  "<=": COMPARISON,
  ">": COMPARISON,
  ">=": COMPARISON,
  "==": COMPARISON,
  "!=": COMPARISON,
  "+": 4,
  "-": 4,
  "*": 5,
  "/": 5,
  "^": POWER,
};

const TYPESET: Readonly<Record<BinarySign, string>> = {
  or: "or",
  and: "and",
  "<": "<",
  "<=": "≤",
  ">": ">",
  ">=": "≥",
  "==": "=",
  "!=": "≠",
  "+": "+",
  "-": "−",
  "*": "×",
  "/": "÷",
  "^": "^",
};

const RAISED: Readonly<Record<string, string>> = { "2": "²", "3": "³" };

function within(shown: Shown, least: number): string {
  return shown.binds < least ? `(${shown.text})` : shown.text;
}

/** A number or label put in for a name: one with a sign or a space holds together less than one word does. */
function piece(text: string): Shown {
  if (/^[-−]/.test(text)) return { text, binds: NEGATION };
  return { text, binds: /^[\p{L}\p{N}_.,]+$/u.test(text) ? ATOM : POWER };
}

function binary(node: BinaryNode, left: Shown, right: Shown): Shown {
  const binds = BINDS[node.sign];
  if (node.sign === "^") {
    const base = within(left, ATOM);
    const raised = RAISED[right.text];
    return { text: raised ? `${base}${raised}` : `${base}^${within(right, NEGATION)}`, binds };
  }
  const before = within(left, binds === COMPARISON ? binds + 1 : binds);
  // A minus directly after another sign is put in brackets; it is easily read over.
  const after = /^[-−]/.test(right.text) ? `(${right.text})` : within(right, binds + 1);
  return { text: `${before} ${TYPESET[node.sign]} ${after}`, binds };
}

/** A typed unit as it is printed: "9.8 m/s2" becomes "9.8 m/s²". */
function raisePowers(text: string): string {
  return text.replace(/(?<=\p{L})\^?([23])(?![\d\p{L}.])/gu, (_, power: string) => RAISED[power] ?? power);
}

function shownNode(node: Node, show: (name: string) => string): Shown {
  switch (node.kind) {
    case "literal":
      return piece(raisePowers(node.shown));
    case "name":
      return piece(show(node.name));
    case "unary": {
      const of = shownNode(node.of, show);
      if (node.sign === "not") return { text: `not (${of.text})`, binds: NEGATION };
      return { text: `−${/^[-−]/.test(of.text) ? `(${of.text})` : within(of, NEGATION)}`, binds: NEGATION };
    }
    case "binary":
      return binary(node, shownNode(node.left, show), shownNode(node.right, show));
    case "choice": {
      const [condition, yes, no] = [node.condition, node.yes, node.no].map((part) => shownNode(part, show));
      if (!condition || !yes || !no) throw new TypeError("A choice has three parts.");
      const parts = `if ${within(condition, 1)} then ${within(yes, 1)} otherwise ${no.text}`;
      return { text: parts, binds: CHOICE };
    }
    default: {
      const args = node.args.map((arg) => shownNode(arg, show).text).join(", ");
      return { text: `${FUNCTIONS.get(node.name)?.shown ?? node.name} (${args})`, binds: POWER };
    }
  }
}

/**
 * The formula in a reader's signs and words.
 * @param show what stands for a name: its label, or its number with the unit
 */
export function showFormula(formula: Formula, show: (name: string) => string): string {
  return shownNode(formula.root, show).text;
}
