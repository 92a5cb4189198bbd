/** One step of the house: air temperature, vents, heater, vapour. @module */
import { HEAT_OF_VAPORISATION, vapourPressure } from "../../air/mod.ts";
import {
  balanceSlope,
  floorDriving,
  heatBalance,
  massAfter,
  solveVapour,
  type StepTerms,
  stepTerms,
  type VapourBalance,
} from "./balance.ts";
import { quickSaturationOverWater } from "./saturation_table.ts";
import { massContent } from "../mass.ts";
import type { HouseBoundary, HouseFlows, HouseModel, HouseState, HouseStep } from "../types.ts";

const TRIALS = 40;
/** K and share of opening to which a trial is solved; the rest goes into the closed balance */
const CLOSE_ENOUGH = 1e-7;

/** Heat balance at a trial with its vapour solved. */
function tryAt(
  terms: StepTerms,
  temperature: number,
  opening: number,
  vapour: VapourBalance,
): number {
  solveVapour(terms, temperature, opening, vapour);
  return heatBalance(terms, temperature, opening, vapour);
}

/**
 * Root of a falling function near a guess: secant steps inside a bracket that closes.
 *
 * @param evaluate falling function
 * @param guess start
 * @param slope how fast it falls at least, above 0
 * @param enough width of a step at which to stop
 */
function fallingRoot(
  evaluate: (at: number) => number,
  guess: number,
  slope: number,
  enough: number,
): number {
  let [low, high] = [-Infinity, Infinity];
  let [at, value] = [guess, evaluate(guess)];
  let steep = slope;
  for (let trial = 0; trial < TRIALS; trial++) {
    if (value > 0) low = at;
    else if (value < 0) high = at;
    else return at;
    let next = at + value / steep;
    if (Math.abs(next - at) < enough) return next;
    if (next <= low || next >= high) next = (low + high) / 2;
    const step = next - at;
    const before = value;
    at = next;
    value = evaluate(at);
    steep = Math.max(slope, (before - value) / step);
  }
  return at;
}

function solveTemperature(
  terms: StepTerms,
  opening: number,
  heater: number,
  vapour: VapourBalance,
): number {
  const slope = balanceSlope(terms, opening, terms.start.airTemperature);
  return fallingRoot(
    (temperature) => tryAt(terms, temperature, opening, vapour) + heater,
    terms.start.airTemperature,
    slope,
    CLOSE_ENOUGH,
  );
}

/** Opening that holds the air at a temperature, 0 to 1. */
function openingFor(terms: StepTerms, temperature: number, vapour: VapourBalance): number {
  const pull = terms.ventFlow * terms.heatCapacity * (temperature - terms.outside);
  if (pull <= 0) return 0;
  const closed = tryAt(terms, temperature, 0, vapour);
  if (closed <= 0) return 0;
  if (tryAt(terms, temperature, 1, vapour) >= 0) return 1;
  let [low, high] = [0, 1];
  let opening = Math.min(1, closed / pull);
  for (let trial = 0; trial < TRIALS && high - low > CLOSE_ENOUGH; trial++) {
    const value = tryAt(terms, temperature, opening, vapour);
    if (value > 0) low = opening;
    else high = opening;
    const step = value / pull;
    if (Math.abs(step) < CLOSE_ENOUGH) break;
    opening += step;
    if (!(opening > low && opening < high)) opening = (low + high) / 2;
  }
  return opening;
}

function humidity(terms: StepTerms, temperature: number, vapour: VapourBalance): number {
  return vapourPressure(vapour.humidityRatio, terms.pressure) /
    quickSaturationOverWater(temperature);
}

/** What the control of one step keeps to. */
interface Limits {
  readonly inputs: HouseModel["inputs"];
  /** degC of the heater in this hour */
  readonly setPoint: number;
}

interface Settled {
  readonly temperature: number;
  readonly opening: number;
}

/** Least opening that brings the humidity down to the limit without chilling the house. */
function purge(
  terms: StepTerms,
  settled: Settled,
  limits: Limits,
  vapour: VapourBalance,
): Settled {
  const { inputs, setPoint } = limits;
  const limit = inputs.purgeHumidity;
  const dryer = vapour.humidityRatio > terms.outsideRatio;
  const warm = settled.temperature > setPoint;
  if (!dryer || !warm || humidity(terms, settled.temperature, vapour) <= limit) return settled;
  let [low, high] = [settled.opening, 1];
  let best = settled;
  for (let trial = 0; trial < 8; trial++) {
    const opening = trial === 0 ? low + 0.05 * (high - low) : (low + high) / 2;
    const temperature = solveTemperature(terms, opening, 0, vapour);
    const cold = temperature < setPoint;
    const damp = humidity(terms, temperature, vapour) > limit;
    if (!cold) best = { temperature, opening };
    if (cold || !damp) high = opening;
    else low = opening;
  }
  return best;
}

/** Vents and heater against the free temperature. */
function control(
  terms: StepTerms,
  limits: Limits,
  vapour: VapourBalance,
): Settled & { heater: number } {
  const { inputs, setPoint } = limits;
  const free = solveTemperature(terms, 0, 0, vapour);
  if (free < setPoint && inputs.heaterPower > 0) {
    const needed = -tryAt(terms, setPoint, 0, vapour);
    if (needed <= inputs.heaterPower) {
      return { temperature: setPoint, opening: 0, heater: Math.max(0, needed) };
    }
    const heater = inputs.heaterPower;
    return { temperature: solveTemperature(terms, 0, heater, vapour), opening: 0, heater };
  }
  let settled: Settled = { temperature: free, opening: 0 };
  if (free > inputs.ventSetPoint) {
    // on a day hotter than the set point open vents still cool a house that is hotter than the day
    const opening = terms.outside < inputs.ventSetPoint
      ? openingFor(terms, inputs.ventSetPoint, vapour)
      : Number(free > terms.outside);
    settled = { temperature: solveTemperature(terms, opening, 0, vapour), opening };
  } else {
    tryAt(terms, free, 0, vapour);
  }
  return { ...purge(terms, settled, limits, vapour), heater: 0 };
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
    solar: terms.solarAir + terms.solarCrop + terms.solarFloor + terms.solarMass,
    glazing: -terms.glazing * (temperature - terms.glazingDriving) -
      (terms.filmSlope * temperature + terms.filmConstant) +
      latent * (1 - terms.coverShare) * vapour.cover,
    opaque: -terms.opaque * (temperature - terms.opaqueDriving),
    edge: 0,
    leakage: -terms.leakFlow * toAir,
    vent: -opening * terms.ventFlow * toAir,
    heater,
    floor: boundary.floorConductance *
      (floorDriving(terms, temperature, vapour) - boundary.floorTemperature),
    store: boundary.storeHeat + boundary.storeSlope * (temperature - boundary.storeReference),
    evaporation: -latent * (vapour.crop + vapour.floor - vapour.mist),
    mass: terms.massConductance > 0
      ? terms.massStart - massContent(terms.massStore, massTemperature)
      : 0,
    air: terms.airStore * (temperature - start.airTemperature),
    evaporated: vapour.crop + vapour.floor,
    condensed: vapour.cover + vapour.mist,
    ventedVapour: vapour.carried,
  };
}

/**
 * Moves the house on by one step, all temperatures implicit (backward Euler).
 *
 * Air, light structure and leaves share one temperature; barrels have their own; glazing, floor
 * surface and leaf are without capacity. The air takes up
 * sun + store + heater − evaporation − skin − leakage − vents − floor − barrels = C·dT/dt.
 * Below the heating set point the heater fills the gap up to its power; above the ventilation set
 * point the vents open just far enough, and on a day hotter than that wide while it is hotter
 * inside; above the purge humidity they open as far as the heating set point allows, when the air
 * outside is drier.
 *
 * Balances close to rounding: solar + glazing + opaque + leakage + vent + heater − floor + store +
 * evaporation + mass = air.
 *
 * @param model the house
 * @param state at the start of the step
 * @param hour of the year, 0 to 8759, whose weather holds
 * @param stepSeconds s
 * @param boundary soil and tubes
 */
export function stepHouse(
  model: HouseModel,
  state: HouseState,
  hour: number,
  stepSeconds: number,
  boundary: HouseBoundary,
): HouseStep {
  const terms = stepTerms(model, state, hour, stepSeconds, boundary);
  const vapour: VapourBalance = {
    humidityRatio: 0,
    crop: 0,
    floor: 0,
    cover: 0,
    mist: 0,
    carried: 0,
  };
  const settled = control(terms, { inputs: model.inputs, setPoint: model.setPoint[hour]! }, vapour);
  const left = tryAt(terms, settled.temperature, settled.opening, vapour) + settled.heater;
  // with the vapour flows held, the balance is linear: what the trials left over is closed here
  const temperature = settled.temperature +
    left / balanceSlope(terms, settled.opening, settled.temperature);
  const closed = { ...settled, temperature };
  return {
    state: {
      airTemperature: temperature,
      humidityRatio: vapour.humidityRatio,
      massTemperature: massAfter(terms, temperature),
      ventOpening: settled.opening,
    },
    flows: gatherFlows(terms, closed, vapour),
    floorDriving: floorDriving(terms, temperature, vapour),
  };
}
