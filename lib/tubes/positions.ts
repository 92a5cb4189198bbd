/**
 * Where the tubes lie.
 *
 * @module
 */

/** Centre of one tube in the cross-section of the field. */
export interface TubePosition {
  /** across the field, m from its middle */
  readonly x: number;
  /** below the floor surface, m */
  readonly depth: number;
}

/** Arrangement of a field of tubes. */
export interface FieldLayout {
  /** number of tubes */
  readonly count: number;
  /** number of layers of tubes */
  readonly layers: number;
  /** centre to centre in a layer, m */
  readonly spacing: number;
  /** m between layers */
  readonly layerSpacing: number;
  /** m from the floor surface to the centres of the upper layer */
  readonly depth: number;
}

/**
 * Number of tubes in each layer, upper first; layers that cannot be equal get one more from the top.
 *
 * @param count all tubes
 * @param layers number of layers
 * @returns tubes by layer
 */
export function tubesByLayer(count: number, layers: number): readonly number[] {
  return Array.from(
    { length: layers },
    (_, layer) => Math.floor(count / layers) + (layer < count % layers ? 1 : 0),
  );
}

/**
 * Centres of all tubes, layer by layer from the top, each layer from left to right and centred.
 *
 * @param layout the field
 * @returns one position a tube
 */
export function tubePositions(layout: FieldLayout): readonly TubePosition[] {
  return tubesByLayer(layout.count, layout.layers).flatMap((inLayer, layer) =>
    Array.from({ length: inLayer }, (_, index) => ({
      x: (index - (inLayer - 1) / 2) * layout.spacing,
      depth: layout.depth + layer * layout.layerSpacing,
    }))
  );
}

/** Length and width of a rectangular floor. */
export interface FloorSides {
  /** the longer side, m */
  readonly length: number;
  /** the shorter side, m */
  readonly width: number;
}

/**
 * Sides of a rectangle from its area and perimeter; a square where no rectangle has both.
 *
 * @param floorArea m²
 * @param perimeter m
 * @returns the sides
 */
export function floorSides(floorArea: number, perimeter: number): FloorSides {
  const half = perimeter / 4;
  const spread = Math.sqrt(Math.max(0, half ** 2 - floorArea));
  return { length: half + spread, width: half - spread };
}
