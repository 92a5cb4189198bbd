/** Direct solution of the five-point equations of a plane section. @module */

/**
 * Solves the symmetric system of a grid of columns by LDLᵀ within its band.
 *
 * Cell (column i, row j) has index i·rows + j; its neighbours are index + 1 (conductance
 * `below`) and index + rows (`beside`); off-diagonal entries are minus the conductances.
 *
 * @param diagonal sum of conductances of each cell
 * @param below to the cell one row down; 0 in the last row
 * @param beside to the cell one column on; 0 in the last column
 * @param rows cells in a column, the half bandwidth
 * @param right right-hand side
 * @returns the unknowns
 */
export function solveFivePoint(
  diagonal: Float64Array,
  below: Float64Array,
  beside: Float64Array,
  rows: number,
  right: Float64Array,
): Float64Array {
  const size = diagonal.length;
  const width = rows + 1;
  // row-wise lower band: entry (r, r − d) stands at r·width + d
  const band = new Float64Array(size * width);
  for (let r = 0; r < size; r++) {
    band[r * width] = diagonal[r]!;
    if (r >= 1) band[r * width + 1] = -below[r - 1]!;
    if (r >= rows) band[r * width + rows] = rows === 1 ? -below[r - 1]! : -beside[r - rows]!;
  }
  for (let r = 0; r < size; r++) {
    const first = Math.max(0, r - rows);
    const base = r * width + r;
    for (let c = first; c < r; c++) {
      let sum = band[base - c]!;
      const from = Math.max(first, c - rows);
      const other = c * width + c;
      for (let m = from; m < c; m++) sum -= band[base - m]! * band[other - m]!;
      band[base - c] = sum;
    }
    let pivot = band[r * width]!;
    for (let c = first; c < r; c++) {
      const value = band[base - c]!;
      const scaled = value / band[c * width]!;
      pivot -= value * scaled;
      band[base - c] = scaled;
    }
    band[r * width] = pivot;
  }
  return substitute(band, size, rows, right);
}

function substitute(
  band: Float64Array,
  size: number,
  rows: number,
  right: Float64Array,
): Float64Array {
  const width = rows + 1;
  const result = right.slice();
  for (let r = 0; r < size; r++) {
    let sum = result[r]!;
    for (let c = Math.max(0, r - rows); c < r; c++) sum -= band[r * width + r - c]! * result[c]!;
    result[r] = sum;
  }
  for (let r = 0; r < size; r++) result[r] = result[r]! / band[r * width]!;
  for (let r = size - 1; r >= 0; r--) {
    const value = result[r]!;
    for (let c = Math.max(0, r - rows); c < r; c++) {
      result[c] = result[c]! - band[r * width + r - c]! * value;
    }
  }
  return result;
}
