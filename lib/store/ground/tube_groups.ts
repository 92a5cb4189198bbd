/** Tubes in the middle of a long row taken together, for they are alike. @module */
import type { ConductionOperator, TubePort } from "./slice_types.ts";

/** Tubes from the end of a row that are never taken together: their surroundings differ. */
const ALONE = 9;
/** The same where stores are compared: the row's outermost, which lose to the ground beside them. */
const ALONE_ROUGHLY = 3;
/** Beyond those, one more tube is taken together for every so many tubes from the end. */
const WIDENING = 3;
/** Most by which the flow of a tube may differ from the mean of those before it, over the mean. */
const FLOW_DIFFERENCE = 0.2;

/** Tubes of each layer from left to right. */
function rowsOfTubes({ tubes, columns }: ConductionOperator): number[][] {
  const layers = new Map<number, number[]>();
  tubes.forEach(({ cells }, tube) => {
    const row = Math.floor(cells[0]! / columns);
    layers.set(row, [...layers.get(row) ?? [], tube]);
  });
  const column = (tube: number) => tubes[tube]!.cells[0]! % columns;
  return [...layers.values()].map((layer) => layer.toSorted((a, b) => column(a) - column(b)));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Runs of a row: single tubes near its ends, more and more together towards its middle. */
function runsOf(
  row: readonly number[],
  shares: readonly number[],
  half: boolean,
  alone: number,
): number[][] {
  const runs: number[][] = [];
  let most = 0;
  row.forEach((tube, place) => {
    const fromEnd = Math.min(row.length - 1 - place, half ? Infinity : place);
    const size = fromEnd < alone ? 1 : 2 + Math.floor((fromEnd - alone) / WIDENING);
    const run = runs.at(-1);
    most = run === undefined ? size : Math.min(most, size);
    const together = run !== undefined && run.length < most &&
      Math.abs(shares[tube]! - meanOf(run.map((other) => shares[other]!))) <= FLOW_DIFFERENCE;
    if (together) run.push(tube);
    else {
      runs.push([tube]);
      most = size;
    }
  });
  return runs;
}

/**
 * Which tubes are run as one. The nine next to an end of a row stand alone; further in two, then
 * three and more neighbours in a row share their mean wall temperature and their mean flow. What
 * that misses is of second order in their differences.
 *
 * @param operator slice
 * @param shares flow of each tube over the mean
 * @param half true: the left end of a row lies at the mirror plane and is no end
 * @param rough true: only the three next to an end stand alone
 * @returns places of the tubes by group, in order of their first
 */
export function tubeGroups(
  operator: ConductionOperator,
  shares: readonly number[],
  half: boolean,
  rough = false,
): number[][] {
  return rowsOfTubes(operator)
    .flatMap((row) => runsOf(row, shares, half, rough ? ALONE_ROUGHLY : ALONE))
    .sort((a, b) => Math.min(...a) - Math.min(...b));
}

/** Tubes that share their heat: the mean of their walls, and as many tubes as they are together. */
function joined(ports: readonly TubePort[]): TubePort {
  if (ports.length === 1) return ports[0]!;
  const part = ports.reduce((sum, port) => sum + port.part, 0);
  return {
    cells: Int32Array.from(ports.flatMap(({ cells }) => [...cells])),
    weights: Float64Array.from(
      ports.flatMap((port) => Array.from(port.weights, (weight) => weight * port.part / part)),
    ),
    resistance: ports.reduce((sum, port) => sum + port.resistance * port.part / part, 0),
    part,
  };
}

/** The slice with each group of tubes as one. */
export function withGroups(
  operator: ConductionOperator,
  groups: readonly (readonly number[])[],
): ConductionOperator {
  return {
    ...operator,
    tubes: groups.map((group) => joined(group.map((k) => operator.tubes[k]!))),
  };
}
