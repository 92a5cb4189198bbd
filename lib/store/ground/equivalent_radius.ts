/** At which radius a block of cells shows the temperature of a line source. @module */

/** Cells along one axis: a block of equal cells in the middle, neighbours growing away. */
interface Patch {
  readonly widths: readonly number[];
  readonly heights: readonly number[];
  readonly blockColumns: readonly [number, number];
  readonly blockRows: readonly [number, number];
  /** true: the heat enters the outermost cells of the block only, and their mean is read */
  readonly rim?: boolean;
}

function centresAbout(sizes: readonly number[], middle: number): number[] {
  let position = -middle;
  return sizes.map((size) => (position += size) - size / 2);
}

/**
 * Equivalent radius of a tube's block: the radius at which the exact logarithmic field of a line
 * source equals the block's mean temperature, T̄ = −ln(r_eq)/(2πλ).
 *
 * Solved on the patch around the tube, unit source spread over the block, exact logarithm held on
 * the outermost ring. Source of the idea: Peaceman 1978 [peaceman-1978], there r = 0.2 h for one
 * square cell in a uniform mesh.
 *
 * @param patch cell sizes around the tube and the range of the block, ends excluded
 * @returns m
 */
export function equivalentRadius(patch: Patch): number {
  const { widths, heights, blockColumns, blockRows } = patch;
  const before = (sizes: readonly number[], range: readonly [number, number]) =>
    sum(sizes.slice(0, range[0])) + sum(sizes.slice(range[0], range[1])) / 2;
  const x = centresAbout(widths, before(widths, blockColumns));
  const y = centresAbout(heights, before(heights, blockRows));
  const columns = widths.length;
  const rows = heights.length;
  const field = new Float64Array(columns * rows);
  const source = new Float64Array(columns * rows);
  let fed = 0;
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      field[j * columns + i] = -Math.log(Math.max(Math.hypot(x[i]!, y[j]!), 1e-3)) / (2 * Math.PI);
      const inside = i >= blockColumns[0] && i < blockColumns[1] && j >= blockRows[0] &&
        j < blockRows[1];
      const core = patch.rim === true && i > blockColumns[0] && i < blockColumns[1] - 1 &&
        j > blockRows[0] && j < blockRows[1] - 1;
      source[j * columns + i] = inside && !core ? widths[i]! * heights[j]! : 0;
      fed += source[j * columns + i]!;
    }
  }
  for (let c = 0; c < source.length; c++) source[c]! /= fed;
  relax({ field, source, widths, heights });
  let mean = 0;
  for (let c = 0; c < field.length; c++) mean += source[c]! * field[c]!;
  return Math.exp(-2 * Math.PI * mean);
}

/** Gauss–Seidel with over-relaxation until the field stands still; the rim stays as given. */
function relax(state: {
  readonly field: Float64Array;
  readonly source: Float64Array;
  readonly widths: readonly number[];
  readonly heights: readonly number[];
}): void {
  const { field, source, widths, heights } = state;
  const columns = widths.length;
  const rows = heights.length;
  const over = 2 / (1 + Math.sin(Math.PI / Math.max(columns, rows)));
  for (let sweep = 0; sweep < 2000; sweep++) {
    let change = 0;
    for (let j = 1; j < rows - 1; j++) {
      for (let i = 1; i < columns - 1; i++) {
        const c = j * columns + i;
        const west = 2 * heights[j]! / (widths[i]! + widths[i - 1]!);
        const east = 2 * heights[j]! / (widths[i]! + widths[i + 1]!);
        const up = 2 * widths[i]! / (heights[j]! + heights[j - 1]!);
        const down = 2 * widths[i]! / (heights[j]! + heights[j + 1]!);
        const flow = west * field[c - 1]! + east * field[c + 1]! + up * field[c - columns]! +
          down * field[c + columns]! + source[c]!;
        const next = flow / (west + east + up + down);
        const step = over * (next - field[c]!);
        field[c]! += step;
        change = Math.max(change, Math.abs(step));
      }
    }
    if (change < 1e-12) return;
  }
}
import { sum } from "d3-array";
