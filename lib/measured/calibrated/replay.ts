/** The study's store run through the weather of a log, with changes that are known. @module */
import { HOUR, type Task } from "../../basics/mod.ts";
import { houseModel, initialHouseState, withHeater } from "../../house/mod.ts";
import type { StoreRequest } from "../../store/mod.ts";
import { settledSetting, settlingOf } from "../../store/seasons/settled_year.ts";
import { freshEngine, soilModel } from "../../store/seasons/soil_model.ts";
import { periodicYear } from "../../store/seasons/spin_up.ts";
import { startState } from "../../store/seasons/year.ts";
import { type WeatherSpan, yearWith } from "../ahead/weather_span.ts";
import { builtRequest } from "../demo/known_truth.ts";
import { firstOfYear, type LoggedHouse } from "./logged_house.ts";
import type { ModelFactors } from "./types.ts";

/** What is run. */
export interface ReplayQuestion {
  /** the study's store on few slices */
  readonly plan: StoreRequest;
  /** how the model differs from it */
  readonly factors: ModelFactors;
  /** weather of the log, in place of the study's */
  readonly weather: WeatherSpan;
}

/** Means of each of 8760 hours. */
export interface Replay {
  /** degC of the house */
  readonly inside: Float64Array;
  /** degC between the tubes */
  readonly store: Float64Array;
  /** W from the air into the soil while charging */
  readonly heatIn: Float64Array;
  /** W back while discharging */
  readonly heatOut: Float64Array;
}

/** The study as it stands. */
export const AS_PLANNED: ModelFactors = { diffusivity: 1, leakage: 1, airFlow: 1, film: 1 };

/** Years with a jump before the year that counts: enough for hours to repeat to some hundredths of a kelvin. */
const JUMPS = 1;

/** Runs the year that repeats, with the logged weather in it. */
export const replayTask: Task<ReplayQuestion, Replay> = {
  name: "measured.replay",
  kept: true,
  run: ({ plan, factors, weather }) => {
    const built = builtRequest(plan, factors);
    const request = { ...built, climate: yearWith(built.climate, [weather]) };
    const house = withHeater(houseModel(request.houseInputs, request.climate), 0);
    const model = soilModel(request, house);
    const engine = freshEngine(model);
    const series = () => new Float64Array(request.climate.dryBulb.length);
    const found = { inside: series(), store: series(), heatIn: series(), heatOut: series() };
    const given = { request, model, house, fan: true };
    periodicYear({
      setting: settledSetting(given),
      state: startState(model.site, engine, initialHouseState(house)),
      engine,
      settling: settlingOf(given),
      jumps: JUMPS,
      listen: ({ hour, seconds, house: air, sensible, latent, store, mode }) => {
        const share = seconds / HOUR;
        found.inside[hour]! += share * air.mean.airTemperature;
        found.store[hour]! += share * store;
        const heat = share * (sensible + latent);
        if (mode > 0) found.heatIn[hour]! += heat;
        if (mode < 0) found.heatOut[hour]! -= heat;
      },
    });
    return found;
  },
};

/** The weather of a log, gaps filled from the study's own year. */
export interface LoggedWeather {
  /** of the last 365 days of the log at most */
  readonly span: WeatherSpan;
  /** 1 for each hour of the log in which outdoors, and the sun where it is logged, are there */
  readonly there: Uint8Array;
}

/**
 * Weather of a log for a replay.
 *
 * @param house log with outdoor temperature
 * @param climate the study's weather, for what is not logged
 */
export function loggedWeather(house: LoggedHouse, climate: StoreRequest["climate"]): LoggedWeather {
  const first = firstOfYear(house);
  const count = house.hours - first;
  const { outside, outsideHumidity, sun, wind } = house.series;
  const take = (series: Float64Array | null, own: Float64Array) =>
    Float64Array.from({ length: count }, (_, k) => {
      const logged = series?.[first + k] ?? NaN;
      const hour = house.hourOfYear[first + k]!;
      return Number.isFinite(logged) ? logged : own[Math.max(0, hour)]!;
    });
  return {
    span: {
      start: Math.max(0, house.hourOfYear[first]!),
      dryBulb: take(outside, climate.dryBulb),
      relativeHumidity: take(outsideHumidity, climate.relativeHumidity),
      globalHorizontal: take(sun, climate.globalHorizontal),
      windSpeed: take(wind, climate.windSpeed),
    },
    there: Uint8Array.from(
      { length: house.hours },
      (_, hour) =>
        hour >= first && house.hourOfYear[hour]! >= 0 && Number.isFinite(outside![hour]!) &&
          (sun === null || Number.isFinite(sun[hour]!))
          ? 1
          : 0,
    ),
  };
}
