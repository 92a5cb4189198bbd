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

/** The floor of a house. */
export interface FloorSize {
  /** along the ridge, m */
  readonly length: number;
  /** across it, m; may be the longer side */
  readonly width: number;
}

/**
 * Extent of the floor along the tubes and across them.
 *
 * @param house length and width, m
 * @param direction of the tubes: along or across the length of the house
 * @returns both, m
 */
export function floorExtents(
  { length, width }: FloorSize,
  direction: "along" | "across",
): { readonly along: number; readonly across: number } {
  return direction === "along"
    ? { along: length, across: width }
    : { along: width, across: length };
}
