/** One step of house, tubes and soil together. @module */
import { relativeHumidityFromRatio } from "../../air/mod.ts";
import { HOUR } from "../../basics/mod.ts";
import type { HouseState, HouseStep } from "../../house/types.ts";
import { bookWater, marchAir, type MarchInput, type MarchSlopes } from "../air/air_march.ts";
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
function ridgeOver(work: YearWork, hour: number, now: HouseState): number {
  const { inputs, climate } = work.setting;
  if (inputs.stratification !== undefined) {
    const sun = Math.min(MOST_SUN, climate.globalHorizontal[hour]! / FULL_SUN);
    return inputs.stratification * sun;
  }
  return ridgeExcess(work.house, now, hour, work.chargeRate, inputs.mixingFlow);
}

/** What the thermostat sees of a house in an hour, the store as it is. */
export function sightOf(
  work: YearWork,
  hour: number,
  now: HouseState = work.state.house,
): IntakeSight {
  const { setting, state, collector } = work;
  const { site, house } = setting;
  const air = now.airTemperature;
  const ridge = air + ridgeOver(work, hour, now);
  const collected = collector === null ? 0 : collectorHeat(collector, hour, ridge);
  return {
    allowed: work.allowed[hour]!,
    intake: ridge + collected / work.chargeRate,
    collected,
    ridge,
    store: storeTemperature(site, state.engine),
    air,
    humidity: relativeHumidityFromRatio(air, now.humidityRatio, house.pressure),
    vents: now.ventOpening,
  };
}

function modeOf(work: YearWork, seen: ControlSight, hour: number, part: number) {
  const { setting, state } = work;
  if (!setting.fan) return 0;
  if (setting.schedule !== undefined) {
    return setting.schedule[work.partsPerHour * hour + part] as FanMode;
  }
  return decideMode(setting.inputs, state.control, seen, 0);
}

/** Air of the house about which a trial is taken. */
interface About {
  /** degC */
  readonly temperature: number;
  /** kg/kg */
  readonly ratio: number;
}

/** What the tubes would give with the house's air about a state. */
interface TubeTrial {
  readonly about: About;
  readonly march: MarchInput;
  readonly air: FlowAir;
  /** W to the house, fan included, and kg/s of vapour */
  readonly heat: number;
  readonly vapour: number;
  /** W of the plate collector, and what of it is new to the house */
  readonly collected: number;
  readonly brought: number;
}

/** Marches the air as the house has it now, and with it what a change of it would do. */
function tryTubes(
  work: YearWork,
  seen: IntakeSight,
  step: number,
  mode: FanMode,
  pressure: number,
  about: About,
): TubeTrial {
  const { setting, state, result } = work;
  const { site, inputs } = setting;
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
  const march: MarchInput = {
    field: air.field,
    saturation: site.saturation,
    block: state.engine.blockTemperature,
    coupling: air.coupling(step),
    temperature: drawn + air.fanPower / air.heatRate + about.temperature - seen.air,
    ratio: about.ratio,
    reversed: mode === -1 && inputs.reverse,
    water: state.water,
    seconds,
  };
  marchAir(march, result, work.slopes);
  const brought = work.collector?.outdoors === true ? collected : 0;
  // the air gives up what lies between ridge and mean, and the fan's heat goes with it
  return {
    about,
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
  hour: number,
  step: number,
): HouseStep {
  const { setting, state, slopes } = work;
  const { engine } = state;
  const { lengths, field: { copies } } = setting.site;
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
    storeSlope: trial === null ? 0 : copies * slopes.heatByTemperature,
    storeReference: trial?.about.temperature ?? 0,
    storeVapour: (trial?.vapour ?? 0) + state.vapourOwed / seconds,
    tubes: trial === null ? undefined : {
      ratio: trial.about.ratio,
      heatByRatio: copies * slopes.heatByRatio,
      vapourByTemperature: copies * slopes.vapourByTemperature,
      vapourByRatio: copies * slopes.vapourByRatio,
    },
  });
}

/**
 * The tubes with the air the house had over the step; what differs from the straight line of the
 * trial is owed. Returns degC drawn.
 */
function settleTubes(
  work: YearWork,
  trial: TubeTrial,
  moved: HouseStep,
): number {
  const { setting: { site }, state, result, slopes, ledger } = work;
  const { copies } = site.field;
  const { march, air } = trial;
  const warmer = moved.mean.airTemperature - trial.about.temperature;
  const damper = moved.mean.humidityRatio - trial.about.ratio;
  const temperature = march.temperature + warmer;
  marchAir({ ...march, temperature, ratio: moved.mean.humidityRatio }, result);
  const given = copies * result.toAir + air.fanPower + trial.brought;
  const heat = slopes.heatByTemperature * warmer + slopes.heatByRatio * damper;
  const vapour = slopes.vapourByTemperature * warmer + slopes.vapourByRatio * damper;
  state.owed = (given - trial.heat - copies * heat) * march.seconds;
  state.vapourOwed = (copies * (result.vapour - vapour) - trial.vapour) * march.seconds;
  ledger.drained += copies * bookWater(march, result);
  for (let k = 0; k < result.heat.length; k++) {
    work.laneHeat[k] = result.heat[k]! * site.tubeLengthFactor;
  }
  return temperature - air.fanPower / air.heatRate;
}

/** No air in the tubes: nothing given, nothing owed. */
function restTubes(work: YearWork): void {
  work.laneHeat.fill(0);
  work.result.heat.fill(0);
  work.result.latentHeat.fill(0);
  work.state.owed = 0;
  work.state.vapourOwed = 0;
}

/** Heat of one kind over all lanes, W. */
function overLanes(heat: Float64Array, lengths: Float64Array): number {
  let sum = 0;
  for (let lane = 0; lane < heat.length; lane++) sum += heat[lane]! * lengths[lane]!;
  return sum;
}

/** A step tried: nothing of it is booked, nothing moved. */
interface Attempt {
  readonly step: number;
  readonly mode: FanMode;
  readonly seen: IntakeSight;
  readonly trial: TubeTrial | null;
  readonly moved: HouseStep;
}

/** Tubes and house over a step of a length, from where they stand. */
function tryStep(
  work: YearWork,
  given: { readonly seen: IntakeSight; readonly mode: FanMode; readonly hour: number },
  step: number,
): Attempt {
  const { setting, state } = work;
  const { engine } = state;
  const { seen, mode, hour } = given;
  engine.predict(step, work.outdoor, work.deep, mode !== 0);
  const pressure = setting.climate.pressure[hour]!;
  if (mode === 0) {
    return { step, mode, seen, trial: null, moved: moveHouse(work, null, hour, step) };
  }
  const { house } = state;
  const about = { temperature: house.airTemperature, ratio: house.humidityRatio };
  let trial = tryTubes(work, seen, step, mode, pressure, about);
  let moved = moveHouse(work, trial, hour, step);
  for (let k = 1; k < TRIALS; k++) {
    const { mean } = moved;
    trial = tryTubes(work, seen, step, mode, pressure, { temperature: mean.airTemperature, ratio: mean.humidityRatio });
    moved = moveHouse(work, trial, hour, step);
  }
  return { step, mode, seen, trial, moved };
}

/** Ends a step: tubes, soil, books. */
function takeStep(work: YearWork, attempt: Attempt, hour: number): void {
  const { setting, state, result } = work;
  const { site } = setting;
  const { engine } = state;
  const { copies } = site.field;
  const { step, mode, seen, trial, moved } = attempt;
  const seconds = engine.steps[step]!;
  if (trial === null) restTubes(work);
  const drawn = trial === null ? NaN : settleTubes(work, trial, moved);
  state.house = moved.state;
  state.control.lasted += seconds;
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

/** Sight between two others: `share` of the way. */
function sightBetween(from: IntakeSight, to: IntakeSight, share: number): IntakeSight {
  const between = (a: number, b: number) => a + share * (b - a);
  return {
    intake: between(from.intake, to.intake),
    collected: between(from.collected, to.collected),
    ridge: between(from.ridge, to.ridge),
    store: between(from.store, to.store),
    air: between(from.air, to.air),
    humidity: between(from.humidity, to.humidity),
    vents: between(from.vents, to.vents),
  };
}

/** Halvings of a step in search of the moment at which the fan switches. */
const HALVINGS = 5;

/** s from the start of a step at which the thermostat would switch; null where it would not. */
function switchTime(work: YearWork, attempt: Attempt, hour: number): number | null {
  const { setting: { inputs }, state } = work;
  const { seen, mode, step } = attempt;
  const seconds = state.engine.steps[step]!;
  const end = sightOf(work, hour, attempt.moved.state);
  const switches = (share: number) => {
    const control = { mode, lasted: state.control.lasted + share * seconds };
    return decideMode(inputs, control, sightBetween(seen, end, share), 0) !== mode;
  };
  if (!switches(1)) return null;
  let [low, high] = [0, 1];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (switches(middle)) high = middle;
    else low = middle;
  }
  return high * seconds;
}

/** Places of the step lengths of an engine, and those allowed in each case. */
const [SHORT, LONG, FINE] = [0, 1, 2];
const SHORT_ONLY = [SHORT];
const RUNNING = [SHORT, FINE];
const ANY = [LONG, SHORT, FINE];

/** Index of the longest of some steps that fits in a time. */
function longestIn(lengths: readonly number[], steps: readonly number[], time: number): number {
  let best = -1;
  for (const step of steps) {
    const length = lengths[step] ?? Infinity;
    if (length <= time && (best < 0 || length > lengths[best]!)) best = step;
  }
  return best;
}

/**
 * One step of house, tubes and soil from a moment of an hour: long while the fan rests, short while
 * it runs, and fine up to where the thermostat switches, which is foreseen by trying.
 *
 * @param work the year
 * @param hour of the year
 * @param from s since the hour began
 * @returns s of the step
 */
export function stepStore(work: YearWork, hour: number, from: number): number {
  const { setting, state: { engine } } = work;
  const { steps } = engine;
  const seen = sightOf(work, hour);
  const mode = modeOf(work, seen, hour, Math.floor(from / steps[0]!));
  const given = { seen, mode, hour };
  const fixed = setting.shortSteps === true || setting.schedule !== undefined;
  const allowed = fixed ? SHORT_ONLY : mode === 0 ? ANY : RUNNING;
  if (from === 0) work.untilSwitch = 0;
  const left = work.untilSwitch > 0 ? work.untilSwitch : HOUR - from;
  let attempt = tryStep(work, given, longestIn(steps, allowed, left));
  if (!fixed && setting.fan && work.untilSwitch <= 0) {
    let time = switchTime(work, attempt, hour);
    if (time !== null && attempt.step === LONG) {
      attempt = tryStep(work, given, longestIn(steps, RUNNING, left));
      time = switchTime(work, attempt, hour);
    }
    if (time !== null) {
      const fine = steps[FINE] ?? steps[SHORT]!;
      work.untilSwitch = Math.ceil(time / fine) * fine;
      const sooner = longestIn(steps, RUNNING, work.untilSwitch);
      if (sooner !== attempt.step) attempt = tryStep(work, given, sooner);
    }
  }
  takeStep(work, attempt, hour);
  const seconds = steps[attempt.step]!;
  work.untilSwitch -= seconds;
  return seconds;
}
