/** At which radius the cells along a tube's wall show the temperature of a line source. @module */
import { betweenCells, cutMesh, edgesOf, wallByCell } from "./tube_cut.ts";

/** Cells round a tube: those it cuts and their neighbours. */
interface Patch {
  readonly widths: readonly number[];
  readonly heights: readonly number[];
  /** first cell and one past the last of those the tube cuts; it lies in their middle */
  readonly blockColumns: readonly [number, number];
  readonly blockRows: readonly [number, number];
  /** m; 0 spreads the heat over the whole block instead of a wall */
  readonly radius: number;
}

function middleOf(edges: Float64Array, range: readonly [number, number]): number {
  return (edges[range[0]]! + edges[range[1]]!) / 2;
}

/** Share of the source by cell. */
function sourceOf(patch: Patch, x: Float64Array, y: Float64Array): Float64Array {
  const { widths, heights, blockColumns, blockRows, radius } = patch;
  const source = new Float64Array(widths.length * heights.length);
  const [left, right] = blockColumns;
  const [top, bottom] = blockRows;
  const middle = { x: middleOf(x, blockColumns), y: middleOf(y, blockRows) };
  const shares = radius > 0
    ? wallByCell(
      Array.from(x.slice(left, right + 1), (edge) => edge - middle.x),
      Array.from(y.slice(top, bottom + 1), (edge) => edge - middle.y),
      radius,
    )
    : null;
  const area = (x[right]! - x[left]!) * (y[bottom]! - y[top]!);
  for (let j = top; j < bottom; j++) {
    for (let i = left; i < right; i++) {
      source[j * widths.length + i] = shares?.[(j - top) * (right - left) + i - left] ??
        widths[i]! * heights[j]! / area;
    }
  }
  return source;
}

/**
 * Equivalent radius of the cells along a tube's wall: the radius at which the exact logarithmic
 * field of a line source equals their mean temperature, T̄ = −ln(r_eq)/(2πλ), weighted as the heat
 * enters them.
 *
 * Solved on the patch around the tube, unit source, exact logarithm held on the outermost ring.
 * Source of the idea: Peaceman 1978 [peaceman-1978], there r = 0.2 h for one square cell in a
 * uniform mesh.
 *
 * @param patch cell sizes around the tube and the range of its block, ends excluded
 * @returns m
 */
export function equivalentRadius(patch: Patch): number {
  const { widths, heights, blockColumns, blockRows, radius } = patch;
  const [x, y] = [edgesOf(widths), edgesOf(heights)];
  const tube = {
    columns: blockColumns,
    rows: blockRows,
    x: middleOf(x, blockColumns),
    y: middleOf(y, blockRows),
  };
  const cut = cutMesh(widths, heights, radius > 0 ? [tube] : [], radius);
  const columns = widths.length;
  const source = sourceOf(patch, x, y);
  const field = Float64Array.from(source, (_, c) => {
    const away = Math.hypot(
      x[c % columns]! + cut.across[c]! - tube.x,
      y[Math.floor(c / columns)]! + cut.down[c]! - tube.y,
    );
    return -Math.log(Math.max(away, 1e-3)) / (2 * Math.PI);
  });
  const conductances = Array.from(source, (_, c) => betweenCells(widths, heights, cut, c));
  relax({
    field,
    source,
    columns,
    right: Float64Array.from(conductances, ({ right }) => right),
    below: Float64Array.from(conductances, ({ below }) => below),
  });
  let mean = 0;
  for (let c = 0; c < field.length; c++) mean += source[c]! * field[c]!;
  return Math.exp(-2 * Math.PI * mean);
}

/** Gauss–Seidel with over-relaxation until the field stands still; the rim stays as given. */
function relax(state: {
  readonly field: Float64Array;
  readonly source: Float64Array;
  readonly columns: number;
  readonly right: Float64Array;
  readonly below: Float64Array;
}): void {
  const { field, source, columns, right, below } = state;
  const rows = field.length / columns;
  const over = 2 / (1 + Math.sin(Math.PI / Math.max(columns, rows)));
  for (let sweep = 0; sweep < 4000; sweep++) {
    let change = 0;
    for (let j = 1; j < rows - 1; j++) {
      for (let i = 1; i < columns - 1; i++) {
        const c = j * columns + i;
        const [west, east] = [right[c - 1]!, right[c]!];
        const [up, down] = [below[c - columns]!, below[c]!];
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
