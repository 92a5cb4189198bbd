/**
 * Does a field fit under the floor, clear of the footings?
 *
 * @module
 */
import { footingLine } from "./footing.ts";
import type { Pit } from "./pit.ts";
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
  /** cover over the upper tubes, m */
  readonly coverMin: number;
  /** deepest that may be dug, m */
  readonly digMax: number;
}

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
 * @param field layout, tube and its length
 * @param limits the ground
 * @param pit that tubes and headers of the field need
 * @returns the reason in a few words, or null
 */
export function floorFit(
  field: FieldLayout & {
    readonly length: number;
    readonly product: Pick<TubeProduct, "outsideDiameter">;
  },
  limits: FloorLimits,
  pit: Pit,
): string | null {
  const outside = field.product.outsideDiameter;
  if (field.length + 2 * limits.headerRoom > limits.along + 1e-9) return "too long for the floor";
  const width = (tubesByLayer(field.count, field.layers)[0]! - 1) * field.spacing + outside;
  if (width > limits.across + 1e-9) return "too wide for the floor";
  if (field.count > field.layers && field.spacing < 1.2 * outside) return "tubes too close";
  if (field.layers > 1 && field.layerSpacing < 1.2 * outside) return "layers too close";
  if (field.depth - outside / 2 < limits.coverMin - 1e-9) return "too little cover";
  if (pit.lowEnd > limits.digMax + 1e-9) return "pit too deep";
  const { room } = footingLine(pit, { footingDepth: limits.footingDepth, house: limits });
  return room !== null && room < -1e-9 ? "too close to the footing" : null;
}
