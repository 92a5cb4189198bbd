/** Every tube of the list at the study's flow and length. @module */
import type { AirProperties } from "../air/mod.ts";
import {
  effectiveness,
  filmCoefficient,
  nusseltGnielinski,
  reynoldsNumber,
  transferUnits,
} from "./film.ts";
import { frictionColebrook } from "./friction.ts";
import { crossSection, tubeLoss } from "./pressure.ts";
import { TUBES } from "./products.ts";
import type { TubeProduct, TubesResult } from "./types.ts";

/** What one product does at the study's flow and length of one tube. */
export interface MaterialRow {
  /** row of data/tubes */
  readonly product: TubeProduct;
  /** m/s */
  readonly airSpeed: number;
  /** Darcy factor of this wall */
  readonly friction: number;
  /** Darcy factor of a smooth wall of this size */
  readonly smoothFriction: number;
  /** Pa of one tube */
  readonly pressureDrop: number;
  /** W/(m² K), smooth-tube film */
  readonly film: number;
  /** W/(m² K) that the rough friction factor would wrongly give; null where the flow is not turbulent */
  readonly wrongFilm: number | null;
  /** 0 to 1 */
  readonly effectiveness: number;
}

/** Reynolds number from which the flow counts as turbulent here. */
const TURBULENT = 4000;

/**
 * Every product of data/tubes at the study's flow and length of one tube.
 *
 * @param tubes result of the tubes chapter
 * @param given velocity heads besides inlet and exit, and the air in the tubes
 */
export function materialRows(
  tubes: Pick<TubesResult, "length" | "flowPerTube">,
  given: { readonly extraLosses: number; readonly air: AirProperties },
): MaterialRow[] {
  return TUBES.map((product) => materialRow(product, tubes, given));
}

function materialRow(
  product: TubeProduct,
  { length, flowPerTube: airFlow }: Pick<TubesResult, "length" | "flowPerTube">,
  { extraLosses, air }: { readonly extraLosses: number; readonly air: AirProperties },
): MaterialRow {
  const diameter = product.insideDiameter;
  const airSpeed = airFlow / crossSection(diameter);
  const reynolds = reynoldsNumber(airSpeed, diameter, air);
  const loss = tubeLoss({ product, length, airFlow, extraLosses, air });
  const film = filmCoefficient(airSpeed, diameter, air);
  const turbulent = reynolds >= TURBULENT;
  return {
    product,
    airSpeed,
    friction: loss.frictionFactor,
    smoothFriction: turbulent ? frictionColebrook(reynolds, 0) : loss.frictionFactor,
    pressureDrop: loss.pressureDrop,
    film,
    wrongFilm: turbulent && product.wall === "corrugated"
      ? nusseltGnielinski(reynolds, air.prandtl, loss.frictionFactor) * air.conductivity / diameter
      : null,
    effectiveness: effectiveness(
      transferUnits({ filmCoefficient: film, diameter, length, airFlow, air }),
    ),
  };
}
