/** One tube in its share of the soil, worked out apart from the store: a round hole, fine rings. @module */

/** A tube in a ring of soil that nothing leaves, fed with air in turns. */
export interface PeriodicCell {
  /** m, the tube's outside radius, and where the soil ends */
  readonly radius: number;
  readonly outerRadius: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
  /** W/(m² K) at the outside radius */
  readonly film: number;
  /** W/K of air, and m of tube in equal segments */
  readonly heatRate: number;
  readonly length: number;
  readonly segments: number;
  /** degC of the soil at the start */
  readonly start: number;
  /** degC of the inlet at a time in s; null while the fan stands */
  readonly inlet: (time: number) => number | null;
  readonly days: number;
}

/** J that the air left in the soil and took out of it on the last day. */
export interface CellHeat {
  readonly heatIn: number;
  readonly heatOut: number;
}

/** Rings and seconds so fine that halving them changes the heat by less than 0.1 %. */
const RINGS = 120;
const SECONDS = 60;

/** Rings that grow outwards from a thousandth of the span. */
function ringEdges(radius: number, outerRadius: number, rings: number): number[] {
  let [low, high] = [1 + 1e-9, 1.5];
  const span = (outerRadius - radius) / (0.001 * (outerRadius - radius));
  for (let k = 0; k < 80; k++) {
    const growth = (low + high) / 2;
    if ((growth ** rings - 1) / (growth - 1) < span) low = growth;
    else high = growth;
  }
  const total = (low ** rings - 1) / (low - 1);
  return Array.from(
    { length: rings + 1 },
    (_, k) => radius + (outerRadius - radius) * (low ** k - 1) / (low - 1) / total,
  );
}

/**
 * Backward steps of one minute: each segment's rings are solved with the air at its inlet known, air
 * and wall of a segment as a heat exchanger with the wall's temperature even along it.
 *
 * Source: conduction in polar coordinates, Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §7.1.
 */
export function periodicCell(cell: PeriodicCell, rings = RINGS, seconds = SECONDS): CellHeat {
  const { conductivity, heatCapacity, radius, heatRate, segments } = cell;
  const edges = ringEdges(radius, cell.outerRadius, rings);
  const middles = Array.from({ length: rings }, (_, k) => (edges[k]! + edges[k + 1]!) / 2);
  const capacity = middles.map((_, k) =>
    heatCapacity * Math.PI * (edges[k + 1]! ** 2 - edges[k]! ** 2) / seconds
  );
  const link = middles.map((middle, k) =>
    k + 1 < rings ? 2 * Math.PI * conductivity / Math.log(middles[k + 1]! / middle) : 0
  );
  const segment = cell.length / segments;
  const toWall = Math.log(middles[0]! / radius) / (2 * Math.PI * conductivity);
  const film = 1 / (2 * Math.PI * radius * cell.film);
  const exchanged = -Math.expm1(-segment / film / heatRate) * heatRate / segment;
  const gain = 1 / (1 / exchanged + toWall);
  const factors = [0, gain].map((extra) => eliminate(capacity, link, extra));
  const fields = Array.from({ length: segments }, () => new Float64Array(rings).fill(cell.start));
  let [heatIn, heatOut] = [0, 0];
  const steps = Math.round(cell.days * 86400 / seconds);
  for (let step = 0; step < steps; step++) {
    const time = (step + 0.5) * seconds;
    const inlet = cell.inlet(time);
    const pivots = factors[inlet === null ? 0 : 1]!;
    let air = inlet ?? 0;
    let left = 0;
    for (const field of fields) {
      solve(field, capacity, link, pivots, inlet === null ? 0 : gain * air);
      if (inlet === null) continue;
      const heat = gain * (air - field[0]!) * segment;
      air -= heat / heatRate;
      left += heat * seconds;
    }
    if (step * seconds < (cell.days - 1) * 86400) continue;
    if (left > 0) heatIn += left;
    else heatOut -= left;
  }
  return { heatIn, heatOut };
}

/** Reciprocal pivots of the chain of rings with `extra` W/(m K) on the first. */
function eliminate(capacity: readonly number[], link: readonly number[], extra: number) {
  const pivots = new Float64Array(capacity.length);
  capacity.forEach((own, k) => {
    const inner = k > 0 ? link[k - 1]! : 0;
    const carried = k > 0 ? inner * inner * pivots[k - 1]! : 0;
    pivots[k] = 1 / (own + inner + link[k]! + (k === 0 ? extra : 0) - carried);
  });
  return pivots;
}

/** One backward step in place. */
function solve(
  field: Float64Array,
  capacity: readonly number[],
  link: readonly number[],
  pivots: Float64Array,
  heat: number,
): void {
  const last = field.length - 1;
  field[0] = (capacity[0]! * field[0]! + heat) * pivots[0]!;
  for (let k = 1; k <= last; k++) {
    field[k] = (capacity[k]! * field[k]! + link[k - 1]! * field[k - 1]!) * pivots[k]!;
  }
  for (let k = last - 1; k >= 0; k--) field[k]! += link[k]! * pivots[k]! * field[k + 1]!;
}
