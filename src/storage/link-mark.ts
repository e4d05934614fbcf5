// How an address that bears a worksheet is known, before anything that reads one is fetched.

/** Whether the part of an address behind the # claims to be a worksheet. */
export function isWorksheetLink(fragment: string): boolean {
  return /^#?w\d+=/.test(fragment);
}
