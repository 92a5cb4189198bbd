/** One step of house, tubes and soil together. @module */
import { HOUR } from "../../basics/mod.ts";
import type { HouseStep } from "../../house/types.ts";
import { bookWater, marchAir } from "../air/air_march.ts";
import { type ControlSight, decideMode, type FanMode } from "../control.ts";
import { bookStep } from "../ledger/ledger.ts";
import { type Attempt, tryStep, type TubeTrial } from "./attempt.ts";
import { sightOf } from "./sight.ts";
import { longestStep, switchTime } from "./step_length.ts";
import type { YearWork } from "./year_work.ts";

function modeOf(work: YearWork, seen: ControlSight, hour: number, part: number) {
  const { setting, state } = work;
  if (!setting.fan) return 0;
  if (setting.schedule !== undefined) {
    return setting.schedule[work.partsPerHour * hour + part] as FanMode;
  }
  return decideMode(setting.inputs, state.control, seen, 0);
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
  const warmer = moved.mean.airTemperature - state.house.airTemperature;
  const damper = moved.mean.humidityRatio - march.ratio;
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

/**
 * One step of house, tubes and soil from a moment of an hour, no longer than to where the thermostat
 * switches, which is foreseen by trying.
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
  const short = steps[0]!;
  const most = mode === 0 ? Math.max(...steps) : short;
  if (from === 0) work.untilSwitch = 0;
  const left = work.untilSwitch > 0 ? work.untilSwitch : HOUR - from;
  const longest = (time: number, limit: number) => longestStep(steps, from, time, limit);
  let attempt = tryStep(work, given, fixed ? 0 : longest(left, most));
  if (!fixed && setting.fan && work.untilSwitch <= 0) {
    let time = switchTime(work, attempt, hour);
    if (time !== null && steps[attempt.step]! > short) {
      attempt = tryStep(work, given, longest(left, short));
      time = switchTime(work, attempt, hour);
    }
    if (time !== null) {
      work.untilSwitch = Math.ceil(time / work.finest) * work.finest;
      const sooner = longest(work.untilSwitch, short);
      if (sooner !== attempt.step) attempt = tryStep(work, given, sooner);
    }
  }
  takeStep(work, attempt, hour);
  const seconds = steps[attempt.step]!;
  work.untilSwitch -= seconds;
  return seconds;
}
