/** One step of house, tubes and soil together. @module */
import { relativeHumidityFromRatio } from "../../air/mod.ts";
import type { HouseStep } from "../../house/types.ts";
import { bookWater, marchAir, type MarchInput } from "../air/air_march.ts";
import { collectorHeat } from "../air/collector_year.ts";
import { type ControlSight, decideMode, type FanMode } from "../control.ts";
import { ridgeExcess } from "../air/stratification.ts";
import { type FlowAir } from "../air/flow_air.ts";
import type { SoilEngine } from "../solver/engine.ts";
import { bookStep } from "../ledger/ledger.ts";
import type { StoreSite } from "../site.ts";
import type { YearWork } from "./year_work.ts";

/** W/m² of sun at which the stratification of the study holds, and the most it may exceed it. */
const FULL_SUN = 800;
const MOST_SUN = 1.25;
/** Share of the tubes' air that comes to equilibrium with the walls' moisture: damps the vapour step. */
const MOIST_SHARE = 0.9;
/** kg/kg */
const DRIEST = 1e-5;

/** Temperature between the tubes, mean over the slices that have tubes. */
export function storeTemperature(site: StoreSite, engine: SoilEngine): number {
  let sum = 0;
  for (let lane = 0; lane < site.slices; lane++) sum += engine.storeTemperature[lane]!;
  return sum / site.slices;
}

/** What the thermostat sees, and W that the plate collector would give the intake. */
interface IntakeSight extends ControlSight {
  readonly collected: number;
  /** degC at the ridge, where the intake draws */
  readonly ridge: number;
}

/** K by which the air at the ridge is warmer than the house's mean: as given, or estimated. */
function ridgeOver(work: YearWork, hour: number): number {
  const { inputs, climate } = work.setting;
  if (inputs.stratification !== undefined) {
    const sun = Math.min(MOST_SUN, climate.globalHorizontal[hour]! / FULL_SUN);
    return inputs.stratification * sun;
  }
  return ridgeExcess(work.house, work.state.house, hour, work.chargeRate, inputs.mixingFlow);
}

/** What the thermostat sees at the start of a step. */
export function sightOf(work: YearWork, hour: number): IntakeSight {
  const { setting, state, collector } = work;
  const { site, house } = setting;
  const air = state.house.airTemperature;
  const ridge = air + ridgeOver(work, hour);
  const collected = collector === null ? 0 : collectorHeat(collector, hour, ridge);
  return {
    allowed: work.allowed[hour]!,
    intake: ridge + collected / work.chargeRate,
    collected,
    ridge,
    store: storeTemperature(site, state.engine),
    air,
    humidity: relativeHumidityFromRatio(air, state.house.humidityRatio, house.pressure),
    vents: state.house.ventOpening,
  };
}

function modeOf(work: YearWork, seen: ControlSight, hour: number, part: number, seconds: number) {
  const { setting, state } = work;
  if (!setting.fan) return 0;
  if (setting.schedule !== undefined) {
    return setting.schedule[work.partsPerHour * hour + part] as FanMode;
  }
  return decideMode(setting.inputs, state.control, seen, seconds);
}

/** What the tubes would give at the house's temperature of the step's start. */
interface TubeTrial {
  readonly march: MarchInput;
  readonly air: FlowAir;
  /** W to the house, fan included, and kg/s of vapour */
  readonly heat: number;
  readonly vapour: number;
  /** W of the plate collector, and what of it is new to the house */
  readonly collected: number;
  readonly brought: number;
}

/**
 * Marches the air at the present house temperature. The humidity that enters is that of the step's
 * end as far as it can be foreseen: what house and tubes did to it is carried on, damped as an
 * implicit step would.
 */
function tryTubes(
  work: YearWork,
  seen: IntakeSight,
  step: number,
  mode: FanMode,
  pressure: number,
): TubeTrial {
  const { setting, state, result } = work;
  const { site, inputs, house } = setting;
  const { copies } = site.field;
  const seconds = state.engine.steps[step]!;
  const collected = mode === 1 ? seen.collected : 0;
  const air = work.airAt(
    mode === 1 ? seen.intake : seen.air,
    state.house.humidityRatio,
    pressure,
    mode,
  );
  const drawn = mode === 1 ? seen.ridge + collected / air.heatRate : seen.air;
  const first: MarchInput = {
    field: air.field,
    saturation: site.saturation,
    block: state.engine.blockTemperature,
    coupling: air.coupling(step),
    temperature: drawn + air.fanPower / air.heatRate,
    ratio: state.house.humidityRatio,
    reversed: mode === -1 && inputs.reverse,
    water: state.water,
    seconds,
  };
  marchAir(first, result);
  const share = seconds / house.dryAirMass;
  const ratio = state.house.humidityRatio + (state.vapourGain + copies * result.vapour) * share /
      (1 + share * MOIST_SHARE * air.airRate);
  const march = { ...first, ratio: Math.max(DRIEST, ratio) };
  marchAir(march, result);
  const brought = work.collector?.outdoors === true ? collected : 0;
  // the air gives up what lies between ridge and mean, and the fan's heat goes with it
  return {
    march,
    air,
    heat: copies * result.toAir + air.fanPower + brought,
    vapour: copies * result.vapour,
    collected,
    brought,
  };
}

/** The house's step with floor and tubes as they answer. */
function moveHouse(
  work: YearWork,
  trial: TubeTrial | null,
  seen: ControlSight,
  hour: number,
  step: number,
): HouseStep {
  const { setting, state } = work;
  const { engine } = state;
  const { lengths } = setting.site;
  const seconds = engine.steps[step]!;
  let conductance = 0;
  let pull = 0;
  for (let lane = 0; lane < engine.lanes; lane++) {
    conductance += engine.floorConductance[step]! * lengths[lane]!;
    pull += engine.floorPull[lane]! * lengths[lane]!;
  }
  return setting.stepHouse(work.house, state.house, hour, seconds, {
    floorConductance: conductance,
    floorTemperature: pull / conductance,
    storeHeat: (trial?.heat ?? 0) + state.owed / seconds,
    storeSlope: trial?.air.slope(step) ?? 0,
    storeReference: seen.air,
    storeVapour: (trial?.vapour ?? 0) + state.vapourOwed / seconds,
  });
}

/** The tubes at the temperature the house took; what differs from the trial is owed. Returns degC drawn. */
function settleTubes(
  work: YearWork,
  trial: TubeTrial,
  moved: HouseStep,
  seen: ControlSight,
  step: number,
): number {
  const { setting, state, result, ledger } = work;
  const { site, house } = setting;
  const { copies } = site.field;
  const { march, air } = trial;
  const warmer = moved.mean.airTemperature - seen.air;
  marchAir({ ...march, temperature: march.temperature + warmer }, result);
  const given = copies * result.toAir + air.fanPower + trial.brought;
  state.owed = (given - trial.heat - air.slope(step) * warmer) * march.seconds;
  state.vapourOwed = (copies * result.vapour - trial.vapour) * march.seconds;
  ledger.drained += copies * bookWater(march, result);
  state.vapourGain = (moved.state.humidityRatio - state.house.humidityRatio) * house.dryAirMass /
      march.seconds - trial.vapour;
  for (let k = 0; k < result.heat.length; k++) {
    work.laneHeat[k] = result.heat[k]! * site.tubeLengthFactor;
  }
  return march.temperature + warmer - air.fanPower / air.heatRate;
}

/** No air in the tubes: nothing given, nothing owed. */
function restTubes(work: YearWork): void {
  work.laneHeat.fill(0);
  work.result.heat.fill(0);
  work.result.latentHeat.fill(0);
  work.state.owed = 0;
  work.state.vapourOwed = 0;
  work.state.vapourGain = 0;
}

/** Heat of one kind over all lanes, W. */
function overLanes(heat: Float64Array, lengths: Float64Array): number {
  let sum = 0;
  for (let lane = 0; lane < heat.length; lane++) sum += heat[lane]! * lengths[lane]!;
  return sum;
}

/** One step: control, trial, house, tubes, soil, books. */
export function stepStore(work: YearWork, hour: number, step: number, part: number): void {
  const { setting, state, result } = work;
  const { site } = setting;
  const { engine } = state;
  const { copies } = site.field;
  const seconds = engine.steps[step]!;
  const seen = sightOf(work, hour);
  const mode = modeOf(work, seen, hour, part, seconds);
  engine.predict(step, work.outdoor, work.deep, mode !== 0);
  const trial = mode === 0 ? null : tryTubes(
    work,
    seen,
    step,
    mode,
    setting.climate.pressure[hour]!,
  );
  const moved = moveHouse(work, trial, seen, hour, step);
  if (trial === null) restTubes(work);
  const drawn = trial === null ? NaN : settleTubes(work, trial, moved, seen, step);
  state.house = moved.state;
  work.driving.fill(moved.floorDriving);
  engine.finish(step, work.laneHeat, work.driving, mode !== 0);
  const flows = {
    sensible: trial === null ? 0 : -copies * result.toAir,
    latent: trial === null ? 0 : copies * result.latent,
    floor: overLanes(engine.floorHeat, site.lengths),
    outdoor: overLanes(engine.outdoorHeat, site.lengths),
    deep: overLanes(engine.deepHeat, site.lengths),
    vapour: trial === null ? 0 : copies * result.vapour,
    collected: trial?.collected ?? 0,
    fanPower: trial?.air.fanPower ?? 0,
  };
  bookStep(work.ledger, { hour, mode, seconds, house: moved.flows, ...flows });
  work.listen?.({
    hour,
    step,
    seconds,
    mode,
    reversed: mode === -1 && setting.inputs.reverse,
    house: moved,
    humidity: seen.humidity,
    intake: drawn,
    outlet: trial === null ? NaN : result.outletTemperature,
    sensible: flows.sensible,
    latent: flows.latent,
    vapour: flows.vapour,
    store: seen.store,
    floor: flows.floor,
    collected: flows.collected,
    fanPower: flows.fanPower,
    air: trial?.air ?? null,
    heat: result.heat,
    latentHeat: result.latentHeat,
    latentSlope: result.latentSlope,
  });
}
