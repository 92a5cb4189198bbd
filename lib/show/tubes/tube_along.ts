/** Air along a tube at the hour of the year that brings most. @module */
import {
  airDensity,
  humidityRatioFromRelativeHumidity,
  relativeHumidityFromRatio,
} from "../../air/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { meanPressure, type Study } from "../../study/mod.ts";
import { marchTube, type TubeMarch, type TubesResult } from "../../tubes/mod.ts";

const PIECES = 60;

/** One place along the tube, with wet and with dry air. */
export interface AlongRow {
  /** m from the inlet, end of the piece */
  readonly along: number;
  /** degC of moist air */
  readonly temperature: number;
  /** 0 to 1 */
  readonly relativeHumidity: number;
  /** degC of the same air without vapour */
  readonly dryTemperature: number;
  /** W of each metre, sensible, moist air */
  readonly sensible: number;
  /** W of each metre, latent */
  readonly latent: number;
  /** W of each metre, dry air */
  readonly dry: number;
}

/** One tube at the hour of strongest charging. */
export interface TubeAlong {
  /** places along the tube */
  readonly rows: readonly AlongRow[];
  /** hour of the year, from 0 */
  readonly hour: number;
  /** degC and 0 to 1 of the air drawn in */
  readonly intake: { readonly temperature: number; readonly relativeHumidity: number };
  /** degC, mean of the soil between the tubes, taken for the wall */
  readonly wall: number;
  /** the whole tube with moist air */
  readonly moist: TubeMarch;
  /** the whole tube with dry air */
  readonly dry: TubeMarch;
}

/**
 * Follows one tube at its mean flow through the hour in which the store took in most heat, once with
 * the air as it was and once with the same air without vapour. The wall is held at the store's mean
 * temperature of that hour.
 */
export function tubeAlong(study: Study, tubes: TubesResult, store: StoreResult): TubeAlong {
  const { year } = store;
  const hour = year.sensible.reduce(
    (best, sensible, at) =>
      sensible + year.latent[at]! > year.sensible[best]! + year.latent[best]! ? at : best,
    0,
  );
  const pressure = meanPressure(study);
  const temperature = year.intakeTemperature[hour]!;
  // the vapour of the house air; at the ridge the same vapour in warmer air
  const ratio = humidityRatioFromRelativeHumidity(
    year.house.airTemperature[hour]!,
    year.house.relativeHumidity[hour]!,
    pressure,
  );
  const wall = year.storeTemperature[hour]!;
  const march = (humidityRatio: number) =>
    marchTube({
      inlet: { temperature, humidityRatio },
      wallTemperatures: new Array<number>(PIECES).fill(wall),
      waterSupply: 0,
      diameter: tubes.diameter,
      length: tubes.length,
      filmCoefficient: tubes.filmCoefficient,
      dryAirFlow: tubes.flowPerTube * airDensity(temperature, 0, pressure),
      pressure,
    });
  const moist = march(ratio);
  const dry = march(0);
  const piece = tubes.length / PIECES;
  return {
    hour,
    wall,
    moist,
    dry,
    intake: {
      temperature,
      relativeHumidity: relativeHumidityFromRatio(temperature, ratio, pressure),
    },
    rows: moist.pieces.map((wet, index) => ({
      along: (index + 1) * piece,
      temperature: wet.outlet.temperature,
      relativeHumidity: Math.min(
        1,
        relativeHumidityFromRatio(wet.outlet.temperature, wet.outlet.humidityRatio, pressure),
      ),
      dryTemperature: dry.pieces[index]!.outlet.temperature,
      sensible: wet.sensible / piece,
      latent: wet.latent / piece,
      dry: dry.pieces[index]!.sensible / piece,
    })),
  };
}
