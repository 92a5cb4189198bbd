/** Tubes and house over a step that is tried: nothing is booked and nothing moves. @module */
import type { HouseStep } from "../../house/types.ts";
import { marchAir } from "../air/air_march.ts";
import { type MarchInput } from "../air/march_buffers.ts";
import type { FlowAir } from "../air/flow_air.ts";
import type { FanMode } from "../control.ts";
import type { IntakeSight } from "./sight.ts";
import type { YearWork } from "./year_work.ts";

/** What the tubes would give with the house's air as a step begins. */
export interface TubeTrial {
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
    temperature: drawn + air.fanPower / air.heatRate,
    ratio: state.house.humidityRatio,
    reversed: mode === -1 && inputs.reverse,
    water: state.water,
    seconds,
  };
  marchAir(march, result, work.slopes);
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
    storeReference: state.house.airTemperature,
    storeVapour: (trial?.vapour ?? 0) + state.vapourOwed / seconds,
    tubes: trial === null ? undefined : {
      ratio: trial.march.ratio,
      heatByRatio: copies * slopes.heatByRatio,
      vapourByTemperature: copies * slopes.vapourByTemperature,
      vapourByRatio: copies * slopes.vapourByRatio,
    },
  });
}

/** A step tried: nothing of it is booked, nothing moved. */
export interface Attempt {
  readonly step: number;
  readonly mode: FanMode;
  readonly seen: IntakeSight;
  readonly trial: TubeTrial | null;
  readonly moved: HouseStep;
}

/** Tubes and house over a step of a length, from where they stand. */
export function tryStep(
  work: YearWork,
  given: { readonly seen: IntakeSight; readonly mode: FanMode; readonly hour: number },
  step: number,
): Attempt {
  const { setting, state: { engine } } = work;
  const { seen, mode, hour } = given;
  engine.predict(step, work.outdoor, work.deep, mode !== 0);
  const pressure = setting.climate.pressure[hour]!;
  const trial = mode === 0 ? null : tryTubes(work, seen, step, mode, pressure);
  return { step, mode, seen, trial, moved: moveHouse(work, trial, hour, step) };
}
