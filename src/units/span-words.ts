// Two ends as one text, the unit said once.

const UNIT_BEHIND = /^(?<number>.*\d)(?<unit>\D*)$/u;
const daysAlike = (unit: string): string => unit.replace(/\bday\b/, "days");

/** Two texts of one kind as one: "20 to 26 days". */
export function spanWords(low: string, high: string): string {
  if (low === high) return low;
  const [one, other] = [UNIT_BEHIND.exec(low)?.groups, UNIT_BEHIND.exec(high)?.groups];
  const isSame = one?.["unit"] && daysAlike(one["unit"]) === daysAlike(other?.["unit"] ?? "");
  const plain = isSame && !/\d\D+\d/.test((one["number"] ?? "").replaceAll(/[.,]/g, ""));
  return `${plain ? one["number"] : low} to ${high}`;
}
