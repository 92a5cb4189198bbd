/** Places where something turns, found by halving. @module */

/** Two neighbouring places, or as near as was asked for, between which a condition turns. */
export interface Turn {
  /** the last place found at which it holds */
  readonly holds: number;
  /** the first place found at which it does not */
  readonly fails: number;
}

/**
 * Halves a range in which a condition holds at one end and fails at the other.
 *
 * @param condition holds at `holds`, fails at `fails` and turns once between; neither end is tried
 * @param holds end of the range, any unit
 * @param fails other end, same unit; above or below the first
 * @param within width of the range that will do; 0, down to neighbouring numbers, unless given
 * @returns both ends of what is left
 */
export function halve(
  condition: (place: number) => boolean,
  holds: number,
  fails: number,
  within = 0,
): Turn {
  while (Math.abs(fails - holds) > within) {
    const middle = (holds + fails) / 2;
    if (middle === holds || middle === fails) break;
    if (condition(middle)) holds = middle;
    else fails = middle;
  }
  return { holds, fails };
}
