/** Air side of a study's store: flows and films. @module */
import { DRY_AIR_HEAT_CAPACITY, VAPOUR_HEAT_CAPACITY } from "../../air/mod.ts";
import type { FanPoint } from "../../fan/types.ts";
import { meanPressure } from "../../climate/weather.ts";
import type { ConductionOperator } from "../ground/operator.ts";
import type { StoreRequest } from "../request.ts";
import type { ModeFlow } from "./flow_air.ts";
import type { flowShares } from "./flow_shares.ts";
import { type FieldTube, type TubeField, tubeField } from "./tube_field.ts";

/** kg of water per m² of wall held as film and in the corrugations; common practice, no source. */
const FILM_WATER = 0.1;
/** J/(kg K) of moist air for each kilogram of dry air, at 6 g/kg. */
const MOIST_AIR = DRY_AIR_HEAT_CAPACITY + 0.006 * VAPOUR_HEAT_CAPACITY;

/** kg/s of dry air and W/K, all tubes together. */
export function airRates(
  fan: StoreRequest["fan"],
): { readonly airRate: number; readonly heatRate: number } {
  const airRate = fan.airFlow * fan.density;
  return { airRate, heatRate: airRate * MOIST_AIR };
}

/** Flow and power of the fan in its two modes; where it has one speed, those of its operating point. */
export function fanModes(
  fan: StoreRequest["fan"],
): { readonly charge: ModeFlow; readonly discharge: ModeFlow } {
  const { charge = fan, discharge = fan } = fan;
  const mode = ({ airFlow, power }: Pick<FanPoint, "airFlow" | "power">): ModeFlow => ({
    flow: airFlow / fan.airFlow,
    power,
  });
  return { charge: mode(charge), discharge: mode(discharge) };
}

/**
 * Film coefficient at another flow than the tubes chapter's: turbulent film goes with flow^0.8
 * (Dittus & Boelter 1930 [dittus-boelter-1930]).
 */
function filmAt(request: StoreRequest, share: number): number {
  const { tubes, fan, tubesInputs } = request;
  return tubes.filmCoefficient * (share * fan.airFlow / tubesInputs.airFlow) ** 0.8;
}

/** Tubes of the mesh with their flows, each over the mean, and films. */
export function siteField(
  request: StoreRequest,
  operator: ConductionOperator,
  { half, shares }: ReturnType<typeof flowShares>,
): TubeField {
  const { inputs, tubes } = request;
  const { airRate } = airRates(request.fan);
  return tubeField({
    operator,
    slices: inputs.slices,
    length: tubes.length,
    half,
    perimeter: Math.PI * tubes.diameter,
    filmWater: FILM_WATER,
    pressure: meanPressure(request),
    tubes: shares.map((share): FieldTube => {
      const rate = airRate * share / tubes.count;
      return {
        heatRate: rate * MOIST_AIR,
        airRate: rate,
        film: Math.PI * tubes.diameter * filmAt(request, share),
      };
    }),
  });
}
