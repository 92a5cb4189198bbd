/** Hourly series of a store year. @module */
import { HOUR, HOURS_PER_YEAR } from "../../basics/mod.ts";
import { emptyHouseYear, recordStep } from "../../house/mod.ts";
import type { HouseModel } from "../../house/types.ts";
import type { StoreYear } from "../types.ts";
import type { StepListener } from "../step_report.ts";

/** Series of zeros; no air drawn in any hour. */
export function emptyStoreYear(): StoreYear {
  const series = () => new Float64Array(HOURS_PER_YEAR);
  const none = () => series().fill(NaN);
  return {
    house: emptyHouseYear(),
    sensible: series(),
    latent: series(),
    intakeTemperature: none(),
    outletTemperature: none(),
    airRate: series(),
    sensibleIn: series(),
    latentIn: series(),
    sensibleOut: series(),
    latentOut: series(),
    storeTemperature: series(),
    fanShare: series(),
    fanPower: series(),
    condensate: series(),
    floor: series(),
  };
}

/** A listener that fills a store year; means over each hour, those of the air by what flowed. */
export function yearRecorder(year: StoreYear, house: HouseModel): StepListener {
  const flowed = new Float64Array(HOURS_PER_YEAR);
  const drawn = (series: Float64Array, hour: number, value: number, share: number) => {
    const before = flowed[hour]!;
    series[hour] = before === 0
      ? value
      : (series[hour]! * before + value * share) / (before + share);
  };
  return (report) => {
    const { hour } = report;
    const share = report.seconds / HOUR;
    recordStep(year.house, house, hour, report.house, share);
    year.sensible[hour]! += share * report.sensible;
    year.latent[hour]! += share * report.latent;
    if (report.mode !== 0) {
      const [sensible, latent] = report.mode > 0
        ? [year.sensibleIn, year.latentIn]
        : [year.sensibleOut, year.latentOut];
      sensible[hour]! += share * report.mode * report.sensible;
      latent[hour]! += share * report.mode * report.latent;
      const carried = share * report.air!.heatRate;
      drawn(year.intakeTemperature, hour, report.intake, carried);
      drawn(year.outletTemperature, hour, report.outlet, carried);
      flowed[hour]! += carried;
      year.airRate[hour]! += carried;
    }
    year.storeTemperature[hour]! += share * report.store;
    year.fanShare[hour]! += share * report.mode;
    year.fanPower[hour]! += share * report.fanPower;
    year.condensate[hour]! -= report.vapour * report.seconds;
    year.floor[hour]! += share * report.floor;
  };
}
