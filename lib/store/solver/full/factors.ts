/** Tridiagonal factors of the alternating-direction step, and its plain form. @module */
import type { ConductionOperator } from "../../ground/operator.ts";

/**
 * Factors of one step length. With m = 2M/Δt, X sideways and Y vertical conduction (Y with the
 * surfaces), the step is Peaceman–Rachford:
 * (m + X) T* = (m − Y) Tₙ + s, (m + Y) Tₙ₊₁ = (m − X) T* + s.
 *
 * Source: Peaceman & Rachford 1955 [peaceman-rachford-1955]. Second order in time, stable for any
 * step.
 */
export interface AdiFactors {
  /** 2M/Δt, W/(m K) */
  readonly mass: Float64Array;
  /** conductance of surfaces on each cell, W/(m K) */
  readonly surface: Float64Array;
  /** reciprocal pivots and eliminated neighbours, along rows and down columns */
  readonly rowPivot: Float64Array;
  readonly rowNext: Float64Array;
  readonly columnPivot: Float64Array;
  readonly columnNext: Float64Array;
  /**
   * the same as the kernel reads them, four for each cell and times the pivots: its own value,
   * those above, below and to the left of it
   */
  readonly across: Float64Array;
  /** and T*, the right-hand side before (taken off), the value above, the eliminated neighbour */
  readonly along: Float64Array;
}

/** Sum of the surface conductances on each cell. */
export function surfaceConductance(operator: ConductionOperator): Float64Array {
  const surface = new Float64Array(operator.capacity.length);
  for (const port of [operator.floor, operator.outdoor, operator.deep]) {
    port.cells.forEach((cell, k) => surface[cell]! += port.conductances[k]!);
  }
  return surface;
}

/** Factors for steps of `seconds`. */
export function adiFactors(operator: ConductionOperator, seconds: number): AdiFactors {
  const { columns, rows, capacity, sideways, downwards } = operator;
  const count = columns * rows;
  const mass = capacity.map((value) => (2 * value) / seconds);
  const surface = surfaceConductance(operator);
  const rowPivot = new Float64Array(count);
  const rowNext = new Float64Array(count);
  const columnPivot = new Float64Array(count);
  const columnNext = new Float64Array(count);
  for (let c = 0; c < count; c++) {
    const left = c % columns > 0 ? sideways[c - 1]! : 0;
    const carried = left === 0 ? 0 : left * rowNext[c - 1]!;
    rowPivot[c] = 1 / (mass[c]! + left + sideways[c]! - carried);
    rowNext[c] = sideways[c]! * rowPivot[c]!;
    const up = c >= columns ? downwards[c - columns]! : 0;
    const above = up === 0 ? 0 : up * columnNext[c - columns]!;
    columnPivot[c] = 1 / (mass[c]! + up + downwards[c]! + surface[c]! - above);
    columnNext[c] = downwards[c]! * columnPivot[c]!;
  }
  const plain = { mass, surface, rowPivot, rowNext, columnPivot, columnNext };
  return { ...plain, ...packed(operator, plain) };
}

/**
 * The factors in the order and form in which the kernel needs them. The second half step's right
 * side is (m − X) T* = 2m T* − (m − Y) Tₙ, so it needs no neighbours.
 */
function packed(
  { columns, sideways, downwards }: ConductionOperator,
  plain: Omit<AdiFactors, "across" | "along">,
): Pick<AdiFactors, "across" | "along"> {
  const { mass, surface, rowPivot, rowNext, columnPivot } = plain;
  const across = new Float64Array(4 * mass.length);
  const along = new Float64Array(4 * mass.length);
  for (let c = 0; c < mass.length; c++) {
    const up = c >= columns ? downwards[c - columns]! : 0;
    const left = c % columns > 0 ? sideways[c - 1]! : 0;
    const own = mass[c]! - up - downwards[c]! - surface[c]!;
    across.set([own, up, downwards[c]!, left].map((value) => value * rowPivot[c]!), 4 * c);
    const pivot = columnPivot[c]!;
    along.set([2 * mass[c]! * pivot, pivot / rowPivot[c]!, up * pivot, rowNext[c]!], 4 * c);
  }
  return { across, along };
}

/**
 * One step of a single slice written plainly, with sources. Used for unit responses and as the
 * check of the fast kernel.
 *
 * @param operator slice
 * @param factors of the step length
 * @param field degC, start of the step
 * @param source W/m into each cell
 * @returns degC, end of the step
 */
export function adiStep(
  operator: ConductionOperator,
  factors: AdiFactors,
  field: Float64Array,
  source: Float64Array,
): Float64Array {
  const { columns, sideways, downwards } = operator;
  const count = field.length;
  const middle = new Float64Array(count);
  const end = new Float64Array(count);
  for (let c = 0; c < count; c++) {
    const t = field[c]!;
    const up = c >= columns ? downwards[c - columns]! * (field[c - columns]! - t) : 0;
    const down = c + columns < count ? downwards[c]! * (field[c + columns]! - t) : 0;
    const given = factors.mass[c]! * t + up + down - factors.surface[c]! * t + source[c]!;
    const left = c % columns > 0 ? sideways[c - 1]! * middle[c - 1]! : 0;
    middle[c] = (given + left) * factors.rowPivot[c]!;
  }
  for (let c = count - 2; c >= 0; c--) {
    if (c % columns < columns - 1) middle[c]! += factors.rowNext[c]! * middle[c + 1]!;
  }
  for (let c = 0; c < count; c++) {
    const t = middle[c]!;
    const left = c % columns > 0 ? sideways[c - 1]! * (middle[c - 1]! - t) : 0;
    const right = c % columns < columns - 1 ? sideways[c]! * (middle[c + 1]! - t) : 0;
    const up = c >= columns ? downwards[c - columns]! * end[c - columns]! : 0;
    end[c] = (factors.mass[c]! * t + left + right + source[c]! + up) * factors.columnPivot[c]!;
  }
  for (let c = count - 1 - columns; c >= 0; c--) {
    end[c]! += factors.columnNext[c]! * end[c + columns]!;
  }
  return end;
}

/** Cells that feel a port within one step, and by how much for 1 W/m or 1 K. */
export interface PortResponse {
  readonly cells: Int32Array;
  readonly values: Float64Array;
}

/** Response of one step to a constant source; entries below 1e-13 of the largest are left out. */
export function portResponse(
  operator: ConductionOperator,
  factors: AdiFactors,
  source: Float64Array,
): PortResponse {
  const end = adiStep(operator, factors, new Float64Array(source.length), source);
  const largest = end.reduce((high, value) => Math.max(high, Math.abs(value)), 0);
  const cells: number[] = [];
  end.forEach((value, c) => {
    if (Math.abs(value) > 1e-13 * largest) cells.push(c);
  });
  return { cells: Int32Array.from(cells), values: Float64Array.from(cells, (c) => end[c]!) };
}
