/** Ports of a slice as weights over its cells, and patterns over its tubes. @module */
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingZone } from "../../ground/zones.ts";

/** A port: what flows in is shared over cells by weights, and the same weights say what it sees. */
export interface Port {
  readonly cells: Int32Array;
  readonly weights: Float64Array;
}

/** Floor, outside, deep end. */
const SURFACES = 3;

/**
 * Ports of a slice: tubes (W/m in, block temperature out), floor, outside and deep end (K in,
 * Σ g·T out), zones (W/m in, mean temperature out).
 */
export function slicePorts(
  operator: ConductionOperator,
  zones: readonly FreezingZone[],
): Port[] {
  const { tubes, floor, outdoor, deep } = operator;
  const surfaces = [floor, outdoor, deep].map(({ cells, conductances }) => ({
    cells,
    weights: conductances,
  }));
  return [...tubes, ...surfaces, ...zones];
}

/** What a port sees of a field by cell. */
export function seenBy({ cells, weights }: Port, field: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < cells.length; k++) sum += weights[k]! * field[cells[k]!]!;
  return sum;
}

/** Sum of a port's weights: what it sees of 1 in every cell. */
export function weightOf({ weights }: Port): number {
  return weights.reduce((sum, weight) => sum + weight, 0);
}

/** Inputs at the ports as heat by cell. */
export function spreadInputs(
  size: number,
  ports: readonly Port[],
  inputs: Float64Array,
): Float64Array {
  const heat = new Float64Array(size);
  ports.forEach(({ cells, weights }, p) => {
    const input = inputs[p]!;
    if (input === 0) return;
    for (let k = 0; k < cells.length; k++) heat[cells[k]!]! += input * weights[k]!;
  });
  return heat;
}

/**
 * Inputs less what warms the slice as a whole: the surfaces lowered by so many kelvins that as much
 * heat leaves through them as comes in. What is left over has an answer of its own size even where
 * the slice is nearly sealed.
 *
 * @param tubes number of them: the surfaces' ports follow
 * @param weights of each port, summed
 * @param inputs by port
 */
export function balancedInputs(
  tubes: number,
  weights: readonly number[],
  inputs: Float64Array,
): Float64Array {
  const leak = leakOf(tubes, weights);
  const put = inputs.reduce((sum, input, p) => sum + input * weights[p]!, 0);
  return inputs.map((input, p) => p >= tubes && p < tubes + SURFACES ? input - put / leak : input);
}

/** W/(m K) out of the slice through all its surfaces. */
export function leakOf(tubes: number, weights: readonly number[]): number {
  return weights.slice(tubes, tubes + SURFACES).reduce((sum, weight) => sum + weight, 0);
}

/** Tubes of one layer: tubes whose blocks lie in the same row of cells. */
export function layersOf(operator: ConductionOperator): number[][] {
  const rows = operator.tubes.map((tube) => Math.floor(tube.cells[0]! / operator.columns));
  return [...new Set(rows)].map((row) => rows.flatMap((other, k) => other === row ? [k] : []));
}

/** Tubes that share a port; one where the mirror plane cuts it too. */
export function tubesIn(operator: ConductionOperator, tube: number): number {
  return Math.max(1, operator.tubes[tube]!.part);
}

/** Patterns over the tubes of a layer: all alike, and smooth waves across. */
export function wavesAcross(
  operator: ConductionOperator,
  layer: readonly number[],
  waves: number,
): number[][] {
  return Array.from({ length: Math.min(waves, layer.length) }, (_, wave) => {
    const pattern = new Array<number>(operator.tubes.length).fill(0);
    layer.forEach((tube, place) => {
      pattern[tube] = tubesIn(operator, tube) *
        Math.cos(Math.PI * wave * (place + 0.5) / layer.length);
    });
    return pattern;
  });
}

/** The same of every layer. */
export function layerPatterns(operator: ConductionOperator, waves: number): number[][] {
  return layersOf(operator).flatMap((layer) => wavesAcross(operator, layer, waves));
}

/** Waves across all layers together, and fewest in one: more tubes than that share patterns. */
const WAVES = 24;
const LEAST_WAVES = 6;

function wavesOf(layers: number): number {
  return Math.max(LEAST_WAVES, Math.floor(WAVES / layers));
}

/** How many patterns would stand for the tubes if none of them shared a port. */
export function patternsOneByOne(operator: ConductionOperator): number {
  const layers = layersOf(operator);
  const waves = wavesOf(layers.length);
  return layers.reduce((sum, layer) => {
    const tubes = layer.reduce((count, tube) => count + tubesIn(operator, tube), 0);
    return sum + (tubes > waves ? waves + 2 : tubes);
  }, 0);
}

/**
 * Patterns that stand for the tubes one by one: as many waves as there are tubes where these are
 * few; of a long row the smooth waves and the tubes at its ends alone, for those between are alike.
 */
export function tubePatterns(operator: ConductionOperator): number[][] {
  const layers = layersOf(operator);
  const waves = wavesOf(layers.length);
  const ends = layers.flatMap((layer) => layer.length > waves ? [layer[0]!, layer.at(-1)!] : []);
  return [
    ...layerPatterns(operator, waves),
    ...ends.map((end) => operator.tubes.map((_, tube) => tube === end ? 1 : 0)),
  ];
}
