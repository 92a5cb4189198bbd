/** Long-wave radiation from the sky. @module */
import { dewPointOverWater, saturationPressureOverWater } from "../air/mod.ts";
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../basics/mod.ts";
import { clearSkyShare } from "./extraterrestrial.ts";
import { hourlySun } from "./hourly.ts";
import type { HourlySun, SunPlace } from "./types.ts";

/** The weather the sky radiation is worked out from; a `ClimateYear` fits. */
export interface SkyYear {
  /** spot on the earth, with m above sea level */
  readonly place: SunPlace & { readonly elevation: number };
  /** degC */
  readonly dryBulb: Float64Array;
  /** over water, 0 to 1 */
  readonly relativeHumidity: Float64Array;
  /** W/m² */
  readonly globalHorizontal: Float64Array;
  /** Pa */
  readonly pressure: Float64Array;
  /** W/m², returned as it is where the file has one */
  readonly skyLongwave: Float64Array | null;
}

/** One hour of clear sky for {@link clearSkyEmissivity}. */
export interface ClearSky {
  /** degC */
  readonly dewPoint: number;
  /** h after midnight */
  readonly hourOfDay: number;
  /** Pa */
  readonly pressure: number;
}

/**
 * Emissivity of a clear sky against the air temperature near the ground.
 *
 * ε = 0.711 + 0.56 (Td/100) + 0.73 (Td/100)² + 0.013 cos(2π t/24) + 0.00012 (p - 1000 hPa).
 *
 * Source: Berdahl & Martin 1984 [berdahl-martin-1984]. Fitted for dew points of -13 to 24 degC;
 * used below that range without a better one.
 *
 * @param sky dew point, time of day and pressure
 * @returns emissivity, about 0.55 to 0.95
 */
export function clearSkyEmissivity(sky: ClearSky): number {
  const dew = sky.dewPoint / 100;
  return 0.711 + 0.56 * dew + 0.73 * dew ** 2 +
    0.013 * Math.cos(2 * Math.PI * sky.hourOfDay / 24) + 0.00012 * (sky.pressure / 100 - 1000);
}

/**
 * Hourly long-wave radiation from the sky onto the horizontal.
 *
 * Where the file brings none: L = σ T⁴ ((1 - s) + s ε), where ε is {@link clearSkyEmissivity} and s
 * the share of clear sky, the global radiation of the 24 hours around over that of a clear sky.
 *
 * Source: Crawford & Duchon 1999 [crawford-duchon-1999] for the blend; clear-sky global radiation
 * by FAO-56 (1998) [fao56-1998] eq. 37. Single hours are uncertain by some 20 W/m².
 *
 * @param climate the year
 * @param sun its sun, to save working it out again
 * @returns W/m²
 */
export function skyLongwave(climate: SkyYear, sun?: HourlySun): Float64Array {
  if (climate.skyLongwave !== null) return climate.skyLongwave;
  const clear = clearSkyFraction(climate, sun ?? hourlySun(climate.place));
  const result = new Float64Array(climate.dryBulb.length);
  for (let hour = 0; hour < result.length; hour++) {
    const temperature = climate.dryBulb[hour]!;
    const vapour = Math.max(
      1,
      climate.relativeHumidity[hour]! * saturationPressureOverWater(temperature),
    );
    const emissivity = clearSkyEmissivity({
      dewPoint: Math.min(temperature, dewPointOverWater(vapour)),
      hourOfDay: hour % 24 + 0.5,
      pressure: climate.pressure[hour]!,
    });
    const share = clear[hour]!;
    result[hour] = STEFAN_BOLTZMANN * (temperature + ZERO_CELSIUS) ** 4 *
      (1 - share + share * emissivity);
  }
  return result;
}

/** Light of a clear sky in 24 hours below which cloud cannot be read from it, Wh/m². */
const LEAST_LIGHT = 50;

/**
 * Share of clear sky, 0 to 1, from the radiation of the 24 hours around each hour; through the polar
 * night the last share that could be read carries on.
 */
function clearSkyFraction(climate: SkyYear, sun: HourlySun): Float64Array {
  const hours = climate.globalHorizontal.length;
  const share = clearSkyShare(climate.place.elevation);
  const clearSky = sun.cosZenith.map((cosine, hour) =>
    share * cosine * sun.extraterrestrialNormal[hour]!
  );
  const result = new Float64Array(hours);
  let [seen, possible] = [0, 0];
  const wrap = (hour: number) => (hour + hours) % hours;
  for (let hour = -12; hour < 12; hour++) {
    seen += climate.globalHorizontal[wrap(hour)]!;
    possible += clearSky[wrap(hour)]!;
  }
  for (let hour = 0; hour < hours; hour++) {
    result[hour] = possible > LEAST_LIGHT ? Math.min(1, Math.max(0, seen / possible)) : NaN;
    seen += climate.globalHorizontal[wrap(hour + 12)]! - climate.globalHorizontal[wrap(hour - 12)]!;
    possible += clearSky[wrap(hour + 12)]! - clearSky[wrap(hour - 12)]!;
  }
  return carriedOn(result);
}

/** Missing values take the last one before them, round the turn of the year; 1 where there is none. */
function carriedOn(series: Float64Array): Float64Array {
  let last = series.findLast((value) => !Number.isNaN(value)) ?? 1;
  return series.map((value) => last = Number.isNaN(value) ? last : value);
}
