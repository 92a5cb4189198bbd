/**
 * Solves a network of headers and tubes: flow of each tube, pressures, whole pressure drop.
 *
 * @module
 */
import { InputError, NotConvergedError, requireInRange } from "../basics/mod.ts";
import { Matrix, solve as solveMatrix } from "ml-matrix";
import { balanceFlows, type HeaderFlows, type PreparedNetwork, tubePressure } from "./balance.ts";
import {
  frictionLoss,
  type PreparedLine,
  prepareLine,
  riseAlong,
  riseAtTube,
} from "./header_line.ts";
import type { HeaderLine, HeaderNetwork, NetworkFlow } from "./network.ts";

/**
 * Shares the air of a network over its tubes.
 *
 * At each tube the static pressure of the header changes by the junction model, between tubes by
 * friction and change of diameter; each tube takes the air that the difference of static pressure
 * between the headers drives through it.
 *
 * Source: momentum balance along both headers as Bajura & Jones 1976, J. Fluids Eng. 98:654, solved
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
  const open = openNetwork(network);
  const shares = portShares(open, airFlow);
  const solved = solveAtShares(open, airFlow, shares);
  return spreadOverBlocked(network, solved);
}

interface Shares {
  readonly supply: readonly number[];
  readonly return: readonly number[];
}

interface Solved extends NetworkFlow {
  /** total pressure where air enters at the ports, static pressure where it leaves, Pa */
  readonly supplyPorts: readonly number[];
  readonly returnPorts: readonly number[];
}

function checkNetwork(network: HeaderNetwork): void {
  const { tubes } = network;
  if (!tubes.some((tube) => tube.open)) throw new InputError("Cannot solve headers: no open tube");
  tubes.forEach((tube, i) => {
    if (i > 0 && tube.position < tubes[i - 1]!.position) {
      throw new InputError("Cannot solve headers: the tubes do not stand in rising order");
    }
    requireInRange("tube diameter", tube.diameter, 1e-4, 100, "m");
    requireInRange("tube length", tube.length, 0, 1e4, "m");
    requireInRange("tube loss", tube.minorLoss, 0, 1e9, "velocity heads");
    if (tube.minorLoss === 0 && tube.length === 0) {
      throw new InputError("Cannot solve headers: a tube without any loss");
    }
  });
  for (const line of [network.supply, ...(network.return === null ? [] : [network.return])]) {
    if (line.diameters.length !== tubes.length) {
      throw new InputError("Cannot solve headers: they need one diameter at each tube");
    }
    line.diameters.forEach((d) => requireInRange("header diameter", d, 1e-4, 1000, "m"));
    if (line.ports.length === 0) throw new InputError("Cannot solve headers: one has no port");
    const fixed = line.ports.filter(({ share }) => share !== null);
    const sum = fixed.reduce((total, { share }) => total + share!, 0);
    if (fixed.length > 0 && (fixed.length < line.ports.length || Math.abs(sum - 1) > 1e-9)) {
      throw new InputError("Cannot solve headers: the shares of the ports must sum to 1");
    }
  }
}

/** The same network with its blocked tubes left out. */
function openNetwork(network: HeaderNetwork): HeaderNetwork {
  if (network.tubes.every((tube) => tube.open)) return network;
  const keep = <Item>(items: readonly Item[]): Item[] =>
    items.filter((_, i) => network.tubes[i]!.open);
  const openLine = (line: HeaderLine): HeaderLine => ({
    ...line,
    diameters: keep(line.diameters),
    obstructions: line.obstructions === null ? null : keep(line.obstructions),
    ports: line.ports.map((port) => ({
      ...port,
      after: network.tubes.slice(0, port.after).filter((tube) => tube.open).length,
    })),
  });
  return {
    ...network,
    tubes: keep(network.tubes),
    supply: openLine(network.supply),
    return: network.return === null ? null : openLine(network.return),
  };
}

/** Shares of the ports: as given, or found so that all ports of a header see one plenum. */
function portShares(network: HeaderNetwork, airFlow: number): Shares {
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
      part.length === 0 ? [...list] : [1 - part.reduce((a, b) => a + b, 0), ...part];
    return {
      supply: put(start.supply, values.slice(0, free.supply)),
      return: put(start.return, values.slice(free.supply)),
    };
  };
  const differences = (values: readonly number[]): number[] => {
    const solved = solveAtShares(network, airFlow, place(values));
    const over = (ports: readonly number[], count: number): number[] =>
      ports.slice(1, count + 1).map((pressure) => pressure - ports[0]!);
    return [...over(solved.supplyPorts, free.supply), ...over(solved.returnPorts, free.return)];
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

function solveAtShares(network: HeaderNetwork, airFlow: number, shares: Shares): Solved {
  const { tubes, air, junctions } = network;
  const count = tubes.length;
  const positions = tubes.map(({ position }) => position);
  const prepare = (line: HeaderLine, entering: Float64Array, collecting: boolean): PreparedLine =>
    prepareLine(line, { positions, entering, collecting, junctions, air });
  const prepared: PreparedNetwork = {
    tubes,
    air,
    airFlow,
    supply: prepare(
      network.supply,
      enteringBy(network.supply, airFlow, shares.supply, count),
      airFlow < 0,
    ),
    return: network.return === null ? null : prepare(
      network.return,
      enteringBy(network.return, -airFlow, shares.return, count),
      airFlow >= 0,
    ),
  };
  const flows = airFlow === 0 ? standing(count) : balanceFlows(prepared);
  return pressures(network, prepared, flows, shares);
}

function standing(count: number): HeaderFlows {
  return {
    supply: new Float64Array(count + 1),
    return: new Float64Array(count + 1),
    tubes: new Float64Array(count),
    iterations: 0,
    residual: 0,
  };
}

/** Static pressure at each tube over that at the first, and the pressures at the ports. */
function marchLine(line: PreparedLine, flows: Float64Array): {
  readonly at: Float64Array;
  readonly staticAt: (port: number) => number;
  readonly totalAt: (port: number) => number;
} {
  const { count } = line;
  const at = new Float64Array(count);
  const jumps = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    jumps[i] = riseAtTube(line, i, flows[i]! + line.entering[i]!, flows[i + 1]!) / 2;
    if (i > 0) at[i] = at[i - 1]! + jumps[i - 1]! + riseAlong(line, i, flows[i]!) + jumps[i]!;
  }
  const head = (flow: number, area: number): number => line.model.density / 2 * (flow / area) ** 2;
  const diameter = (tube: number): number => line.line.diameters[tube]!;
  const staticAt = (port: number): number => {
    if (port === 0) {
      const flow = line.entering[0]!;
      return at[0]! - jumps[0]! + frictionLoss(line, diameter(0), line.stretches[0]!, flow);
    }
    const flow = flows[port]!;
    const length = line.stretches[port]! / (port === count ? 1 : 2);
    return at[port - 1]! + jumps[port - 1]! -
      frictionLoss(line, diameter(port - 1), length, flow);
  };
  const totalAt = (port: number): number => {
    if (port === 0) return staticAt(0) + head(line.entering[0]!, line.areas[0]!);
    const area = line.areas[port - 1]!;
    const middle = port < count;
    return staticAt(port) + (middle && line.entering[port]! <= 0 ? 0 : head(flows[port]!, area));
  };
  return { at, staticAt, totalAt };
}

function pressures(
  network: HeaderNetwork,
  prepared: PreparedNetwork,
  flows: HeaderFlows,
  shares: Shares,
): Solved {
  const supply = marchLine(prepared.supply, flows.supply);
  const back = prepared.return === null ? null : marchLine(prepared.return, flows.return);
  const first = tubePressure(network.tubes[0]!, flows.tubes[0]!, network.air);
  const ports = network.return?.ports ?? [];
  // the first tube ties both headers together: supply − return = its loss
  const zero = back === null ? 0 : back.staticAt(ports[0]!.after);
  const supplyPressure = supply.at.map((pressure) => pressure + first - zero);
  const returnPressure = back === null
    ? new Float64Array(flows.tubes.length)
    : back.at.map((pressure) => pressure - zero);
  const supplyTotals = network.supply.ports.map((port) =>
    supply.totalAt(port.after) + first - zero
  );
  const returnTotals = ports.map((port) => back!.totalAt(port.after) - zero);
  const mean = (values: readonly number[], weights: readonly number[]): number =>
    values.reduce((sum, value, k) => sum + value * weights[k]!, 0);
  return {
    flows: flows.tubes,
    supplyPressure,
    returnPressure,
    pressureDrop: mean(supplyTotals, shares.supply) - mean(returnTotals, shares.return),
    supplyShares: shares.supply,
    returnShares: shares.return,
    iterations: flows.iterations,
    residual: flows.residual,
    supplyPorts: prepared.airFlow >= 0
      ? supplyTotals
      : network.supply.ports.map((port) => supply.staticAt(port.after) + first - zero),
    returnPorts: prepared.airFlow >= 0
      ? ports.map((port) => back!.staticAt(port.after) - zero)
      : returnTotals,
  };
}

/** Puts blocked tubes back: no flow, pressures between those of their open neighbours. */
function spreadOverBlocked(network: HeaderNetwork, solved: Solved): NetworkFlow {
  const { supplyPorts: _supply, returnPorts: _return, ...result } = solved;
  const { tubes } = network;
  if (tubes.every((tube) => tube.open)) return result;
  const open = tubes.flatMap((tube, i) => tube.open ? [i] : []);
  const flows = new Float64Array(tubes.length);
  open.forEach((tube, k) => flows[tube] = solved.flows[k]!);
  const spread = (values: Float64Array): Float64Array =>
    Float64Array.from(tubes, (tube) => {
      const upper = open.findIndex((index) => tubes[index]!.position >= tube.position);
      if (upper === -1) return values[open.length - 1]!;
      const above = tubes[open[upper]!]!.position;
      if (upper === 0 || above === tube.position) return values[upper]!;
      const below = tubes[open[upper - 1]!]!.position;
      const share = (tube.position - below) / (above - below);
      return values[upper - 1]! + share * (values[upper]! - values[upper - 1]!);
    });
  return {
    ...result,
    flows,
    supplyPressure: spread(solved.supplyPressure),
    returnPressure: spread(solved.returnPressure),
  };
}
