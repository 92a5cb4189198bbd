/** What the full model knows beforehand about steps of one length. @module */
import { type AdiFactors, adiFactors, type PortResponse, portResponse } from "./factors.ts";
import { type SourceReach, sourceReach } from "./sources.ts";
import { ownAndCross } from "../engine.ts";
import type { ConductionOperator } from "../../ground/operator.ts";

/** Everything constant for one step length. */
export interface AdiPlan {
  readonly factors: AdiFactors;
  readonly outdoor: PortResponse;
  readonly deep: PortResponse;
  /** of tubes and floor together, and of the floor alone */
  readonly all: SourceReach;
  readonly floor: SourceReach;
  /** of every cell, for what freezes */
  readonly everywhere: SourceReach;
  /** see SoilEngine */
  readonly tubeResponse: Float64Array;
  readonly tubeCross: Float64Array | null;
  readonly floorConductance: number;
}

/** K per W/m: tubes whose answer to each other stays below this do not feel each other. */
const NO_CROSS = 1e-9;

/** Weighted sum of a unit response over a set of cells. */
function seenBy(response: PortResponse, port: { cells: Int32Array; weights: Float64Array }) {
  const value = new Map<number, number>();
  response.cells.forEach((cell, k) => value.set(cell, response.values[k]!));
  return port.cells.reduce((sum, cell, k) => sum + port.weights[k]! * (value.get(cell) ?? 0), 0);
}

/** Works the constants out. */
export function adiPlan(operator: ConductionOperator, seconds: number): AdiPlan {
  const factors = adiFactors(operator, seconds);
  const responseTo = (cells: Int32Array, weights: Float64Array) => {
    const source = new Float64Array(operator.capacity.length);
    cells.forEach((cell, k) => source[cell] = weights[k]!);
    return portResponse(operator, factors, source);
  };
  const { tubes, floor, outdoor, deep } = operator;
  const heated = tubes.map((tube) => responseTo(tube.cells, tube.weights));
  // the mean over a step that starts at rest is half of its end
  const felt = Float64Array.from(
    { length: tubes.length ** 2 },
    (_, k) => 0.5 * seenBy(heated[k % tubes.length]!, tubes[Math.floor(k / tubes.length)]!),
  );
  const { own, cross } = ownAndCross(felt, tubes.length, NO_CROSS);
  const answer = responseTo(floor.cells, floor.conductances);
  const whole = floor.conductances.reduce((sum, value) => sum + value, 0);
  return {
    factors,
    outdoor: responseTo(outdoor.cells, outdoor.conductances),
    deep: responseTo(deep.cells, deep.conductances),
    all: sourceReach(operator, factors, [
      ...tubes.flatMap((tube) => Array.from(tube.cells)),
      ...floor.cells,
    ]),
    floor: sourceReach(operator, factors, Array.from(floor.cells)),
    everywhere: sourceReach(operator, factors, Array.from(operator.capacity.keys())),
    tubeResponse: own,
    tubeCross: cross,
    floorConductance: whole -
      0.5 * seenBy(answer, { cells: floor.cells, weights: floor.conductances }),
  };
}
