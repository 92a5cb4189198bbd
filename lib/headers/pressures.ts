/**
 * Pressures of a solved network: along both headers and at the ports.
 *
 * @module
 */
import type { HeaderFlows, PreparedNetwork } from "./balance.ts";
import { frictionLoss, type PreparedLine, riseAlong, riseAtTube } from "./header_line.ts";
import type { Port } from "./network.ts";
import { stationPressure } from "./tube_pressure.ts";

/** Pressures of a network, Pa over the static pressure of the first return port or of the room. */
export interface NetworkPressures {
  /** static, by station */
  readonly supply: Float64Array;
  readonly return: Float64Array;
  /** total pressure at the ports */
  readonly supplyTotals: readonly number[];
  readonly returnTotals: readonly number[];
  /** what ports on one plenum have in common: total where air enters, static where it leaves */
  readonly supplyPlenum: readonly number[];
  readonly returnPlenum: readonly number[];
}

interface MarchedLine {
  /** static pressure by station, over that at the first */
  readonly at: Float64Array;
  readonly staticAt: (port: number) => number;
  readonly totalAt: (port: number) => number;
}

/** Follows the static pressure along a header. */
function marchLine(line: PreparedLine, flows: Float64Array): MarchedLine {
  const { count } = line;
  const at = new Float64Array(count);
  const jumps = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    jumps[i] = riseAtTube(line, i, flows[i]! + line.entering[i]!, flows[i + 1]!) / 2;
    if (i > 0) at[i] = at[i - 1]! + jumps[i - 1]! + riseAlong(line, i, flows[i]!) + jumps[i]!;
  }
  const head = (flow: number, area: number): number => line.model.density / 2 * (flow / area) ** 2;
  const loss = (tube: number, length: number, flow: number): number =>
    frictionLoss(line, line.line.diameters[tube]!, length, flow);
  const staticAt = (port: number): number => {
    if (port === 0) return at[0]! - jumps[0]! + loss(0, line.stretches[0]!, line.entering[0]!);
    const length = line.stretches[port]! / (port === count ? 1 : 2);
    return at[port - 1]! + jumps[port - 1]! - loss(port - 1, length, flows[port]!);
  };
  const totalAt = (port: number): number => {
    if (port === 0) return staticAt(0) + head(line.entering[0]!, line.areas[0]!);
    // where air leaves between two tubes the velocity heads of both sides are lost in the tee
    const leavesBetween = port < count && line.entering[port]! <= 0;
    return staticAt(port) + (leavesBetween ? 0 : head(flows[port]!, line.areas[port - 1]!));
  };
  return { at, staticAt, totalAt };
}

/**
 * Pressures of a solved network.
 *
 * @param network the prepared network
 * @param flows its flows
 * @param ports ports of supply and return
 * @returns the pressures
 */
export function networkPressures(
  network: PreparedNetwork,
  flows: HeaderFlows,
  ports: { readonly supply: readonly Port[]; readonly return: readonly Port[] },
): NetworkPressures {
  const supply = marchLine(network.supply, flows.supply);
  const back = network.return === null ? null : marchLine(network.return, flows.return);
  // the first station ties both headers together: supply − return = its loss
  const first = stationPressure(network.stations[0]!.tubes, flows.stations[0]!, network.air);
  const zero = back === null ? 0 : back.staticAt(ports.return[0]!.after);
  const lift = first - zero;
  const forth = network.airFlow >= 0;
  const supplyTotals = ports.supply.map(({ after }) => supply.totalAt(after) + lift);
  const supplyStatics = ports.supply.map(({ after }) => supply.staticAt(after) + lift);
  const returnTotals = back === null
    ? []
    : ports.return.map(({ after }) => back.totalAt(after) - zero);
  const returnStatics = back === null
    ? []
    : ports.return.map(({ after }) => back.staticAt(after) - zero);
  return {
    supply: supply.at.map((pressure) => pressure + lift),
    return: back === null
      ? new Float64Array(flows.stations.length)
      : back.at.map((pressure) => pressure - zero),
    supplyTotals,
    returnTotals,
    supplyPlenum: forth ? supplyTotals : supplyStatics,
    returnPlenum: forth ? returnStatics : returnTotals,
  };
}
