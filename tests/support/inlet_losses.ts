/** Formulas of inlet losses, for comparison with the table that the library uses. @module */
import { requireInRange } from "../../lib/basics/mod.ts";

/**
 * Loss of a long thin or thick re-entrant inlet. K = 1.12 − 22τ + 216τ² + 80τ³, τ = wall/diameter.
 *
 * Source: Rennels & Hudson 2012 [rennels-hudson-2012]. Valid for: insertion of half a diameter or
 * more, τ ≤ 0.05.
 *
 * @param wall wall thickness over inside diameter
 * @returns velocity heads
 * @throws {OutOfRangeError} where τ exceeds 0.05
 */
export function reentrantInletLossRennels(wall: number): number {
  requireInRange("wall thickness", wall, 0, 0.05, "diameters");
  return 1.12 - 22 * wall + 216 * wall ** 2 + 80 * wall ** 3;
}

/**
 * Loss of an inlet flush with the wall, sharp or rounded.
 *
 * λ = 1 + 0.622·(1 − 0.30·√(r/D) − 0.70·r/D)⁴, K = 0.0696·(1 − 0.569·r/D)·λ² + (λ − 1)².
 *
 * Source: Rennels & Hudson 2012 [rennels-hudson-2012]; for comparison with the table of
 * `roundedInletLoss()`.
 *
 * @param radius edge radius over inside diameter, 0 to 1
 * @returns velocity heads: 0.57 for a sharp edge
 * @throws {OutOfRangeError} where the radius exceeds the diameter
 */
export function roundedInletLossRennels(radius: number): number {
  requireInRange("edge radius", radius, 0, 1, "diameters");
  const jet = 1 + 0.622 * (1 - 0.3 * Math.sqrt(radius) - 0.7 * radius) ** 4;
  return 0.0696 * (1 - 0.569 * radius) * jet ** 2 + (jet - 1) ** 2;
}
