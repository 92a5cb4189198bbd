/** The quick estimate of a design, corrected by the years that were run. @module */
import { Matrix, solve } from "ml-matrix";
import { findTube } from "../../tubes/mod.ts";
import type { DesignChoice, DesignYear } from "./types.ts";

/** What is foretold of a design whose year was not run. */
export interface Foretold {
  /** kWh a year saved */
  readonly saved: number;
  /** kWh a year of the fans' electricity */
  readonly fanEnergy: number;
  /** h a year below the crop's limit that are left */
  readonly hours: number;
}

/** A design with the quick estimate of its year. */
export interface EstimatedDesign {
  /** what was chosen */
  readonly choice: DesignChoice;
  /** what the quick estimate makes of its year */
  readonly estimate: Pick<DesignYear, "saved" | "fanEnergy">;
}

/** A design whose year was run. */
export interface KnownDesign extends EstimatedDesign {
  /** its year */
  readonly year: Foretold;
}

/** Weight that keeps the correction small where few years speak for it: our own choice. */
const RIDGE = 0.03;
/** The correction stays within this ratio of the estimate. */
const MOST = 20;
/** K that count as one step of control. */
const STEP = 4;

/**
 * Regresses heat saved and the fans' electricity over the estimate, and hours left, on the parts of the
 * designs run: the logarithm of each on the logarithms of the parts, with squares of what has a best place inside its range, by
 * least squares with a weight against large coefficients (Hoerl & Kennard 1970 [hoerl-kennard-1970]).
 *
 * @param known designs whose years were run, the study's own first
 * @returns what is foretold of others; the estimate itself for a design like the own where nothing differs
 */
export function correction(
  known: readonly KnownDesign[],
): (design: EstimatedDesign) => Foretold {
  const own = known[0]!;
  const features = (design: EstimatedDesign) => featuresOf(design, own);
  const rows = known.map(features);
  const heat = ridge(rows, known.map((one) => ratioOf(one.year.saved, one.estimate.saved)));
  const fans = ridge(rows, known.map((one) => ratioOf(one.year.fanEnergy, one.estimate.fanEnergy)));
  const hours = ridge(rows, known.map(({ year }) => Math.log1p(Math.max(0, year.hours))));
  return (design) => {
    const row = features(design);
    return {
      saved: design.estimate.saved * within(Math.exp(dot(row, heat))),
      fanEnergy: design.estimate.fanEnergy * within(Math.exp(dot(row, fans))),
      hours: Math.max(0, Math.expm1(dot(row, hours))),
    };
  };
}

const within = (ratio: number) => Math.min(MOST, Math.max(1 / MOST, ratio));

/** Logarithm of what a year said over what was estimated; nought where nothing was. */
function ratioOf(value: number, estimate: number): number {
  return estimate > 0 ? Math.log(within(value / estimate)) : 0;
}

function featuresOf({ choice, estimate }: EstimatedDesign, own: EstimatedDesign): number[] {
  const over = (value: number, base: number) =>
    Math.log(Math.max(0.1, value) / Math.max(0.1, base));
  const base = own.choice;
  const size = over(estimate.saved, own.estimate.saved);
  const air = over(choice.airFlow, base.airFlow);
  const spacing = over(choice.spacing, base.spacing);
  const depth = over(choice.depth, base.depth);
  const board = +choice.edgeBoard - +base.edgeBoard;
  const start = over(choice.chargeStart, base.chargeStart);
  const below = (choice.dischargeBelow - base.dischargeBelow) / STEP;
  const inside = (tube: string) => findTube(tube).insideDiameter;
  return [
    1,
    size,
    air,
    spacing,
    depth,
    board,
    start,
    below,
    over(choice.count, base.count),
    over(choice.length, base.length),
    over(inside(choice.tube), inside(base.tube)),
    choice.layers - base.layers,
    size ** 2,
    air ** 2,
    start ** 2,
    below ** 2,
    below * air,
    spacing * depth,
    board * depth,
  ];
}

/** Coefficients; the first, of the constant, is free. */
function ridge(rows: readonly (readonly number[])[], values: readonly number[]): readonly number[] {
  const matrix = new Matrix(rows.map((row) => [...row]));
  const turned = matrix.transpose();
  const normal = turned.mmul(matrix);
  for (let k = 1; k < normal.rows; k++) normal.set(k, k, normal.get(k, k) + RIDGE);
  return solve(normal, turned.mmul(Matrix.columnVector([...values]))).to1DArray();
}

const dot = (row: readonly number[], coefficients: readonly number[]) =>
  row.reduce((sum, value, k) => sum + value * coefficients[k]!, 0);
