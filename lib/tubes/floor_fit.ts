/**
 * Does a field fit under the floor, clear of the footings?
 *
 * @module
 */
import { allowance } from "./allowances.ts";
import { type FieldLayout, tubesByLayer } from "./positions.ts";
import type { TubeProduct } from "./types.ts";

/** The ground that may be dug. */
export interface FloorLimits {
  /** inside the walls along the tubes and across them, m */
  readonly along: number;
  /** inside the walls across the tubes, m */
  readonly across: number;
  /** m kept free at each end for headers */
  readonly headerRoom: number;
  /** underside of the footing below the floor, m; 0 where there is none, null where it does not count */
  readonly footingDepth: number | null;
  /** m from the inner edge of the footing to the wall's inner face */
  readonly footingInset: number;
  /** cover over the upper tubes, m */
  readonly coverMin: number;
  /** deepest that may be dug, m */
  readonly digMax: number;
}

/** Earth left below the lowest tubes for bedding, m (common practice, no source). */
export const BEDDING = allowance("bedding");

/**
 * Deepest excavation beside a footing: it must stay above a line that falls at 45 degrees from the
 * footing's lower inner edge.
 *
 * Source: excavation guidance of a construction association (45 degree line, flatter in some soils).
 * A geotechnical engineer decides; this is no permit.
 *
 * @param footingDepth underside of the footing below the floor, m
 * @param distance from the footing's edge, m
 * @param angle of the line below the horizontal, degrees
 * @returns m below the floor
 */
export function depthBesideFooting(footingDepth: number, distance: number, angle = 45): number {
  return footingDepth + Math.max(0, distance) * Math.tan(angle * Math.PI / 180);
}

/**
 * Why a field does not fit, or null where it does.
 *
 * @param field layout and tube length
 * @param product the tube
 * @param limits the ground
 * @returns the reason in a few words, or null
 */
export function floorFit(
  field: FieldLayout & { readonly length: number },
  product: TubeProduct,
  limits: FloorLimits,
): string | null {
  const outside = product.outsideDiameter;
  if (field.length + 2 * limits.headerRoom > limits.along + 1e-9) return "too long for the floor";
  const width = (tubesByLayer(field.count, field.layers)[0]! - 1) * field.spacing + outside;
  if (width > limits.across + 1e-9) return "too wide for the floor";
  if (field.count > field.layers && field.spacing < 1.2 * outside) return "tubes too close";
  if (field.layers > 1 && field.layerSpacing < 1.2 * outside) return "layers too close";
  if (field.depth - outside / 2 < limits.coverMin - 1e-9) return "too little cover";
  const dig = field.depth + (field.layers - 1) * field.layerSpacing + outside / 2 + BEDDING;
  if (dig > limits.digMax + 1e-9) return "pit too deep";
  if (limits.footingDepth !== null) {
    const margin = allowance("working margin");
    const beside = (limits.across - width) / 2 - margin - limits.footingInset;
    const ahead = (limits.along - field.length) / 2 - limits.headerRoom - limits.footingInset;
    const least = Math.min(beside, ahead);
    if (dig > depthBesideFooting(limits.footingDepth, least) + 1e-9) {
      return "too close to the footing";
    }
  }
  return null;
}
