// A title that no kept worksheet has yet: two under one name could not be told apart in the list.

/**
 * The title, or one that tells where it is from, or one with a number.
 *
 * @param from who sent it, or empty
 */
export function freeTitle(title: string, taken: ReadonlySet<string>, from = ""): string {
  if (!taken.has(title)) return title;
  const name = from.split(/[,(]/)[0]?.trim() ?? "";
  const told = name === "" ? title : `${title} (from ${name})`;
  if (!taken.has(told)) return told;
  let number = 2;
  while (taken.has(`${told} ${number}`)) number++;
  return `${told} ${number}`;
}
