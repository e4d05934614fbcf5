// Undo and redo of whole documents: values, frozen, sharing whatever did not change.

/** One edit: the document on its other side, and what the edit was. */
export type Step<T> = { readonly document: T; readonly label: string };

export type History<T> = {
  /** Oldest first; each with the document before its edit. */
  readonly past: readonly Step<T>[];
  readonly present: T;
  /** Next to redo first; each with the document after its edit. */
  readonly future: readonly Step<T>[];
  /** Edits with this key still join the last step. */
  readonly merging: string | null;
};

export type CommitOptions = {
  /** What was done, as `editLabel` words it. */
  readonly label: string;
  /** Edits with the same key in a row, as of one slider, are undone together. */
  readonly merge?: string;
};

/** Steps that can be undone; the oldest are forgotten. */
const LONGEST_HISTORY = 500;

function history<T>(
  past: readonly Step<T>[],
  present: T,
  future: readonly Step<T>[],
  merging: string | null,
): History<T> {
  return Object.freeze({ past: Object.freeze(past), present, future: Object.freeze(future), merging });
}

/** A document that nothing has been done to yet. */
export function startHistory<T>(document: T): History<T> {
  return history([], document, [], null);
}

/** What an edit is called: "Capacity of Main tank". */
export function editLabel(what: string, cardTitle: string): string {
  return `${what} of ${cardTitle}`;
}

/**
 * Puts an edited document in the present. What could be redone is forgotten; the same document changes nothing.
 *
 * @param longest steps kept at the most
 */
export function commit<T>(
  before: History<T>,
  document: T,
  options: CommitOptions,
  longest: number = LONGEST_HISTORY,
): History<T> {
  if (document === before.present) return before;
  const key = options.merge ?? null;
  const last = before.past.at(-1);
  if (key !== null && key === before.merging && last) {
    const joined = [...before.past.slice(0, -1), Object.freeze({ ...last, label: options.label })];
    return history(joined, document, [], key);
  }
  const step = Object.freeze({ document: before.present, label: options.label });
  return history([...before.past, step].slice(-longest), document, [], key);
}

/** Ends the joining of edits: the next one is a step of its own. */
export function stepEnded<T>(before: History<T>): History<T> {
  return before.merging === null ? before : history(before.past, before.present, before.future, null);
}

/** The step that edits still join is gone as if it had not been made; the same history where none is open. */
export function dropped<T>(before: History<T>): History<T> {
  const last = before.past.at(-1);
  if (before.merging === null || !last) return before;
  return history(before.past.slice(0, -1), last.document, [], null);
}

/** Another document in the present, and no step: what undo never takes away. */
export function amended<T>(before: History<T>, document: T): History<T> {
  return document === before.present ? before : history(before.past, document, before.future, null);
}

/** Takes the last edit back; the same history where there is none. */
export function undo<T>(before: History<T>): History<T> {
  const last = before.past.at(-1);
  if (!last) return before;
  const step = Object.freeze({ document: before.present, label: last.label });
  return history(before.past.slice(0, -1), last.document, [step, ...before.future], null);
}

/** Does the edit last undone again; the same history where there is none. */
export function redo<T>(before: History<T>): History<T> {
  const [next, ...rest] = before.future;
  if (!next) return before;
  const step = Object.freeze({ document: before.present, label: next.label });
  return history([...before.past, step], next.document, rest, null);
}

export function canUndo<T>(of: History<T>): boolean {
  return of.past.length > 0;
}

export function canRedo<T>(of: History<T>): boolean {
  return of.future.length > 0;
}

/** What undo would take back, or null. */
export function undoLabel<T>(of: History<T>): string | null {
  return of.past.at(-1)?.label ?? null;
}

/** What redo would do again, or null. */
export function redoLabel<T>(of: History<T>): string | null {
  return of.future[0]?.label ?? null;
}
