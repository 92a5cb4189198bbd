/** The fan chapter run again with one thing changed. @module */
import { DRY_AIR_HEAT_CAPACITY, standardPressure } from "../../air/mod.ts";
import { InputError } from "../../basics/mod.ts";
import { fanChapter, fanEnergy, type FanInputs, type FanResult, FANS } from "../../fan/mod.ts";
import { headersChapter, type HeadersResult } from "../../headers/mod.ts";
import type { HouseResult } from "../../house/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../../study/mod.ts";
import { tubesChapter, type TubesResult } from "../../tubes/mod.ts";

/** Upstream results of the fan chapter. */
export interface FanSources {
  /** result of the tubes chapter */
  readonly tubes: TubesResult;
  /** result of the headers chapter */
  readonly headers: HeadersResult;
}

/** One trial: a result, or the sentence that says why there is none. */
export interface FanTrial {
  /** what was tried */
  readonly name: string;
  /** the fan chapter; null where the fans do not meet the field */
  readonly result: FanResult | null;
  /** why there is none; empty where there is one */
  readonly reason: string;
}

function attempt(
  study: Study,
  sources: FanSources,
  given: { readonly name: string; readonly fan: FanInputs; readonly pressure?: number },
): FanTrial {
  const { name, fan } = given;
  try {
    const result = fanChapter(fan, {
      ...sources,
      tubesInputs: study.tubes,
      pressure: given.pressure ?? meanPressure(study),
      airTemperature: DESIGN_AIR_TEMPERATURE,
    });
    return { name, result, reason: "" };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { name, result: null, reason: error.message };
  }
}

/** One, two and three of the study's fans side by side, each with its riser. */
export function fanCounts(study: Study, sources: FanSources): FanTrial[] {
  const counts = [...new Set([1, 2, 3, study.fan.count])].sort((a, b) => a - b);
  return counts.map((count) =>
    attempt(study, sources, {
      name: count === 1 ? "one fan" : `${count} fans`,
      fan: { ...study.fan, count },
    })
  );
}

/** The study's fans at other speeds. */
export function fanSpeeds(study: Study, sources: FanSources): (FanTrial & { speed: number })[] {
  const speeds = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1];
  return speeds.map((speed) => ({
    speed,
    ...attempt(study, sources, {
      name: `${Math.round(100 * speed)} %`,
      fan: { ...study.fan, speed },
    }),
  }));
}

/** Every fan of the list and of the user's own file, as many as in the study, at rated speed. */
export function fanChoices(study: Study, sources: FanSources): FanTrial[] {
  const fans = [...study.fan.ownFans ?? [], ...FANS];
  return fans.map(({ id, name }) =>
    attempt(study, sources, { name, fan: { ...study.fan, fan: id, speed: 1 } })
  );
}

/** The same field and fans at one elevation. */
export interface ElevationTrial extends FanTrial {
  /** m over the sea */
  readonly elevation: number;
  /** W for each kelvin that the air is cooled: flow × density × heat capacity */
  readonly capacityRate: number | null;
}

/** J/(kg K) of dry air */

/** The study's field and fans at sea level, at 1000, 2000 and 3000 m, in standard air pressure. */
export function fanElevations(study: Study, house: HouseResult): ElevationTrial[] {
  return [0, 1000, 2000, 3000].map((elevation) => {
    const pressure = standardPressure(elevation);
    const state = { pressure, airTemperature: DESIGN_AIR_TEMPERATURE };
    const tubes = tubesChapter(study.tubes, { house: house.geometry, ...state });
    const headers = headersChapter(study.headers, tubes, state);
    const name = `${elevation} m`;
    const trial = attempt(study, { tubes, headers }, { name, fan: study.fan, pressure });
    const capacityRate = trial.result === null
      ? null
      : trial.result.airFlow * trial.result.density * DRY_AIR_HEAT_CAPACITY;
    return { ...trial, elevation, capacityRate };
  });
}

/** Electricity of the fans in one month, kWh. */
export interface FanMonth {
  /** 0 to 11 */
  readonly month: number;
  /** kWh while heat is put in */
  readonly charge: number;
  /** kWh while heat is fetched */
  readonly discharge: number;
  /** h of running */
  readonly hours: number;
}

/** Days of the months of a common year. */
const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** Electricity and hours of the fans by month, charge and discharge apart. */
export function fanMonths(store: StoreResult): FanMonth[] {
  const { fanShare, fanPower } = store.year;
  let hour = 0;
  return LENGTHS.map((days, month) => {
    const row = { month, charge: 0, discharge: 0, hours: 0 };
    for (const end = hour + 24 * days; hour < end; hour++) {
      const share = fanShare[hour]!;
      const energy = fanPower[hour]! / 1000;
      if (share > 0) row.charge += energy;
      else row.discharge += energy;
      row.hours += Math.abs(share);
    }
    return row;
  });
}

/** kWh a year that an idle fan and its control take at a standby power, W. */
export function standbyEnergy(store: StoreResult, standby: number): number {
  return fanEnergy(0, store.year.fanShare, standby);
}
