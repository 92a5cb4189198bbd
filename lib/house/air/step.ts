/** One step of the house: air temperature, vents, heater, vapour. @module */
import { HEAT_OF_VAPORISATION } from "../../air/mod.ts";
import { massContent } from "../barrels_and_masonry.ts";
import type { HouseBoundary, HouseFlows, HouseModel, HouseState, HouseStep } from "../types.ts";
import {
  balanceSlope,
  masonryAfter,
  masonryMean,
  massAfter,
  massMean,
  tubesHeat,
} from "./balance.ts";
import { floorDriving, floorRise } from "./floor_surface.ts";
import { endRatio, endTemperature, fitWeights, meanTemperature, setWeights } from "./means.ts";
import { heaterPowerAt } from "./model.ts";
import { type StepTerms, stepTerms } from "./step_terms.ts";
import { type Search, solveTemperature, tryAt } from "./trial.ts";
import { type VapourBalance } from "./vapour.ts";
import { type Limits, openingFor, purge, type Settled } from "./vents.ts";

/** Vents and heater against the free temperature. */
function control(
  terms: StepTerms,
  limits: Limits,
  vapour: VapourBalance,
  search: Search,
): Settled & { heater: number } {
  const { inputs, setPoint, heaterPower } = limits;
  if (heaterPower > 0) {
    const temperature = meanTemperature(terms, setPoint);
    const needed = -tryAt(terms, temperature, 0, vapour);
    if (needed > heaterPower) {
      return {
        temperature: solveTemperature(terms, 0, heaterPower, vapour, search),
        opening: 0,
        heater: heaterPower,
      };
    }
    if (needed > 0) return { temperature, opening: 0, heater: needed };
  }
  const free = solveTemperature(terms, 0, 0, vapour, search);
  const end = endTemperature(terms, free);
  let settled: Settled = { temperature: free, opening: 0 };
  if (end > inputs.ventSetPoint) {
    // on a day hotter than the set point open vents still cool a house that is hotter than the day
    const opening = terms.outside < inputs.ventSetPoint
      ? openingFor(terms, meanTemperature(terms, inputs.ventSetPoint), vapour, search)
      : Number(end > terms.outside);
    settled = {
      temperature: solveTemperature(terms, opening, 0, vapour, search),
      opening,
    };
  }
  return { ...purge(terms, settled, limits, vapour, search), heater: 0 };
}

/** W that the masonry gives up over the step. */
function masonryGives(terms: StepTerms, temperature: number): number {
  if (terms.masonryConductance <= 0) return 0;
  return terms.masonryStore * (terms.start.masonryTemperature - masonryAfter(terms, temperature));
}

function gatherFlows(
  terms: StepTerms,
  settled: Settled & { heater: number },
  vapour: VapourBalance,
): HouseFlows {
  const { temperature, opening, heater } = settled;
  const { boundary, start } = terms;
  const latent = HEAT_OF_VAPORISATION;
  const toAir = terms.heatCapacity * (temperature - terms.outside);
  const massTemperature = massAfter(terms, temperature);
  return {
    solar: terms.solarAir + terms.solarCrop + terms.solarFloor + terms.solarMass +
      terms.solarMasonry,
    glazing: -terms.glazing * (temperature - terms.glazingDriving) -
      (terms.filmSlope * temperature + terms.filmConstant) -
      terms.view.perAir * floorRise(terms, temperature, vapour.floor) +
      latent * (1 - terms.coverShare) * vapour.cover,
    opaque: -terms.opaque * (temperature - terms.opaqueDriving),
    leakage: -terms.leakFlow * toAir,
    vent: -opening * terms.ventFlow * toAir,
    heater,
    floor: boundary.floorConductance *
      (boundary.floorTemperature - floorDriving(terms, temperature, vapour.floor)),
    store: tubesHeat(terms, temperature, vapour),
    evaporation: -latent * (vapour.crop - vapour.mist) - terms.floorLatent * vapour.floor,
    mass:
      (terms.massConductance > 0
        ? terms.massStart - massContent(terms.massStore, massTemperature)
        : 0) + masonryGives(terms, temperature),
    air: terms.airStore * (temperature - start.airTemperature),
    evaporated: vapour.crop + vapour.floor,
    condensed: vapour.cover + vapour.mist,
    ventedVapour: vapour.carried,
  };
}

/** K by which the house must pass the curtain's limit before it opens again, common practice, no source. */
const CURTAIN_BAND = 1;

/** Whether the curtain closes in the dark for the cold inside; undefined where it does not do so. */
function shutInside({ inputs, shut }: HouseModel, state: HouseState): boolean | undefined {
  const limit = inputs.curtain?.closeBelowInside;
  if (shut === undefined || limit === undefined) return undefined;
  return state.airTemperature < limit + (state.curtainShut === true ? CURTAIN_BAND : 0);
}

/** K below the set point from which a heater brings the house up to it at once. */
const COLD_START = 0.01;
/** s from which a step is worked twice, the second time about the mean of the first. */
const TWICE = 120;
/** K to which roots are found, and those about which a step is worked again. */
const CLOSE_ENOUGH = 1e-4;
const ABOUT = 1e-2;

/** Controls with the weights that go with an opening of the vents. */
function settle(
  terms: StepTerms,
  limits: Limits,
  opening: number,
  vapour: VapourBalance,
  search: Search,
): Settled & { heater: number } {
  fitWeights(terms, opening, vapour);
  // a heater without much limit is at its set point long before the step ends
  if (limits.heaterPower > 0 && terms.start.airTemperature < limits.setPoint - COLD_START) {
    setWeights(terms, 1, terms.vapourWeight);
  }
  const settled = control(terms, limits, vapour, search);
  if (endRatio(terms, vapour.humidityRatio) >= 0) return settled;
  setWeights(terms, 1, 1);
  return control(terms, limits, vapour, search);
}

/**
 * Moves the house on by one step. All flows go with the means over the step, found implicitly; air,
 * vapour, barrels and masonry end where a mean leads that lies between start and end as that of
 * something does that nears its equilibrium exponentially (exponential fitting: second order in
 * short steps, backward Euler in long ones, never a swing too far).
 *
 * Air, light structure and leaves share one temperature; barrels and masonry have one each; glazing, floor
 * surface and leaf are without capacity. The air takes up
 * sun + store + heater − evaporation − skin − leakage − vents − floor − barrels = C·dT/dt.
 * Below the heating set point the heater fills the gap up to its power; above the ventilation set
 * point the vents open just far enough, and on a day hotter than that wide while it is hotter
 * inside; above the purge humidity they open as far as the heating set point allows, when the air
 * outside is drier.
 *
 * Balances close to rounding: solar + glazing + opaque + leakage + vent + heater + floor + store +
 * evaporation + mass = air.
 *
 * @param given the house
 * @param state at the start of the step
 * @param hour of the year, 0 to 8759, whose weather holds
 * @param stepSeconds s
 * @param boundary soil and tubes
 * @returns state after the step and mean flows of the step, W
 */
export function stepHouse(
  given: HouseModel,
  state: HouseState,
  hour: number,
  stepSeconds: number,
  boundary: HouseBoundary,
): HouseStep {
  const curtainShut = shutInside(given, state);
  const model = curtainShut === true ? { ...given, ...given.shut } : given;
  const limits = {
    inputs: model.inputs,
    setPoint: model.setPoint[hour]!,
    heaterPower: heaterPowerAt(model, hour),
  };
  const vapour: VapourBalance = {
    humidityRatio: 0,
    crop: 0,
    floor: 0,
    cover: 0,
    mist: 0,
    carried: 0,
    slope: 0,
  };
  const twice = stepSeconds > TWICE;
  const search: Search = {
    temperature: state.airTemperature,
    steeper: 1,
    enough: twice ? ABOUT : CLOSE_ENOUGH,
  };
  let terms = stepTerms(model, state, hour, stepSeconds, boundary);
  let settled = settle(terms, limits, state.ventOpening, vapour, search);
  if (twice) {
    search.enough = CLOSE_ENOUGH;
    const about = { airTemperature: settled.temperature, humidityRatio: vapour.humidityRatio };
    const { wetRise } = terms;
    terms = stepTerms(model, state, hour, stepSeconds, boundary, about);
    terms.wetRise = wetRise;
    settled = settle(terms, limits, settled.opening, vapour, search);
  }
  const left = tryAt(terms, settled.temperature, settled.opening, vapour) + settled.heater;
  // with the vapour flows held, the balance is linear: what the trials left over is closed here
  const temperature = settled.temperature +
    left / balanceSlope(terms, settled.opening, settled.temperature);
  const closed = { ...settled, temperature };
  const flows = gatherFlows(terms, closed, vapour);
  return {
    state: {
      airTemperature: endTemperature(terms, temperature),
      humidityRatio: endRatio(terms, vapour.humidityRatio),
      massTemperature: massAfter(terms, temperature),
      masonryTemperature: masonryAfter(terms, temperature),
      ventOpening: settled.opening,
      fromBelow: terms.solarFloor + terms.solarCrop + flows.evaporation + flows.floor,
      ...(curtainShut === undefined ? {} : { curtainShut }),
    },
    mean: {
      airTemperature: temperature,
      humidityRatio: vapour.humidityRatio,
      massTemperature: massMean(terms, temperature),
      masonryTemperature: masonryMean(terms, temperature),
      ventOpening: settled.opening,
    },
    flows,
    floorDriving: floorDriving(terms, temperature, vapour.floor),
  };
}
