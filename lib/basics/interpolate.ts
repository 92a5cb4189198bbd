/** Straight lines between points. @module */

/**
 * Value on straight lines between points; the end values hold outside them.
 *
 * @param at places of the points, rising, one or more; any unit
 * @param values values there; any unit
 * @param place where, in the unit of `at`
 * @returns in the unit of `values`
 */
export function straightBetween(
  at: ArrayLike<number>,
  values: ArrayLike<number>,
  place: number,
): number {
  const last = at.length - 1;
  if (place <= at[0]!) return values[0]!;
  if (place >= at[last]!) return values[last]!;
  let upper = 1;
  while (at[upper]! < place) upper++;
  const share = (place - at[upper - 1]!) / (at[upper]! - at[upper - 1]!);
  return values[upper - 1]! + share * (values[upper]! - values[upper - 1]!);
}
