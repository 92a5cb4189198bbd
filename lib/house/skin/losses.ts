/** Steady loss coefficient by parts, as worked by hand. @module */
import { HOUR } from "../../basics/mod.ts";
import { DRY_AIR_HEAT_CAPACITY } from "../../air/mod.ts";
import { leakageRate } from "./leakage.ts";
import { withCurtain } from "./curtain.ts";
import { findGlazing } from "./glazing_table.ts";
import { buriedConductance } from "./north_earth.ts";
import type { HouseInputs } from "../fields.ts";
import type { HouseGeometry, SkinPart } from "./types.ts";

/** One part of the loss coefficient. */
export interface LossPart {
  /** what it is */
  readonly id: "glazing" | "walls" | "roof" | "leakage" | "edge";
  /** name for the reader; nothing is decided by it */
  readonly name: string;
  /** W/K */
  readonly conductance: number;
}

/**
 * Heat transmittance of the glazing as the inputs' curtain leaves it at night.
 *
 * @param inputs glazing and curtain
 * @returns W/(m² K) in the design wind
 */
export function nightTransmittance(inputs: Pick<HouseInputs, "glazing" | "curtain">): number {
  const open = findGlazing(inputs.glazing).heatTransmittance;
  return inputs.curtain === null ? open : withCurtain(open, inputs.curtain);
}

/**
 * U·A of one part of the skin as at night: glazing with the curtain closed where there is one, a
 * wall behind earth with the earth's resistance.
 *
 * @param part of the geometry
 * @param inputs house section of the study
 * @param geometry the part belongs to
 * @returns W/K in the design wind
 */
export function nightConductance(
  part: SkinPart,
  inputs: HouseInputs,
  geometry: HouseGeometry,
): number {
  if (part.kind === "glazed") return part.area * nightTransmittance(inputs);
  if (part.element === "roof") return part.area * part.transmittanceHeat;
  if (part.transmittanceHeat <= 0) return 0;
  const { buried, earth } = buriedConductance(part, inputs, geometry);
  return part.area * part.transmittanceHeat * (1 - buried) + earth;
}

/** Conditions of {@link lossParts}. */
export interface LossConditions {
  /** house section of the study */
  readonly inputs: HouseInputs;
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** kg of dry air in the house */
  readonly dryAirMass: number;
  /** W/(m K) of perimeter */
  readonly edgeLossFactor: number;
  /** K between house and outside */
  readonly difference: number;
  /** m/s */
  readonly windSpeed: number;
}

/**
 * Loss coefficient by parts: U·A of glazing and solid skin, leakage m·c, edge F·P.
 *
 * Glazing as at night, curtain closed where there is one.
 *
 * @param given house and conditions
 * @returns W/K by part, in fixed order
 */
export function lossParts(given: LossConditions): readonly LossPart[] {
  const { inputs, geometry } = given;
  let [glazed, walls, roof] = [0, 0, 0];
  for (const part of geometry.parts) {
    const conductance = nightConductance(part, inputs, geometry);
    if (part.kind === "glazed") glazed += conductance;
    else if (part.element === "roof") roof += conductance;
    else walls += conductance;
  }
  const rate = leakageRate(inputs, given.difference, given.windSpeed);
  return [
    { id: "glazing", name: "glazing", conductance: glazed },
    { id: "walls", name: "solid walls", conductance: walls },
    { id: "roof", name: "solid roof", conductance: roof },
    {
      id: "leakage",
      name: "leakage",
      conductance: given.dryAirMass * DRY_AIR_HEAT_CAPACITY * rate / HOUR,
    },
    { id: "edge", name: "floor edge", conductance: given.edgeLossFactor * geometry.perimeter },
  ];
}
