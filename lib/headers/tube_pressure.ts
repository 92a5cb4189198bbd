/**
 * Pressure lost in the tubes of a station.
 *
 * @module
 */
import { sum } from "d3-array";
import type { AirProperties } from "../air/mod.ts";
import { frictionFactor } from "../tubes/mod.ts";
import type { NetworkTube } from "./network.ts";

/**
 * Velocity heads lost in one tube.
 *
 * @param tube the tube
 * @param flow m³/s, not 0
 * @param air density and viscosity
 * @returns velocity heads
 */
function tubeHeads(tube: NetworkTube, flow: number, air: AirProperties): number {
  if (tube.length === 0) return tube.minorLoss;
  const speed = Math.abs(flow) / (Math.PI * tube.diameter ** 2 / 4);
  const reynolds = air.density * speed * tube.diameter / air.viscosity;
  const friction = tube.frictionFactor ?? frictionFactor(tube, reynolds);
  return tube.minorLoss + friction * tube.length / tube.diameter;
}

/**
 * Pressure lost in one tube, with the sign of the flow.
 *
 * @param tube the tube
 * @param flow m³/s
 * @param air density and viscosity
 * @returns Pa
 */
export function tubePressure(tube: NetworkTube, flow: number, air: AirProperties): number {
  if (flow === 0) return 0;
  const speed = flow / (Math.PI * tube.diameter ** 2 / 4);
  return tubeHeads(tube, flow, air) * air.density / 2 * speed * Math.abs(speed);
}

function alike(tubes: readonly NetworkTube[]): boolean {
  const first = tubes[0]!;
  return tubes.every((tube) =>
    tube === first ||
    (tube.diameter === first.diameter && tube.length === first.length &&
      tube.minorLoss === first.minorLoss && tube.roughness === first.roughness &&
      tube.manning === first.manning && tube.frictionFactor === first.frictionFactor)
  );
}

const MOST_ROUNDS = 100;

/**
 * Shares the flow of a station over its tubes, which see one pressure difference: by
 * area/√(velocity heads), repeated until the heads, which depend on the flow a little, agree.
 *
 * @param tubes tubes of the station
 * @param flow of all of them, m³/s
 * @param air density and viscosity
 * @returns m³/s of each tube
 */
export function shareStation(
  tubes: readonly NetworkTube[],
  flow: number,
  air: AirProperties,
): readonly number[] {
  let flows = tubes.map(() => flow / tubes.length);
  if (flow === 0 || alike(tubes)) return flows;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const weights = tubes.map((tube, i) =>
      tube.diameter ** 2 / Math.sqrt(tubeHeads(tube, flows[i]!, air))
    );
    const total = sum(weights);
    const next = weights.map((weight) => flow * weight / total);
    const change = Math.max(...next.map((value, i) => Math.abs(value - flows[i]!)));
    flows = next;
    if (change <= 1e-14 * Math.abs(flow)) break;
  }
  return flows;
}

/**
 * Pressure lost across a station, with the sign of the flow.
 *
 * @param tubes tubes of the station
 * @param flow of all of them, m³/s
 * @param air density and viscosity
 * @returns Pa
 */
export function stationPressure(
  tubes: readonly NetworkTube[],
  flow: number,
  air: AirProperties,
): number {
  const first = tubes[0]!;
  if (tubes.length === 1) return tubePressure(first, flow, air);
  return tubePressure(first, shareStation(tubes, flow, air)[0]!, air);
}
