/** Heat of tubes as the air flow that would leave them at wall temperature. @module */
import type { AirProperties } from "../air/mod.ts";
import { effectiveness, filmCoefficient, transferUnits } from "./film.ts";
import { crossSection } from "./pressure.ts";
import type { TubeProduct } from "./types.ts";

/** Tubes whose heat is compared. */
export interface HeatedTubes {
  /** row of data/tubes */
  readonly product: TubeProduct;
  /** m */
  readonly length: number;
  /** properties of the air */
  readonly air: AirProperties;
}

/**
 * Air flow that would carry the same heat if it left at wall temperature: Σ Qᵢ·ε(Qᵢ). Times ρc and
 * the difference between inlet and wall it is the heat of the field, dry.
 *
 * @param flows m³/s of each tube; the direction does not matter
 * @param tubes tube, length and air
 * @returns m³/s
 */
export function exchangedFlow(flows: ArrayLike<number>, tubes: HeatedTubes): number {
  const { length, air } = tubes;
  const diameter = tubes.product.insideDiameter;
  return Array.from(flows).reduce((sum, flow) => {
    if (flow === 0) return sum;
    const airFlow = Math.abs(flow);
    const film = filmCoefficient(airFlow / crossSection(diameter), diameter, air);
    const units = transferUnits({ filmCoefficient: film, diameter, length, airFlow, air });
    return sum + airFlow * effectiveness(units);
  }, 0);
}
