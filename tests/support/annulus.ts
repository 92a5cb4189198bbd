/** A ring of soil around one tube, for which exact answers exist. @module */
import { requireInRange } from "../../lib/basics/mod.ts";
import type { ConductionOperator, SurfacePort } from "../../lib/store/ground/operator.ts";

/** Ring of soil around a tube. */
export interface Annulus {
  /** m, the tube's outside radius */
  readonly innerRadius: number;
  /** m, where the soil ends */
  readonly outerRadius: number;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(m³ K) */
  readonly heatCapacity: number;
  /** cells outwards, growing geometrically */
  readonly rings: number;
  /** "insulated" or held at the deep temperature */
  readonly outer: "insulated" | "held";
}

/**
 * One metre of the ring as a conduction operator, so that the same stepper and the same tube
 * coupling run on it as on a slice: g = 2πλ/ln(r₂/r₁) between the middles of the rings.
 *
 * Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §7.2, steady radial flow.
 */
export function annulusOperator(annulus: Annulus): ConductionOperator {
  const { innerRadius, outerRadius, conductivity, heatCapacity, rings } = annulus;
  requireInRange("outer over inner radius of the ring", outerRadius / innerRadius, 1.001, 1e4, "1");
  const edges = Array.from(
    { length: rings + 1 },
    (_, k) => innerRadius * (outerRadius / innerRadius) ** (k / rings),
  );
  const middles = Array.from(
    { length: rings },
    (_, k) => Math.sqrt((edges[k]! ** 2 + edges[k + 1]! ** 2) / 2),
  );
  const between = (near: number, far: number) => 2 * Math.PI * conductivity / Math.log(far / near);
  const none: SurfacePort = { cells: new Int32Array(), conductances: new Float64Array() };
  return {
    columns: 1,
    rows: rings,
    capacity: Float64Array.from(
      middles,
      (_, k) => heatCapacity * Math.PI * (edges[k + 1]! ** 2 - edges[k]! ** 2),
    ),
    sideways: new Float64Array(rings),
    downwards: Float64Array.from(
      middles,
      (middle, k) => k + 1 < rings ? between(middle, middles[k + 1]!) : 0,
    ),
    tubes: [{
      cells: Int32Array.of(0),
      weights: Float64Array.of(1),
      resistance: Math.log(middles[0]! / innerRadius) / (2 * Math.PI * conductivity),
      part: 1,
    }],
    floor: none,
    outdoor: none,
    deep: annulus.outer === "held"
      ? {
        cells: Int32Array.of(rings - 1),
        conductances: Float64Array.of(between(middles[rings - 1]!, outerRadius)),
      }
      : none,
    store: {
      cells: Int32Array.from(middles, (_, k) => k),
      weights: Float64Array.from(middles, () => 1 / rings),
    },
    freezing: null,
  };
}
