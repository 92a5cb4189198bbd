/**
 * Stations of a network: the open tubes that meet the headers at one place act together, whether two
 * rows stand on either side of a header or two layers hang on it.
 *
 * @module
 */
import type { HeaderLine, HeaderNetwork, NetworkTube } from "./network.ts";

/** Open tubes at one place along the headers. */
export interface Station {
  /** m along the headers */
  readonly position: number;
  readonly tubes: readonly NetworkTube[];
  /** their indices in the network */
  readonly indices: readonly number[];
}

/** A network written by stations: header diameters, obstructions and ports count stations. */
export interface StationNetwork extends Omit<HeaderNetwork, "tubes"> {
  readonly stations: readonly Station[];
}

/** Places closer than this are one, m. */
const SAME_PLACE = 1e-6;

/**
 * Gathers the open tubes of a network into stations.
 *
 * Obstructions at one place add up; a port that would split a station lies before it.
 *
 * @param network the network
 * @returns the same network by stations
 */
export function stationNetwork(network: HeaderNetwork): StationNetwork {
  const gathered: { position: number; tubes: NetworkTube[]; indices: number[] }[] = [];
  network.tubes.forEach((tube, index) => {
    if (!tube.open) return;
    const last = gathered.at(-1);
    if (last !== undefined && tube.position - last.position < SAME_PLACE) {
      last.tubes.push(tube);
      last.indices.push(index);
    } else {
      gathered.push({ position: tube.position, tubes: [tube], indices: [index] });
    }
  });
  const byStation = (line: HeaderLine): HeaderLine => ({
    ...line,
    diameters: gathered.map(({ indices }) => line.diameters[indices[0]!]!),
    obstructions: line.obstructions === null
      ? null
      : gathered.map(({ indices }) =>
        indices.reduce((sum, index) => sum + line.obstructions![index]!, 0)
      ),
    ports: line.ports.map((port) => ({
      ...port,
      after: gathered.filter(({ indices }) => indices.at(-1)! < port.after).length,
    })),
  });
  const { tubes: _tubes, ...rest } = network;
  return {
    ...rest,
    stations: gathered,
    supply: byStation(network.supply),
    return: network.return === null ? null : byStation(network.return),
  };
}

/**
 * Flow on the left of each station written to all tubes; a blocked tube gets that of the next station,
 * or what is left behind the last one.
 *
 * @param network the network
 * @param stations its stations
 * @param flows one a station, and one behind the last
 * @returns one a tube
 */
export function flowsAtTubes(
  network: HeaderNetwork,
  stations: readonly Station[],
  flows: Float64Array,
): Float64Array {
  return Float64Array.from(network.tubes, ({ position }) => {
    const next = stations.findIndex((station) => station.position >= position - SAME_PLACE);
    return flows[next === -1 ? stations.length : next]!;
  });
}

/**
 * Values of the stations written to all tubes; blocked tubes get values between their neighbours'.
 *
 * @param network the network
 * @param stations its stations
 * @param values one a station
 * @returns one a tube
 */
export function spreadOverTubes(
  network: HeaderNetwork,
  stations: readonly Station[],
  values: Float64Array,
): Float64Array {
  return Float64Array.from(network.tubes, ({ position }) => {
    const upper = stations.findIndex((station) => station.position >= position - SAME_PLACE);
    if (upper === -1) return values[stations.length - 1]!;
    const above = stations[upper]!.position;
    if (upper === 0 || above - position < SAME_PLACE) return values[upper]!;
    const below = stations[upper - 1]!.position;
    const share = (position - below) / (above - below);
    return values[upper - 1]! + share * (values[upper]! - values[upper - 1]!);
  });
}
