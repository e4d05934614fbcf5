// A dip that says more than its tank holds: it counts once its grower says that it was read so.

/** Rounding of what was typed and is held [-]. */
const ROUNDING = 1e-6;

/** Whether a depth is more than something holds: depths [m] or volumes [m3] alike. */
export const isOver = (read: number, holds: number): boolean => read > holds * (1 + ROUNDING);

/** What a grower says of a reading that can hardly be right, once asked. */
export const AS_READ = "as read";

/** Whether a dip counts: what says no more than its tank holds, or was asked about and read so. */
export const dipCounts = (read: number, holds: number, isAsRead: boolean): boolean =>
  isAsRead || !isOver(read, holds);

const wordsOf = (text: string): readonly string[] => text.split(", ");

/** Whether a note's text says such a word, beside others. */
export const saysSo = (text: string | undefined, word: string): boolean =>
  text !== undefined && wordsOf(text).includes(word);

/** A note's text with a word more. */
export const sayingToo = (text: string | undefined, word: string): string =>
  text === undefined || text === "" ? word : saysSo(text, word) ? text : `${text}, ${word}`;
