/** Ports of a slice as vectors over its cells, and patterns over its tubes. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingZone } from "../../ground/zones.ts";

/** Weights over listed cells as a vector over all. */
function spread(size: number, cells: Int32Array, weights: Float64Array): Float64Array {
  const vector = new Float64Array(size);
  cells.forEach((cell, k) => vector[cell] = weights[k]!);
  return vector;
}

/** Zones as ports: W/m in, mean temperature out. */
export function zoneVectors(
  operator: ConductionOperator,
  zones: readonly FreezingZone[],
): Float64Array[] {
  return zones.map((zone) => spread(operator.capacity.length, zone.cells, zone.weights));
}

/** Port vectors by cell: tubes, floor, outside, deep end. */
export function portVectors(operator: ConductionOperator): Float64Array[] {
  const size = operator.capacity.length;
  const vectorOf = (cells: Int32Array, weights: Float64Array) => spread(size, cells, weights);
  return [
    ...operator.tubes.map((tube) => vectorOf(tube.cells, tube.weights)),
    vectorOf(operator.floor.cells, operator.floor.conductances),
    vectorOf(operator.outdoor.cells, operator.outdoor.conductances),
    vectorOf(operator.deep.cells, operator.deep.conductances),
  ];
}

/** Tubes of one layer: tubes whose blocks lie in the same row of cells. */
export function layersOf(operator: ConductionOperator): number[][] {
  const rows = operator.tubes.map((tube) => Math.floor(tube.cells[0]! / operator.columns));
  return [...new Set(rows)].map((row) => rows.flatMap((other, k) => other === row ? [k] : []));
}

/** Patterns over the tubes of a layer: all alike, and smooth waves across. */
export function layerPatterns(operator: ConductionOperator, waves: number): number[][] {
  return layersOf(operator).flatMap((layer) =>
    Array.from({ length: Math.min(waves, layer.length) }, (_, wave) => {
      const pattern = new Array<number>(operator.tubes.length).fill(0);
      layer.forEach((tube, place) => {
        pattern[tube] = Math.cos(Math.PI * wave * (place + 0.5) / layer.length);
      });
      return pattern;
    })
  );
}

/** Sum of vectors with factors. */
export function combine(
  vectors: readonly Float64Array[],
  pattern: readonly number[],
): Float64Array {
  const sum = new Float64Array(vectors[0]!.length);
  pattern.forEach((factor, k) => {
    if (factor !== 0) vectors[k]!.forEach((value, c) => sum[c]! += factor * value);
  });
  return sum;
}
