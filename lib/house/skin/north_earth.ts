/** Earth heaped against the back wall. @module */
import type { HouseInputs } from "../fields.ts";
import type { HouseGeometry, SkinPart } from "./types.ts";

/** m² K/W of a metre of earth against a wall: path πd/4 through soil of 1.5 W/(m K) (common practice, no source). */
const EARTH_RESISTANCE = Math.PI / 4 / 1.5;

/** Share of the north wall behind earth and its conductance, W/K, towards the ground. */
export function buriedConductance(
  part: SkinPart,
  inputs: HouseInputs,
  geometry: HouseGeometry,
): { buried: number; earth: number } {
  const height = inputs.northEarthHeight;
  const isBackWall = part.side === "back" && part.element === "wall" && part.kind === "opaque";
  if (!isBackWall || height <= 0) return { buried: 0, earth: 0 };
  const length = geometry.floorArea / inputs.width;
  const buried = Math.min(1, height * length / part.area);
  const resistance = 1 / part.transmittanceHeat + EARTH_RESISTANCE * height / 2;
  return { buried, earth: part.area * buried / resistance };
}
