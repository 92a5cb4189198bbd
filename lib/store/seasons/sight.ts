/** What the thermostat sees of house and store. @module */
import { relativeHumidityFromRatio } from "../../air/mod.ts";
import type { HouseState } from "../../house/types.ts";
import { collectorHeat } from "../air/collector_year.ts";
import { ridgeExcess } from "../air/stratification.ts";
import type { ControlSight } from "../control.ts";
import type { StoreSite } from "../site.ts";
import type { SoilEngine } from "../solver/engine.ts";
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
export interface IntakeSight extends ControlSight {
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

/** Sight between two others: `share` of the way. */
export function sightBetween(from: IntakeSight, to: IntakeSight, share: number): IntakeSight {
  const between = (a: number, b: number) => a + share * (b - a);
  return {
    ...from,
    intake: between(from.intake, to.intake),
    collected: between(from.collected, to.collected),
    ridge: between(from.ridge, to.ridge),
    store: between(from.store, to.store),
    air: between(from.air, to.air),
    humidity: between(from.humidity, to.humidity),
    vents: between(from.vents, to.vents),
  };
}
