/**
 * How large the headers must be for a wanted evenness.
 *
 * @module
 */
import { halve, requireInRange } from "../basics/mod.ts";
import { groupNetwork, type HeaderGroup } from "./build.ts";
import { type Evenness, evenness } from "./evenness.ts";
import { solveNetwork } from "./solve.ts";

/** Headers of one size. */
export interface SizedHeaders extends Evenness {
  /** inside diameter of both headers, m */
  readonly diameter: number;
  /** ratio of the area of all tubes to the header's cross-section */
  readonly areaRatio: number;
  /** Pa, headers and tubes */
  readonly pressureDrop: number;
}

/**
 * Evenness and pressure of headers of one size, supply and return alike.
 *
 * @param group tubes and headers; their diameters are not used
 * @param airFlow m³/s of the group
 * @param diameter inside, m
 * @returns what that size gives
 */
export function headersOfSize(
  group: HeaderGroup,
  airFlow: number,
  diameter: number,
): SizedHeaders {
  const inputs = { ...group.inputs, diameter, returnDiameter: diameter };
  const solved = solveNetwork(groupNetwork({ ...group, inputs }), airFlow);
  return {
    diameter,
    areaRatio: group.places.length * (group.product.insideDiameter / diameter) ** 2,
    pressureDrop: solved.pressureDrop,
    ...evenness(solved.flows),
  };
}

/**
 * Smallest header for a wanted unevenness, found by halving the range of diameters.
 *
 * @param group tubes and headers; their diameters are not used
 * @param airFlow m³/s of the group
 * @param unevenness largest coefficient of variation wanted, above 0
 * @returns the headers, or null where even 20 tube diameters are not enough
 */
export function headerDiameterFor(
  group: HeaderGroup,
  airFlow: number,
  unevenness: number,
): SizedHeaders | null {
  requireInRange("unevenness", unevenness, 1e-4, 1, "(0.0001 to 1)");
  const fits = (diameter: number): boolean =>
    headersOfSize(group, airFlow, diameter).unevenness <= unevenness;
  const high = 20 * group.product.insideDiameter;
  if (!fits(high)) return null;
  const ends = [...group.insertions ?? [], group.inputs.insertion];
  const low = 1.02 * Math.max(group.product.outsideDiameter, 2 * Math.max(...ends));
  if (fits(low)) return headersOfSize(group, airFlow, low);
  return headersOfSize(group, airFlow, halve(fits, high, low, 1e-4).holds);
}
