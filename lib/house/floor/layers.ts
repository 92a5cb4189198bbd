/** Sums over layered ground between two depths. @module */

/**
 * Integral over depth of what layers hold for each metre of it.
 *
 * @param layers from the surface down; the last goes on for ever
 * @param from m
 * @param to m
 * @param of a quantity for each metre of a layer
 */
export function overLayers<Layer extends { readonly thickness: number }>(
  layers: readonly Layer[],
  from: number,
  to: number,
  of: (layer: Layer) => number,
): number {
  let [top, sum] = [0, 0];
  layers.forEach((layer, k) => {
    const bottom = k === layers.length - 1 ? Infinity : top + layer.thickness;
    sum += Math.max(0, Math.min(to, bottom) - Math.max(from, top)) * of(layer);
    top = bottom;
  });
  return sum;
}
