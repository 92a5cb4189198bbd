/** Slopes of a function of several numbers by differences. @module */

/** share of a number by which it is moved; the error is the fourth power of it */
const SHARE = 1e-3;

/**
 * Slopes of the values of a function by the central difference of fourth order.
 *
 * @param values function of the numbers; any number of values, always as many
 * @param at where
 * @returns one list for each number: slope of each value, in units of the value per unit of the
 * number
 */
export function slopes(
  values: (at: readonly number[]) => readonly number[],
  at: readonly number[],
): number[][] {
  return at.map((here, j) => {
    const step = here === 0 ? SHARE : SHARE * Math.abs(here);
    const moved = (steps: number) =>
      values(at.map((other, i) => i === j ? other + steps * step : other));
    const [farBack, back, ahead, farAhead] = [moved(-2), moved(-1), moved(1), moved(2)];
    return ahead.map((_, i) =>
      (8 * (ahead[i]! - back[i]!) - (farAhead[i]! - farBack[i]!)) / (12 * step)
    );
  });
}
