/**
 * Balance of pressures round each pair of neighbouring stations, and Newton's method on it. One file
 * because the residual and its derivatives must stay side by side.
 *
 * The unknowns are the flows in the supply header between the stations: continuity then gives
 * every station and the return header, and the balance round stations i and i+1 holds three neighbouring
 * unknowns only, so that each Newton step is a tridiagonal solve.
 *
 * @module
 */
import { NotConvergedError } from "../basics/mod.ts";
import { type PreparedLine, riseAlong, riseAtTube } from "./header_line.ts";
import type { HeaderNetwork } from "./network.ts";
import type { Station } from "./stations.ts";
import { solveTridiagonal } from "../basics/linear/tridiagonal.ts";
import { stationPressure } from "./tube_pressure.ts";

/** Network with its headers prepared and the flow through it. */
export interface PreparedNetwork {
  readonly stations: readonly Station[];
  readonly supply: PreparedLine;
  readonly return: PreparedLine | null;
  readonly air: HeaderNetwork["air"];
  /** m³/s, whole network */
  readonly airFlow: number;
}

/** Flows at the left ends of the stretches of both headers, and of the stations. */
export interface HeaderFlows {
  readonly supply: Float64Array;
  readonly return: Float64Array;
  readonly stations: Float64Array;
  readonly iterations: number;
  /** Pa */
  readonly residual: number;
}

/** Derivative step, as a share of the mean tube flow. */
const STEP = 1e-6;
const MOST_STEPS = 100;

/** Flow of the return header and of the tubes that goes with given flows of the supply header. */
function completeFlows(network: PreparedNetwork, supply: Float64Array): {
  readonly back: Float64Array;
  readonly tubes: Float64Array;
} {
  const count = network.stations.length;
  const back = new Float64Array(count + 1);
  const tubes = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    tubes[i] = supply[i]! + network.supply.entering[i]! - supply[i + 1]!;
    back[i + 1] = back[i]! + (network.return?.entering[i] ?? 0) + tubes[i]!;
  }
  return { back, tubes };
}

interface Slopes {
  readonly value: Float64Array;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** Rises at the tubes of a header and their derivatives by the flows on both sides. */
function risesAtTubes(line: PreparedLine, flows: Float64Array, step: number): Slopes {
  const value = new Float64Array(line.count);
  const left = new Float64Array(line.count);
  const right = new Float64Array(line.count);
  for (let i = 0; i < line.count; i++) {
    const before = flows[i]! + line.entering[i]!;
    const after = flows[i + 1]!;
    const rise = riseAtTube(line, i, before, after);
    value[i] = rise;
    left[i] = (riseAtTube(line, i, before + step, after) - rise) / step;
    right[i] = (riseAtTube(line, i, before, after + step) - rise) / step;
  }
  return { value, left, right };
}

/** Rises along the stretches of a header and their derivatives. */
function risesAlong(
  line: PreparedLine,
  flows: Float64Array,
  step: number,
): { readonly value: Float64Array; readonly slope: Float64Array } {
  const value = new Float64Array(line.count);
  const slope = new Float64Array(line.count);
  for (let i = 1; i < line.count; i++) {
    const rise = riseAlong(line, i, flows[i]!);
    value[i] = rise;
    slope[i] = (riseAlong(line, i, flows[i]! + step) - rise) / step;
  }
  return { value, slope };
}

/** Adds one header to the balance; `side` is 1 for the supply and −1 for the return header. */
function addLine(
  line: PreparedLine,
  flows: Float64Array,
  sums: Equations & { readonly side: number; readonly step: number },
): void {
  const at = risesAtTubes(line, flows, sums.step);
  const along = risesAlong(line, flows, sums.step);
  const { residual, lower, middle, upper, side } = sums;
  for (let i = 1; i < line.count; i++) {
    const row = i - 1;
    residual[row]! += side * ((at.value[i - 1]! + at.value[i]!) / 2 + along.value[i]!);
    lower[row]! += at.left[i - 1]! / 2;
    middle[row]! += (at.right[i - 1]! + at.left[i]!) / 2 + along.slope[i]!;
    upper[row]! += at.right[i]! / 2;
  }
}

interface Equations {
  readonly residual: Float64Array;
  readonly lower: Float64Array;
  readonly middle: Float64Array;
  readonly upper: Float64Array;
}

/** Residuals round each pair of tubes, Pa, and their derivatives by the supply header's flows. */
function equations(network: PreparedNetwork, supply: Float64Array, step: number): Equations {
  const rows = network.stations.length - 1;
  const sums: Equations = {
    residual: new Float64Array(rows),
    lower: new Float64Array(rows),
    middle: new Float64Array(rows),
    upper: new Float64Array(rows),
  };
  const { back, tubes } = completeFlows(network, supply);
  addLine(network.supply, supply, { ...sums, side: 1, step });
  if (network.return !== null) addLine(network.return, back, { ...sums, side: -1, step });
  let before = pressureOf(network, 0, tubes[0]!);
  let slopeBefore = tubeSlope(network, 0, tubes[0]!, before, step);
  for (let i = 1; i <= rows; i++) {
    const loss = pressureOf(network, i, tubes[i]!);
    const slope = tubeSlope(network, i, tubes[i]!, loss, step);
    sums.residual[i - 1]! += before - loss;
    sums.lower[i - 1]! += slopeBefore;
    sums.middle[i - 1]! -= slopeBefore + slope;
    sums.upper[i - 1]! += slope;
    before = loss;
    slopeBefore = slope;
  }
  return sums;
}

function pressureOf(network: PreparedNetwork, station: number, flow: number): number {
  return stationPressure(network.stations[station]!.tubes, flow, network.air);
}

/** Derivative of a station's loss, kept above zero so that a standing tube does not stop the solver. */
function tubeSlope(
  network: PreparedNetwork,
  tube: number,
  flow: number,
  loss: number,
  step: number,
): number {
  const slope = (pressureOf(network, tube, flow + step) - loss) / step;
  const least = pressureOf(network, tube, 100 * step) / (100 * step);
  return Math.max(slope, least);
}

function largest(values: Float64Array): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}

/**
 * Finds the flows that balance the pressures round every pair of tubes.
 *
 * @param network the prepared network
 * @returns the flows
 * @throws {NotConvergedError} where Newton's method does not settle
 */
export function balanceFlows(network: PreparedNetwork): HeaderFlows {
  const count = network.stations.length;
  const mean = network.airFlow / count;
  const step = STEP * Math.abs(mean);
  let supply = evenFlows(network);
  let system = equations(network, supply, step);
  let residual = largest(system.residual);
  const scale = Math.abs(pressureOf(network, 0, mean));
  const enough = 1e-11 * Math.max(scale, residual);
  let iterations = 0;
  while (residual > enough) {
    if (iterations++ >= MOST_STEPS) {
      throw new NotConvergedError("the flows in the headers", MOST_STEPS, residual);
    }
    const right = system.residual.map((value) => -value);
    const change = solveTridiagonal({ ...system, right });
    let share = 1;
    for (;;) {
      const tried = supply.slice();
      for (let i = 1; i < count; i++) tried[i]! += share * change[i - 1]!;
      const next = equations(network, tried, step);
      const found = largest(next.residual);
      if (found < residual || share < 1e-3) {
        const moved = share * largest(change);
        supply = tried;
        system = next;
        residual = found;
        if (moved <= 1e-13 * Math.abs(network.airFlow)) return finish(network, supply, iterations);
        break;
      }
      share /= 2;
    }
  }
  return finish(network, supply, iterations);
}

/** Supply-header flows of evenly shared tubes. */
function evenFlows(network: PreparedNetwork): Float64Array {
  const count = network.stations.length;
  const flows = new Float64Array(count + 1);
  for (let i = 0; i < count; i++) {
    flows[i + 1] = flows[i]! + network.supply.entering[i]! - network.airFlow / count;
  }
  flows[count] = -network.supply.entering[count]!;
  return flows;
}

function finish(
  network: PreparedNetwork,
  supply: Float64Array,
  iterations: number,
): HeaderFlows {
  const { back, tubes } = completeFlows(network, supply);
  const residual = network.stations.length > 1
    ? largest(equations(network, supply, STEP * Math.abs(network.airFlow)).residual)
    : 0;
  return { supply, return: back, stations: tubes, iterations, residual };
}
