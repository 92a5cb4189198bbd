/**
 * Solves a network of headers and tubes: flow of each tube, pressures, whole pressure drop.
 *
 * @module
 */
import { sum } from "d3-array";
import { InputError, NotConvergedError, requireInRange } from "../basics/mod.ts";
import { Matrix, solve as solveMatrix } from "ml-matrix";
import { balanceFlows, type HeaderFlows, type PreparedNetwork } from "./balance.ts";
import { type PreparedLine, prepareLine } from "./header_line.ts";
import type { HeaderLine, HeaderNetwork, NetworkFlow } from "./network.ts";
import { type NetworkPressures, networkPressures } from "./pressures.ts";
import {
  flowsAtTubes,
  spreadOverTubes,
  type Station,
  type StationNetwork,
  stationNetwork,
} from "./stations.ts";
import { shareStation } from "./tube_pressure.ts";

/**
 * Shares the air of a network over its tubes.
 *
 * At each tube the static pressure of the header changes by the junction model, between tubes by
 * friction and change of diameter; each tube takes the air that the difference of static pressure
 * between the headers drives through it.
 *
 * Source: momentum balance along both headers as Bajura & Jones 1976 [bajura-jones-1976], solved
 * node by node. Valid for: steady, incompressible flow; one speed over each cross-section.
 *
 * @param network headers and tubes
 * @param airFlow m³/s through the whole network; negative runs it backwards
 * @returns flows and pressures
 * @throws {InputError} where the network makes no sense
 * @throws {NotConvergedError} where no balance is found
 */
export function solveNetwork(network: HeaderNetwork, airFlow: number): NetworkFlow {
  checkNetwork(network);
  requireInRange("air flow", Math.abs(airFlow), 0, 1e4, "m³/s");
  const byStation = stationNetwork(network);
  const shares = portShares(byStation, airFlow);
  const solved = solveAtShares(byStation, airFlow, shares);
  return writeToTubes(network, byStation.stations, { ...solved, shares });
}

interface Shares {
  readonly supply: readonly number[];
  readonly return: readonly number[];
}

interface Solved {
  readonly prepared: PreparedNetwork;
  readonly flows: HeaderFlows;
  readonly pressures: NetworkPressures;
}

function checkNetwork(network: HeaderNetwork): void {
  const { tubes } = network;
  if (!tubes.some((tube) => tube.open)) throw new InputError("Cannot solve headers: no open tube");
  tubes.forEach((tube, i) => {
    if (i > 0 && tube.position < tubes[i - 1]!.position) {
      throw new InputError("Cannot solve headers: the tube positions are not in ascending order");
    }
    requireInRange("tube diameter", tube.diameter, 1e-4, 100, "m");
    requireInRange("tube length", tube.length, 0, 1e4, "m");
    requireInRange("tube loss", tube.minorLoss, 0, 1e9, "velocity heads");
    if (tube.minorLoss === 0 && tube.length === 0) {
      throw new InputError("Cannot solve headers: a tube has no loss");
    }
  });
  for (const line of [network.supply, ...(network.return === null ? [] : [network.return])]) {
    if (line.diameters.length !== tubes.length) {
      throw new InputError("Cannot solve headers: expected one diameter at each tube");
    }
    line.diameters.forEach((d) => requireInRange("header diameter", d, 1e-4, 1000, "m"));
    if (line.ports.length === 0) throw new InputError("Cannot solve headers: a header has no port");
    const fixed = line.ports.filter(({ share }) => share !== null);
    const sum = fixed.reduce((total, { share }) => total + share!, 0);
    if (fixed.length > 0 && (fixed.length < line.ports.length || Math.abs(sum - 1) > 1e-9)) {
      throw new InputError("Cannot solve headers: the shares of the ports must sum to 1");
    }
  }
}

/** Shares of the ports: as given, or found so that all ports of a header see one plenum. */
function portShares(network: StationNetwork, airFlow: number): Shares {
  const even = (line: HeaderLine | null): number[] =>
    line === null ? [] : line.ports.map(({ share }) => share ?? 1 / line.ports.length);
  const isFree = (line: HeaderLine | null): boolean =>
    line !== null && line.ports.length > 1 && line.ports[0]!.share === null;
  const free = {
    supply: isFree(network.supply) ? network.supply.ports.length - 1 : 0,
    return: isFree(network.return) ? network.return!.ports.length - 1 : 0,
  };
  const start = { supply: even(network.supply), return: even(network.return) };
  const unknowns = free.supply + free.return;
  if (unknowns === 0 || airFlow === 0) return start;
  const place = (values: readonly number[]): Shares => {
    const put = (list: readonly number[], part: readonly number[]): number[] =>
      part.length === 0 ? [...list] : [1 - sum(part), ...part];
    return {
      supply: put(start.supply, values.slice(0, free.supply)),
      return: put(start.return, values.slice(free.supply)),
    };
  };
  const differences = (values: readonly number[]): number[] => {
    const { pressures } = solveAtShares(network, airFlow, place(values));
    const over = (ports: readonly number[], count: number): number[] =>
      ports.slice(1, count + 1).map((pressure) => pressure - ports[0]!);
    return [
      ...over(pressures.supplyPlenum, free.supply),
      ...over(pressures.returnPlenum, free.return),
    ];
  };
  return place(
    newton(differences, [
      ...start.supply.slice(1, free.supply + 1),
      ...start.return.slice(1, free.return + 1),
    ]),
  );
}

/** Newton's method with numeric derivatives for a few unknown shares. */
function newton(
  differences: (values: readonly number[]) => number[],
  start: readonly number[],
): readonly number[] {
  let values = [...start];
  let found = differences(values);
  const scale = 1e-9 * (1 + Math.max(...found.map(Math.abs)));
  for (let iteration = 0; iteration < 50; iteration++) {
    if (Math.max(...found.map(Math.abs)) <= scale) return values;
    const columns = values.map((_, k) =>
      differences(values.map((value, j) => j === k ? value + 1e-5 : value))
    );
    const slopes = new Matrix(
      found.map((value, row) => columns.map((column) => (column[row]! - value) / 1e-5)),
    );
    const step = solveMatrix(slopes, Matrix.columnVector(found)).to1DArray();
    const most = Math.max(...step.map(Math.abs));
    const damping = Math.min(1, 0.3 / most);
    values = values.map((value, k) => value - damping * step[k]!);
    if (most < 1e-12) return values;
    found = differences(values);
  }
  throw new NotConvergedError(
    "the shares of the header ends",
    50,
    Math.max(...found.map(Math.abs)),
  );
}

function enteringBy(
  line: HeaderLine,
  flow: number,
  shares: readonly number[],
  count: number,
): Float64Array {
  const entering = new Float64Array(count + 1);
  line.ports.forEach((port, k) => {
    requireInRange("place of a header port", port.after, 0, count, "tubes");
    entering[port.after]! += flow * shares[k]!;
  });
  return entering;
}

function solveAtShares(network: StationNetwork, airFlow: number, shares: Shares): Solved {
  const { stations, air, junctions } = network;
  const count = stations.length;
  const positions = stations.map(({ position }) => position);
  const prepare = (line: HeaderLine, flow: number, portShares: readonly number[]): PreparedLine =>
    prepareLine(line, {
      positions,
      entering: enteringBy(line, flow, portShares, count),
      junctions,
      air,
    });
  const prepared: PreparedNetwork = {
    stations,
    air,
    airFlow,
    supply: prepare(network.supply, airFlow, shares.supply),
    return: network.return === null ? null : prepare(network.return, -airFlow, shares.return),
  };
  const flows = airFlow === 0 ? standing(count) : balanceFlows(prepared);
  const ports = { supply: network.supply.ports, return: network.return?.ports ?? [] };
  return { prepared, flows, pressures: networkPressures(prepared, flows, ports) };
}

function standing(count: number): HeaderFlows {
  return {
    supply: new Float64Array(count + 1),
    return: new Float64Array(count + 1),
    stations: new Float64Array(count),
    iterations: 0,
    residual: 0,
  };
}

/** Writes the solution of the stations to the tubes. */
function writeToTubes(
  network: HeaderNetwork,
  stations: readonly Station[],
  solution: Solved & { readonly shares: Shares },
): NetworkFlow {
  const { prepared, flows, pressures, shares } = solution;
  // behind a port in the middle of a stretch the header carries what the port adds
  const atTubes = (line: PreparedLine | null, left: Float64Array): Float64Array =>
    line === null ? new Float64Array(network.tubes.length) : flowsAtTubes(
      network,
      stations,
      left.map((flow, k) => flow + line.entering[k]!),
    );
  const tubeFlows = new Float64Array(network.tubes.length);
  stations.forEach(({ tubes, indices }, k) => {
    const each = shareStation(tubes, flows.stations[k]!, network.air);
    indices.forEach((index, i) => tubeFlows[index] = each[i]!);
  });
  const mean = (values: readonly number[], weights: readonly number[]): number =>
    values.reduce((sum, value, k) => sum + value * weights[k]!, 0);
  return {
    flows: tubeFlows,
    supplyFlows: atTubes(prepared.supply, flows.supply),
    returnFlows: atTubes(prepared.return, flows.return),
    supplyPressure: spreadOverTubes(network, stations, pressures.supply),
    returnPressure: spreadOverTubes(network, stations, pressures.return),
    pressureDrop: mean(pressures.supplyTotals, shares.supply) -
      mean(pressures.returnTotals, shares.return),
    supplyShares: shares.supply,
    returnShares: shares.return,
    iterations: flows.iterations,
    residual: flows.residual,
  };
}
