/** How long a sunless cold spell takes to empty the store. @module */
import { mean, sum } from "d3-array";
import { HOURS_PER_YEAR, KILOWATT_HOUR, MONTH_FIRST_HOURS } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { houseModel, initialHouseState, stepHouse, withHeater } from "../../house/mod.ts";
import { freshEngine, type SoilModel } from "./soil_model.ts";
import type { StoreRequest } from "../site.ts";
import type { EmptyingSpell } from "../types.ts";
import { runYear, startState, type YearSetting } from "./year.ts";

const DAYS = 60;
const FIRST_HOURS = 6;
const FIRST_DAYS = 3;

/** The year with every hour as cold as the coldest three days and without sun. */
function sunless(climate: ClimateYear): { climate: ClimateYear; outside: number } {
  let outside = Infinity;
  for (let start = 0; start + 72 <= HOURS_PER_YEAR; start += 24) {
    let sum = 0;
    for (let hour = start; hour < start + 72; hour++) sum += climate.dryBulb[hour]! / 72;
    outside = Math.min(outside, sum);
  }
  const dark = () => new Float64Array(HOURS_PER_YEAR);
  return {
    outside,
    climate: {
      ...climate,
      dryBulb: dark().fill(outside),
      globalHorizontal: dark(),
      directNormal: dark(),
      diffuseHorizontal: dark(),
      skyLongwave: null,
    },
  };
}

/** Hour of 1 December, from which the spell starts. */
export const SPELL_START: number = MONTH_FIRST_HOURS[11]!;

/**
 * Runs a spell without sun, as cold outside as the coldest three days of the year, from the
 * store's state on 1 December of the year that repeats. A heater without limit holds the house at
 * its set point, so that what the store gives is what the heater need not.
 *
 * @param request study
 * @param model soil
 * @param soilState saved states of the reduced soil
 */
export function emptyingSpell(
  request: StoreRequest,
  model: SoilModel,
  soilState: Float64Array,
): EmptyingSpell {
  const { climate, outside } = sunless(request.climate);
  const house = withHeater(houseModel(request.houseInputs, climate), Infinity);
  const hours = DAYS * 24;
  const given = new Float64Array(hours);
  const setting: Omit<YearSetting, "fan"> = {
    site: model.site,
    inputs: request.inputs,
    climate,
    wave: request.soil.wave,
    house,
    stepHouse,
    from: SPELL_START,
  };
  const spell = (fan: boolean, length: number) => {
    const engine = freshEngine(model);
    engine.load(soilState);
    const state = startState(model.site, engine, {
      ...initialHouseState(house),
      airTemperature: request.houseInputs.heatSetPoint,
    });
    let heater = 0;
    runYear({ ...setting, fan, hours: length }, state, (report) => {
      const count = (report.hour - SPELL_START + HOURS_PER_YEAR) % HOURS_PER_YEAR;
      const energy = report.seconds / KILOWATT_HOUR;
      if (count < FIRST_DAYS * 24) heater += report.house.flows.heater * energy;
      if (fan) given[count]! -= (report.sensible + report.latent) * energy;
    });
    return heater;
  };
  const backupHeat = spell(true, hours);
  const backupHeatNoFan = spell(false, FIRST_DAYS * 24);
  const first = mean(given.subarray(0, FIRST_HOURS))!;
  const below = (share: number): number | null => {
    if (first <= 0) return 0;
    for (let hour = FIRST_HOURS; hour + 24 <= hours; hour++) {
      if (mean(given.subarray(hour, hour + 24))! < share * first) return hour;
    }
    return null;
  };
  const hoursToTenth = below(0.1);
  return {
    outside,
    hoursToHalf: below(0.5),
    hoursToTenth,
    heatOut: sum(given.subarray(0, hoursToTenth ?? hours)),
    backupHeat,
    backupHeatNoFan,
  };
}
