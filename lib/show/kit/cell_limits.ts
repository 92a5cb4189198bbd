/** Limits of the cells of a drawn section. @module */

/** Limits between cells whose centres are given; the outer ones lie as far out as the next inside. */
export function cellLimits(centres: readonly number[]): number[] {
  const middle = centres.slice(1).map((centre, index) => (centre + centres[index]!) / 2);
  const first = centres[0]!;
  const last = centres.at(-1)!;
  const start = middle.length === 0 ? first - 0.5 : 2 * first - middle[0]!;
  const end = middle.length === 0 ? first + 0.5 : 2 * last - middle.at(-1)!;
  return [start, ...middle, end];
}
