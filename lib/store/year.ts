/** One year of house, tubes and soil together, hour by hour. @module */
import { relativeHumidityFromRatio } from "../air/mod.ts";
import { DAY, HOUR, HOURS_PER_YEAR } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HouseBoundary, HouseModel, HouseState, HouseStep } from "../house/types.ts";
import type { AnnualWave } from "../soil/types.ts";
import { undisturbedTemperature } from "../soil/mod.ts";
import { bookWater, drySlope, marchAir, type MarchInput, marchOutput } from "./air_march.ts";
import { type ControlState, decideMode, type FanMode, needsShortSteps } from "./control.ts";
import { tubeCouplings } from "./coupling.ts";
import type { SoilEngine } from "./engine.ts";
import { emptyLedger, quarterOf, type SoilLedger } from "./ledger.ts";
import type { StoreSite } from "./site.ts";
import type { StoreInputs } from "./types.ts";

/**
 * s: step lengths an engine of a year is built for: short while the fan runs or may start, and a
 * whole hour while it rests. A finer first step is allowed; it must divide the hour.
 */
export const YEAR_STEPS: readonly number[] = [HOUR / 4, HOUR];

/** One step of the house; the house chapter's or a stand-in. */
export type HouseStepper = (
  model: HouseModel,
  state: HouseState,
  hour: number,
  stepSeconds: number,
  boundary: HouseBoundary,
) => HouseStep;

/** What does not change during the years. */
export interface YearSetting {
  readonly site: StoreSite;
  readonly inputs: StoreInputs;
  readonly climate: ClimateYear;
  readonly wave: AnnualWave;
  readonly house: HouseModel;
  readonly stepHouse: HouseStepper;
  /** false: the fan never runs */
  readonly fan: boolean;
  /** a year's fan modes by short step, recorded before, that replace the control */
  readonly schedule?: Int8Array | undefined;
  /** first hour and number of hours; the whole year unless given */
  readonly from?: number | undefined;
  readonly hours?: number | undefined;
}

/** What moves on from year to year. */
export interface YearState {
  readonly engine: SoilEngine;
  house: HouseState;
  readonly control: ControlState;
  /** kg on the wall of each segment */
  readonly water: Float64Array;
  /** J the house still owes to the tubes (or the other way) from the last step's wet walls */
  owed: number;
  /** kg/s of vapour the house gained by itself in the last step */
  vapourGain: number;
}

/** Everything about one finished step, for those who record. Buffers are reused. */
export interface StepReport {
  readonly hour: number;
  readonly step: number;
  readonly seconds: number;
  readonly mode: FanMode;
  /** the air went through the tubes from the far end */
  readonly reversed: boolean;
  readonly house: HouseStep;
  readonly humidity: number;
  readonly intake: number;
  readonly outlet: number;
  /** W into the tube walls, all tubes */
  readonly sensible: number;
  readonly latent: number;
  /** kg/s, into the air */
  readonly vapour: number;
  /** degC between the tubes */
  readonly store: number;
  /** W into the floor */
  readonly floor: number;
  /** W/m of tube by slice and tube; zero where the fan rests */
  readonly heat: Float64Array;
  readonly latentHeat: Float64Array;
  /** W/(m K), see MarchOutput */
  readonly latentSlope: Float64Array;
}

/** Called after each step; returns nothing. */
export type StepListener = (report: StepReport) => void;

/** State at the start: soil as loaded in the engine, everything else at rest. */
export function startState(site: StoreSite, engine: SoilEngine, house: HouseState): YearState {
  return {
    engine,
    house: { ...house },
    control: { mode: 0, lasted: Infinity },
    water: new Float64Array(site.slices * site.field.tubes),
    owed: 0,
    vapourGain: 0,
  };
}

/** Temperature between the tubes, mean over the slices that have tubes. */
export function storeTemperature(site: StoreSite, engine: SoilEngine): number {
  let sum = 0;
  for (let lane = 0; lane < site.slices; lane++) sum += engine.storeTemperature[lane]!;
  return sum / site.slices;
}

/**
 * Runs one year and returns the soil's ledger.
 *
 * Each step: the soil is predicted without tube heat; the air is marched once to learn what the
 * tubes would give at the present house temperature; the house takes one implicit step with that
 * and its slope; the air is marched again with the temperature the house really took; the soil
 * takes the heat. What the wet march differs from its straight line is owed to the next step, so
 * nothing is lost.
 */
export function runYear(
  setting: YearSetting,
  state: YearState,
  listen?: StepListener,
): SoilLedger {
  const { site, inputs, climate, wave, house } = setting;
  const { engine } = state;
  const { field } = site;
  const ledger = emptyLedger(site, engine);
  const lanes = engine.lanes;
  const partsPerHour = Math.round(HOUR / engine.steps[0]!);
  const tubes = field.tubes;
  const outdoor = new Float64Array(lanes);
  const deep = new Float64Array(lanes);
  const driving = new Float64Array(lanes);
  const laneHeat = new Float64Array(lanes * tubes);
  const result = marchOutput(field);
  const copies = field.copies;
  const couplings = tubeCouplings(engine, field, site.tubeLengthFactor);
  const slopes = couplings.map((coupling) => copies * drySlope(field, coupling));
  const fanRise = site.fanPower / site.heatRate;
  const meshDepth = site.mesh.heights.reduce((sum, height) => sum + height, 0);
  const vapourRate = 0.9 * site.airRate;

  /** W of sun taken up inside the house. */
  const insideSun = (hour: number) =>
    house.solarFloor[hour]! + house.solarCrop[hour]! + house.solarMass[hour]! +
    house.solarAir[hour]!;
  const sight = (hour: number) => {
    const sun = Math.min(1.25, climate.globalHorizontal[hour]! / 800);
    const air = state.house.airTemperature;
    return {
      intake: air + inputs.stratification * sun + site.collectorRise * insideSun(hour),
      store: storeTemperature(site, engine),
      air,
      humidity: relativeHumidityFromRatio(air, state.house.humidityRatio, house.pressure),
      vents: state.house.ventOpening,
    };
  };

  const oneStep = (hour: number, step: number, part: number): void => {
    const seconds = engine.steps[step]!;
    const seen = sight(hour);
    let mode: FanMode = 0;
    if (setting.fan) {
      mode = setting.schedule === undefined
        ? decideMode(inputs, state.control, seen, seconds)
        : setting.schedule[partsPerHour * hour + part] as FanMode;
    }
    engine.predict(step, outdoor, deep, mode !== 0);
    let floorConductance = 0;
    let floorPull = 0;
    for (let lane = 0; lane < lanes; lane++) {
      floorConductance += engine.floorConductance[step]! * site.lengths[lane]!;
      floorPull += engine.floorPull[lane]! * site.lengths[lane]!;
    }
    const rise = (mode === 1 ? seen.intake - seen.air : 0) + fanRise;
    const start = state.house;
    let heatToHouse = 0;
    let vapour = 0;
    let march: MarchInput | null = null;
    if (mode !== 0) {
      march = {
        field,
        saturation: site.saturation,
        block: engine.blockTemperature,
        coupling: couplings[step]!,
        temperature: seen.air + rise,
        ratio: start.humidityRatio,
        reversed: mode === -1 && inputs.reverse,
        water: state.water,
        seconds,
      };
      marchAir(march, result);
      const share = seconds / house.dryAirMass;
      const ratio = start.humidityRatio + (state.vapourGain + copies * result.vapour) * share /
          (1 + share * vapourRate);
      march = { ...march, ratio: Math.max(1e-5, ratio) };
      marchAir(march, result);
      vapour = copies * result.vapour;
      // the air gives up what lies between ridge and mean, and the fan's heat goes with it
      heatToHouse = copies * result.toAir + site.fanPower;
    }
    const slope = mode === 0 ? 0 : slopes[step]!;
    const moved = setting.stepHouse(house, start, hour, seconds, {
      floorConductance,
      floorTemperature: floorPull / floorConductance,
      storeHeat: heatToHouse + state.owed / seconds,
      storeSlope: slope,
      storeReference: seen.air,
      storeVapour: vapour,
    });
    state.house = moved.state;
    let outlet = seen.intake;
    let sensible = 0;
    let latent = 0;
    if (march !== null) {
      const warmer = moved.state.airTemperature - seen.air;
      marchAir({ ...march, temperature: march.temperature + warmer }, result);
      const given = copies * result.toAir + site.fanPower;
      state.owed = (given - heatToHouse - slope * warmer) * seconds;
      ledger.drained += copies * bookWater(march, result);
      outlet = result.outletTemperature;
      sensible = -copies * result.toAir;
      latent = copies * result.latent;
      state.vapourGain = (moved.state.humidityRatio - start.humidityRatio) * house.dryAirMass /
          seconds - vapour;
      for (let k = 0; k < result.heat.length; k++) {
        laneHeat[k] = result.heat[k]! * site.tubeLengthFactor;
      }
    } else {
      laneHeat.fill(0);
      result.heat.fill(0);
      result.latentHeat.fill(0);
      state.owed = 0;
      state.vapourGain = 0;
    }
    driving.fill(moved.floorDriving);
    engine.finish(step, laneHeat, driving, mode !== 0);
    let floor = 0;
    let out = 0;
    let below = 0;
    for (let lane = 0; lane < lanes; lane++) {
      floor += engine.floorHeat[lane]! * site.lengths[lane]!;
      out += engine.outdoorHeat[lane]! * site.lengths[lane]!;
      below += engine.deepHeat[lane]! * site.lengths[lane]!;
    }
    const into = (sensible + latent) * seconds;
    if (mode === 1) {
      ledger.heatIn += into;
      ledger.latentIn += latent * seconds;
      ledger.inByQuarter[quarterOf(hour)]! += into;
    } else if (mode === -1) {
      ledger.heatOut -= into;
      ledger.latentOut -= latent * seconds;
      ledger.outByQuarter[quarterOf(hour)]! -= into;
    }
    ledger.floor += floor * seconds;
    ledger.outdoor += out * seconds;
    ledger.deep += below * seconds;
    ledger.throughput += (Math.abs(sensible + latent) + Math.abs(floor) + Math.abs(out) +
      Math.abs(below)) * seconds;
    ledger.fanSeconds += mode === 0 ? 0 : seconds;
    ledger.heater += moved.flows.heater * seconds;
    ledger.evaporated += moved.flows.evaporated * seconds;
    ledger.condensed -= Math.min(0, vapour) * seconds;
    listen?.({
      hour,
      step,
      seconds,
      mode,
      reversed: mode === -1 && inputs.reverse,
      house: moved,
      humidity: seen.humidity,
      intake: seen.intake,
      outlet,
      sensible,
      latent,
      vapour,
      store: seen.store,
      floor,
      heat: result.heat,
      latentHeat: result.latentHeat,
      latentSlope: result.latentSlope,
    });
  };

  const from = setting.from ?? 0;
  const hours = setting.hours ?? HOURS_PER_YEAR;
  for (let count = 0; count < hours; count++) {
    const hour = (from + count) % HOURS_PER_YEAR;
    const day = (hour + 0.5) * HOUR / DAY;
    outdoor.fill(undisturbedTemperature(wave, 0, day));
    deep.fill(undisturbedTemperature(wave, meshDepth, day));
    const short = setting.fan &&
      (setting.schedule !== undefined || needsShortSteps(inputs, state.control, sight(hour)));
    if (short) { for (let part = 0; part < partsPerHour; part++) oneStep(hour, 0, part); }
    else oneStep(hour, 1, 0);
  }
  const content = engine.content();
  for (let lane = 0; lane < lanes; lane++) ledger.gained += content[lane]! * site.lengths[lane]!;
  return ledger;
}
