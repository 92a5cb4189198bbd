/** Air along one tube in the hour that brings the store most. @module */
import { humidityRatioFromRelativeHumidity } from "../air/mod.ts";
import { type AlongQuestion, type TubeAlong, tubeAlong } from "../tubes/mod.ts";
import type { StoreYear } from "./types.ts";

/** One tube at the hour of strongest charging. */
export interface StrongestHour extends TubeAlong {
  /** hour of the year, from 0 */
  readonly hour: number;
}

/** What the hour is looked up in. */
export interface StrongestHourQuestion {
  /** tube at its design flow */
  readonly tubes: AlongQuestion["tubes"];
  /** hourly year of the store */
  readonly year: StoreYear;
  /** Pa */
  readonly pressure: number;
}

/**
 * Hour in which most heat goes into the tube walls.
 *
 * @param year hourly sensible and latent heat, W
 * @returns hour index
 */
export function strongestHour(year: Pick<StoreYear, "sensible" | "latent">): number {
  return year.sensible.reduce(
    (best, sensible, at) =>
      sensible + year.latent[at]! > year.sensible[best]! + year.latent[best]! ? at : best,
    0,
  );
}

/**
 * Follows one tube at its mean flow through the hour in which the store took in most heat. The wall
 * is held at the store's mean temperature of that hour.
 *
 * @param question tube, year and pressure
 * @returns null where no hour charges
 */
export function tubeAtStrongestHour(question: StrongestHourQuestion): StrongestHour | null {
  const { tubes, year, pressure } = question;
  const hour = strongestHour(year);
  if (!(year.sensible[hour]! + year.latent[hour]! > 0)) return null;
  // the vapour of the house air; at the ridge the same vapour in warmer air
  const humidityRatio = humidityRatioFromRelativeHumidity(
    year.house.airTemperature[hour]!,
    year.house.relativeHumidity[hour]!,
    pressure,
  );
  const inlet = { temperature: year.intakeTemperature[hour]!, humidityRatio };
  const wall = year.storeTemperature[hour]!;
  return { hour, ...tubeAlong({ tubes, inlet, wall, pressure }) };
}
