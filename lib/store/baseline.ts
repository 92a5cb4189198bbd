/** The one baseline: the same house with the fan never on, on its own settled ground. @module */
import { sum } from "d3-array";
import { withHeater } from "../house/mod.ts";
import { USUAL_SUCTION } from "./air/collector.ts";
import type { HouseModel } from "../house/types.ts";
import { type SettledYear, settledYear } from "./seasons/settled_year.ts";
import { type SoilField, stateFromField } from "./seasons/soil_field.ts";
import type { SoilModel } from "./seasons/soil_model.ts";
import type { StoreRequest } from "./site.ts";
import type { StoreInputs } from "./types.ts";

/** Words for the year with the fan never on in labels. */
export const NO_STORE_YEAR = "settled year, fan always off";

/**
 * Years with a jump before the year that counts, from undisturbed ground. On the demo house air is then
 * within 0.0011 K (root mean square) and back-up heat within 4e-5 of what more of them, in the steps of
 * the year that counts, lead to.
 */
export const JUMPS = 4;

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
 * Years with a jump from the settled ground of a like house heated alike. On the demo, heat differs by
 * up to 3e-5 from that of a start afar, and the coldest hour by up to 0.002 K.
 */
const JUMPS_FROM_LIKE = 1;

/**
 * A settled year without a store, with its cells. It starts from undisturbed ground, or from the
 * settled ground of a like house, and hangs on nothing that the fan does.
 *
 * @param request study and results of the earlier chapters
 * @param model the soil
 * @param house the house as it is heated
 * @param from soil of a like house
 */
export function baselineYear(
  request: StoreRequest,
  model: SoilModel,
  house: HouseModel,
  from?: SoilField,
): SettledYear {
  const lane = inOneLane(model);
  const start = from === undefined
    ? { jumps: JUMPS }
    : { jumps: JUMPS_FROM_LIKE, start: stateFromField(lane, from) };
  return settledYear({ request, model: lane, house, fan: false, keepCells: true, ...start });
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

/**
 * A study's request as far as the years without a store hang on it: what tubes carry, fan, headers and
 * control are any. So these years are run once for all stores under the same house and soil.
 *
 * @param request the store's request
 */
export function baselineRequest(request: StoreRequest): StoreRequest {
  const { inputs, houseInputs, tubesInputs: { direction }, tubes } = request;
  // a plate indoors shades the house though no fan draws on it, and wants a flow that fits it; one
  // outdoors does nothing
  const collector = inputs.collector?.place === "inside" ? inputs.collector : undefined;
  const airFlow = collector === undefined ? 1 : USUAL_SUCTION * collector.area;
  return {
    ...request,
    inputs: { ...inputs, collector, ...AT_REST },
    tubesInputs: { direction, airFlow },
    tubes: {
      ...tubes,
      length: direction === "along" ? houseInputs.length : houseInputs.width,
      filmCoefficient: 1,
    },
    headers: { shares: request.headers.shares.map(() => 1) },
    fan: { airFlow, power: 0, density: 1 },
    rough: undefined,
  };
}

/** Controls of a fan that is always off, and one slice without first years. */
const AT_REST: Omit<
  StoreInputs,
  | "outsideSoil"
  | "meshDepth"
  | "groundWaterMoves"
  | "collector"
  | "gravelBed"
  | "flatBoardResistance"
  | "flatBoardDepth"
> = {
  chargeStart: 1,
  chargeStop: 1,
  chargeAbove: 0,
  dischargeStart: 1,
  dischargeStop: 1,
  dischargeBelow: 0,
  minimumRun: 0,
  humidityLockOut: 1,
  stratification: undefined,
  mixingFlow: 0,
  reverse: false,
  slices: 1,
  spinUpYears: 0,
  ventsFirst: undefined,
  fanSeason: undefined,
  chargeSeason: undefined,
  chargeBelowGround: undefined,
  maximumStore: undefined,
};
