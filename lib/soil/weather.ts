/** Daily weather that drives the ground, from a climate year or from daily records. @module */
import { dailyMeans, InputError } from "../basics/mod.ts";
import { saturationPressureOverWater } from "../air/mod.ts";
import type { ClimateYear, Place } from "../climate/types.ts";

/** Weather by the day, from 1 January; 365 or 366 days make the year that is repeated. */
export interface DailyWeather {
  /** latitude in degrees and elevation in m of the site */
  readonly place: Pick<Place, "latitude" | "elevation">;
  /** daily mean of the air, degC */
  readonly temperature: ArrayLike<number>;
  /** daily mean of the global radiation on the horizontal, W/m² */
  readonly radiation: ArrayLike<number>;
  /** daily lowest air temperature, degC; stands in for the dew point where humidity is missing */
  readonly minTemperature?: ArrayLike<number>;
  /** daily mean vapour pressure, Pa; estimated from the lowest temperature where missing */
  readonly vapourPressure?: ArrayLike<number>;
  /** daily mean wind 10 m above ground, m/s; a stated default where missing */
  readonly windSpeed?: ArrayLike<number>;
  /** daily mean long-wave radiation from the sky, W/m²; estimated where missing */
  readonly skyLongwave?: ArrayLike<number>;
}

/**
 * Daily weather of an hourly climate year.
 *
 * @param climate the hourly year
 */
export function dailyWeather(climate: ClimateYear): DailyWeather {
  const vapour = climate.dryBulb.map((temperature, hour) =>
    climate.relativeHumidity[hour]! * saturationPressureOverWater(temperature)
  );
  const lowest = Float64Array.from(
    { length: climate.dryBulb.length / 24 },
    (_, day) => Math.min(...climate.dryBulb.subarray(24 * day, 24 * day + 24)),
  );
  return {
    place: climate.place,
    temperature: dailyMeans(climate.dryBulb),
    radiation: dailyMeans(climate.globalHorizontal),
    minTemperature: lowest,
    vapourPressure: dailyMeans(vapour),
    windSpeed: dailyMeans(climate.windSpeed),
    ...(climate.skyLongwave === null ? {} : { skyLongwave: dailyMeans(climate.skyLongwave) }),
  };
}

/** Refuses daily weather that is not one full year of numbers. */
export function requireYear(weather: DailyWeather): void {
  const days = weather.temperature.length;
  if (days !== 365 && days !== 366) {
    throw new InputError(`Daily weather must cover 365 or 366 days: it has ${days}`);
  }
  for (const [name, values] of Object.entries(weather)) {
    if (name === "place") continue;
    const series = values as ArrayLike<number>;
    if (series.length !== days) {
      throw new InputError(
        `Daily ${name} has ${series.length} values, but the temperature has ${days}`,
      );
    }
    for (let day = 0; day < days; day++) {
      if (!Number.isFinite(series[day]!)) {
        throw new InputError(`Daily ${name} has no number on day ${day + 1}: fill the gap first`);
      }
    }
  }
}
