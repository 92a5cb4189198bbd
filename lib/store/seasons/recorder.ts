/** Hourly series of a store year. @module */
import { HOUR, HOURS_PER_YEAR } from "../../basics/mod.ts";
import { emptyHouseYear, recordStep } from "../../house/mod.ts";
import type { HouseModel } from "../../house/types.ts";
import type { StoreYear } from "../types.ts";
import type { StepListener } from "../step_report.ts";

/** Series of zeros. */
export function emptyStoreYear(): StoreYear {
  const series = () => new Float64Array(HOURS_PER_YEAR);
  return {
    house: emptyHouseYear(),
    sensible: series(),
    latent: series(),
    intakeTemperature: series(),
    outletTemperature: series(),
    storeTemperature: series(),
    fanShare: series(),
    fanPower: series(),
    condensate: series(),
    floor: series(),
  };
}

/** A listener that fills a store year; means over each hour. */
export function yearRecorder(
  year: StoreYear,
  house: HouseModel,
  fanPower: number,
): StepListener {
  return (report) => {
    const { hour } = report;
    const share = report.seconds / HOUR;
    recordStep(year.house, house, hour, report.house, share);
    year.sensible[hour]! += share * report.sensible;
    year.latent[hour]! += share * report.latent;
    year.intakeTemperature[hour]! += share * report.intake;
    year.outletTemperature[hour]! += share * report.outlet;
    year.storeTemperature[hour]! += share * report.store;
    year.fanShare[hour]! += share * report.mode;
    year.fanPower[hour]! += report.mode === 0 ? 0 : share * fanPower;
    year.condensate[hour]! -= report.vapour * report.seconds;
    year.floor[hour]! += share * report.floor;
  };
}
