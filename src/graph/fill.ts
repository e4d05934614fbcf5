// Texts with numbers to be put in: "{count} days".

/** What is counted in them: one of it goes without its "s". */
const HOLE = /\{([a-z0-9_.]*)\}(\s(?:days|goes|tankfuls|hoses|trips|waterings)\b)?/g;

const oneOf = (things: string): string => things.replace(/(?<=go)es$|s$/, "");

/**
 * A text with what stands for each name put in: "{days_short} days" becomes "8 days", or "1 day".
 * @param find what stands for a name, "" for "{}"
 */
export const filledWith = (text: string, find: (name: string) => string): string =>
  text.replace(HOLE, (_, name: string, things = "") => {
    const shown = find(name);
    return `${shown}${shown === "1" ? oneOf(things) : things}`;
  });
