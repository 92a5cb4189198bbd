/** Hourly series of a house's year. @module */
import { vapourPressure } from "../air/mod.ts";
import { HOURS_PER_YEAR } from "../basics/mod.ts";
import { quickSaturationOverWater } from "./air/saturation_table.ts";
import type { HouseModel, HouseStep, HouseYear } from "./types.ts";

/** Series of zeros, to be filled by {@link recordStep}. */
export function emptyHouseYear(hours: number = HOURS_PER_YEAR): HouseYear {
  const series = () => new Float64Array(hours);
  return {
    airTemperature: series(),
    relativeHumidity: series(),
    heater: series(),
    solar: series(),
    vent: series(),
    ventOpening: series(),
    massTemperature: series(),
    masonryTemperature: series(),
    floor: series(),
    glazing: series(),
    opaque: series(),
    leakage: series(),
    evaporation: series(),
    condensed: series(),
    evaporated: series(),
  };
}

/** Ratio by which closing the heat balance, 1e-4 K at most, may put saturated air above saturation. */
const CLOSING = 1e-5;

/** A relative humidity; saturated air that the closing of the balance cooled is saturated. */
function saturatedAt(humidity: number): number {
  return humidity > 1 && humidity < 1 + CLOSING ? 1 : humidity;
}

/**
 * Adds one step to the means of its hour.
 *
 * @param year series to add to, 0 in that hour before its first step
 * @param model the house
 * @param hour index
 * @param step outcome
 * @param share length of the step over an hour
 */
export function recordStep(
  year: HouseYear,
  model: HouseModel,
  hour: number,
  step: HouseStep,
  share: number,
): void {
  const { mean: state, flows } = step;
  const humidity = saturatedAt(
    vapourPressure(state.humidityRatio, model.pressure) /
      quickSaturationOverWater(state.airTemperature),
  );
  year.airTemperature[hour]! += share * state.airTemperature;
  year.relativeHumidity[hour]! += share * humidity;
  year.heater[hour]! += share * flows.heater;
  year.solar[hour]! += share * flows.solar;
  year.vent[hour]! += share * flows.vent;
  year.ventOpening[hour]! += share * state.ventOpening;
  year.massTemperature[hour]! += share * state.massTemperature;
  year.masonryTemperature[hour]! += share * state.masonryTemperature;
  year.floor[hour]! += share * flows.floor;
  year.glazing[hour]! += share * flows.glazing;
  year.opaque[hour]! += share * flows.opaque;
  year.leakage[hour]! += share * flows.leakage;
  year.evaporation[hour]! += share * flows.evaporation;
  year.condensed[hour]! += share * flows.condensed;
  year.evaporated[hour]! += share * flows.evaporated;
}
