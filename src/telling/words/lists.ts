// Lists of things in words, and counts with their thing.

/** "one, two and three". */
export const listed = (items: readonly string[]): string => joined(items, "and");

/** "one, two or three". */
export const perhapsListed = (items: readonly string[]): string => joined(items, "or");

function joined(items: readonly string[], word: string): string {
  return items.length < 2
    ? (items[0] ?? "")
    : `${items.slice(0, -1).join(", ")} ${word} ${items[items.length - 1]}`;
}

/** "1 day", "8 days". */
export const wholeDays = (count: number): string => (count === 1 ? "1 day" : `${count} days`);

/** "1 short day", "8 short days"; and the seasons that they are counted over. */
export const shortDays = (count: number): string => (count === 1 ? "1 short day" : `${count} short days`);
export const inSeasons = (seasons: number): string =>
  seasons === 1 ? "in this one season" : `in ${seasons} seasons`;

/** A label within a line; one that begins with more capitals is a name. */
export const withinLine = (label: string): string =>
  /^[A-Z](?![A-Z])/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;

/** As it begins a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
