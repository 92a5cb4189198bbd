/** Values by the name of their month. @module */
import { MONTH_ABBREVIATIONS, MONTH_NAMES } from "../../basics/mod.ts";

/**
 * Twelve values from named months; a month that is not named keeps the value before it.
 *
 * @param key of the study file
 * @param value months by name
 * @param read one value
 * @param refuse tells the user what is wrong
 * @returns twelve values, January first
 */
export function namedMonths(
  key: string,
  value: object,
  read: (value: unknown) => number,
  refuse: (message: string) => never,
): readonly number[] {
  const found = new Map<number, number>();
  for (const [name, one] of Object.entries(value)) {
    const month = monthNamed(name);
    if (month < 0) {
      refuse(`"${key}" has no month "${name}": expected ${MONTH_ABBREVIATIONS.join(", ")}`);
    }
    if (found.has(month)) refuse(`"${key}" gives ${MONTH_NAMES[month]} twice`);
    found.set(month, read(one));
  }
  if (found.size === 0) refuse(`"${key}" names no month`);
  const last = Math.max(...found.keys());
  let held = found.get(last)!;
  return MONTH_NAMES.map((_, month) => held = found.get(month) ?? held);
}

/** 0 to 11 for a month's name or its first three letters in any case; -1 for anything else. */
function monthNamed(name: string): number {
  const word = name.trim().toLowerCase();
  return MONTH_NAMES.findIndex((month) =>
    month.toLowerCase() === word || month.slice(0, 3).toLowerCase() === word
  );
}
