/** What a mesh answers to a sine of heat at its tube, solved exactly for that mesh. @module */
import { surfaceConductance } from "../../lib/store/solver/full/factors.ts";
import type { ConductionOperator } from "../../lib/store/ground/operator.ts";

/**
 * Temperature of the wall of the first tube over its heat in a sine wave, (K + iωM)·T = b solved by
 * elimination without pivots in a band (K + iωM is symmetric with a positive definite real part).
 *
 * @param operator mesh
 * @param period s
 * @returns m K/W for the whole tube
 */
export function wallImpedance(
  operator: ConductionOperator,
  period: number,
): { readonly re: number; readonly im: number } {
  const { columns, capacity, sideways, downwards, tubes } = operator;
  const size = capacity.length;
  const omega = 2 * Math.PI / period;
  const width = columns + 1;
  const surface = surfaceConductance(operator);
  // upper band of the row: [c·width + k] joins c and c + k
  const re = new Float64Array(size * width);
  const im = new Float64Array(size * width);
  for (let c = 0; c < size; c++) {
    re[c * width]! += surface[c]!;
    im[c * width] = omega * capacity[c]!;
    const joined: [number, number][] = [[1, sideways[c]!], [columns, downwards[c]!]];
    for (const [k, conductance] of joined) {
      if (conductance === 0) continue;
      re[c * width]! += conductance;
      re[(c + k) * width]! += conductance;
      re[c * width + k]! -= conductance;
    }
  }
  const tube = tubes[0]!;
  const [x, y] = [new Float64Array(size), new Float64Array(size)];
  tube.cells.forEach((cell, k) => x[cell] = tube.weights[k]!);
  for (let c = 0; c < size; c++) {
    const [pr, pi] = [re[c * width]!, im[c * width]!];
    const norm = pr * pr + pi * pi;
    for (let k = 1; k < width && c + k < size; k++) {
      const [ar, ai] = [re[c * width + k]!, im[c * width + k]!];
      if (ar === 0 && ai === 0) continue;
      const [fr, fi] = [(ar * pr + ai * pi) / norm, (ai * pr - ar * pi) / norm];
      for (let j = k; j < width; j++) {
        const [br, bi] = [re[c * width + j]!, im[c * width + j]!];
        re[(c + k) * width + j - k]! -= fr * br - fi * bi;
        im[(c + k) * width + j - k]! -= fr * bi + fi * br;
      }
      x[c + k]! -= fr * x[c]! - fi * y[c]!;
      y[c + k]! -= fr * y[c]! + fi * x[c]!;
    }
  }
  for (let c = size - 1; c >= 0; c--) {
    let [sr, si] = [x[c]!, y[c]!];
    for (let k = 1; k < width && c + k < size; k++) {
      const [ar, ai] = [re[c * width + k]!, im[c * width + k]!];
      sr -= ar * x[c + k]! - ai * y[c + k]!;
      si -= ar * y[c + k]! + ai * x[c + k]!;
    }
    const [pr, pi] = [re[c * width]!, im[c * width]!];
    const norm = pr * pr + pi * pi;
    x[c] = (sr * pr + si * pi) / norm;
    y[c] = (si * pr - sr * pi) / norm;
  }
  let [real, imaginary] = [0, 0];
  tube.cells.forEach((cell, k) => {
    real += tube.weights[k]! * x[cell]!;
    imaginary += tube.weights[k]! * y[cell]!;
  });
  return { re: tube.part * real + tube.resistance, im: tube.part * imaginary };
}
