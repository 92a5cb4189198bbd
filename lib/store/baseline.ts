/** The one baseline: the same house with the fan never on, on its own settled ground. @module */
import { sum } from "d3-array";
import { withHeater } from "../house/mod.ts";
import type { HouseModel } from "../house/types.ts";
import { type SettledYear, settledYear } from "./seasons/settled_year.ts";
import type { SoilModel } from "./seasons/soil_model.ts";
import type { StoreRequest } from "./site.ts";

/** Words for the year with the fan never on in labels. */
export const NO_STORE_YEAR = "settled year, fan always off";

/**
 * Years with a jump before the year that counts, from undisturbed ground. After four, house air
 * repeats to 3e-5 K and back-up heat to 1e-6 on the demo; after two, to 0.03 K.
 */
const JUMPS = 4;

/** The house with the fan never on. */
export interface Baseline {
  /** free-running year */
  readonly free: SettledYear;
  /** held at the heating set point by a heater without limit */
  readonly held: SettledYear;
}

/**
 * All of the ground as one lane. With the fan never on the slices along the tubes, and the floor
 * beyond the tubes, do the same at every hour: one of them with the length of all gives the house
 * what all of them would, to rounding.
 */
export function inOneLane(model: SoilModel): SoilModel {
  const { site } = model;
  return { ...model, site: { ...site, slices: 1, lengths: Float64Array.of(sum(site.lengths)) } };
}

/**
 * A settled year without a store, in hourly steps. It starts from undisturbed ground and hangs on
 * nothing that the fan does.
 *
 * @param request study and results of the earlier chapters
 * @param model the soil
 * @param house the house as it is heated
 */
export function baselineYear(
  request: StoreRequest,
  model: SoilModel,
  house: HouseModel,
): SettledYear {
  return settledYear({ request, model: inOneLane(model), house, fan: false, jumps: JUMPS });
}

/**
 * The settled years without a store: free-running, and held at the set point.
 *
 * @param request study and results of the earlier chapters
 * @param model the soil
 * @param house the house, however it is heated
 */
export function baselineYears(
  request: StoreRequest,
  model: SoilModel,
  house: HouseModel,
): Baseline {
  const year = (heater: number) => baselineYear(request, model, withHeater(house, heater));
  return { free: year(0), held: year(Infinity) };
}
