/**
 * Balancing orifices: plates that make the rich tubes as poor as the poorest.
 *
 * @module
 */
import { halve, NotConvergedError, requireInRange } from "../basics/mod.ts";
import { velocityPressure } from "../tubes/mod.ts";
import type { HeaderNetwork } from "./network.ts";
import { solveNetwork } from "./solve.ts";

/**
 * Loss of a sharp-edged orifice plate in a tube, in velocity heads of the tube.
 *
 * ζ = [1 − φ + 0.707·(1 − φ)^0.375]²/φ², φ the area of the hole over that of the tube.
 *
 * Source: Idelchik 1994 [idelchik-1994], diagram 4-14, as quoted by the Modelica Standard Library
 * [modelica-library-2020]. Valid for: thin sharp plate, Reynolds number of the hole above 1e5;
 * below, the loss is somewhat larger.
 *
 * @param areaRatio φ, 0 to 1
 * @returns velocity heads
 */
export function orificeLoss(areaRatio: number): number {
  requireInRange("orifice area ratio", areaRatio, 1e-3, 1, "(0.001 to 1)");
  return (1 - areaRatio + 0.707 * (1 - areaRatio) ** 0.375) ** 2 / areaRatio ** 2;
}

/**
 * Hole diameter of an orifice plate that gives a wanted loss.
 *
 * @param loss velocity heads of the tube, 0 or more
 * @param tubeDiameter inside, m
 * @returns diameter of the hole, m; that of the tube for a loss of 0
 */
export function orificeDiameter(loss: number, tubeDiameter: number): number {
  requireInRange("orifice loss", loss, 0, 1e5, "velocity heads");
  const { holds, fails } = halve((ratio) => orificeLoss(ratio) > loss, 1e-3, 1);
  return tubeDiameter * Math.sqrt((holds + fails) / 2);
}

/** One plate for each tube. */
export interface Balance {
  /** velocity heads that each tube needs in addition */
  readonly losses: Float64Array;
  /** hole of each plate, m; the tube's own diameter where no plate is needed */
  readonly holes: Float64Array;
  /** whole pressure drop with the plates, Pa */
  readonly pressureDrop: number;
}

/**
 * Plates that give every open tube the same flow, with the least pressure: the poorest tube gets
 * none.
 *
 * With equal flows the static pressures along both headers are known; what drives each tube beyond
 * the least driven one is the plate's to take.
 *
 * @param network headers and tubes, all of one diameter
 * @param airFlow m³/s of the network
 * @returns the plates
 */
export function balancingOrifices(network: HeaderNetwork, airFlow: number): Balance {
  const { tubes, air } = network;
  const open = tubes.filter((tube) => tube.open).length;
  let losses = new Float64Array(tubes.length);
  const withLosses = (): HeaderNetwork => ({
    ...network,
    tubes: tubes.map((tube, i) => ({ ...tube, minorLoss: tube.minorLoss + losses[i]! })),
  });
  for (let round = 0; round < 50; round++) {
    const solved = solveNetwork(withLosses(), airFlow);
    const even = airFlow / open;
    const off = Math.max(
      ...tubes.map((tube, i) => tube.open ? Math.abs(solved.flows[i]! / even - 1) : 0),
    );
    if (off < 1e-7) {
      const holes = losses.map((loss, i) => orificeDiameter(loss, tubes[i]!.diameter));
      return { losses, holes, pressureDrop: solved.pressureDrop };
    }
    // what each tube's drive would take at even flow, in heads of the even flow
    const wanted = tubes.map((tube, i) => {
      const head = velocityPressure(air.density, even / (Math.PI * tube.diameter ** 2 / 4));
      const drive = solved.supplyPressure[i]! - solved.returnPressure[i]!;
      const own = drive / head * (even / solved.flows[i]!) ** 2 - losses[i]!;
      return { drive: drive / head, own };
    });
    const least = Math.min(
      ...tubes.flatMap((tube, i) => tube.open ? [wanted[i]!.drive - wanted[i]!.own] : []),
    );
    losses = Float64Array.from(
      tubes,
      (tube, i) => tube.open ? wanted[i]!.drive - wanted[i]!.own - least : 0,
    );
  }
  throw new NotConvergedError("the balancing orifices", 50, Number.NaN);
}
