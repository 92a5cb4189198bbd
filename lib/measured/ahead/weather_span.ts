/** A stretch of hourly weather, logged or forecast, and a year with it in place. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { hourlySun, splitGlobal } from "../../sun/mod.ts";

/** Hours of weather one after the other. */
export interface WeatherSpan {
  /** hour of the 365-day year in local standard time at which it starts, index from 0 */
  readonly start: number;
  /** degC, each hour */
  readonly dryBulb: Float64Array;
  /** 0 to 1 */
  readonly relativeHumidity: Float64Array;
  /** W/m² on the horizontal, mean of each hour */
  readonly globalHorizontal: Float64Array;
  /** m/s */
  readonly windSpeed: Float64Array;
}

/**
 * A year in which stretches of weather stand in place of its own; direct and diffuse radiation there by
 * the split of the climate chapter, sky radiation modelled.
 *
 * @param climate the study's year
 * @param spans stretches; a later one stands over an earlier one
 */
export function yearWith(climate: ClimateYear, spans: readonly WeatherSpan[]): ClimateYear {
  const sun = hourlySun(climate.place);
  const year = {
    dryBulb: climate.dryBulb.slice(),
    relativeHumidity: climate.relativeHumidity.slice(),
    globalHorizontal: climate.globalHorizontal.slice(),
    directNormal: climate.directNormal.slice(),
    diffuseHorizontal: climate.diffuseHorizontal.slice(),
    windSpeed: climate.windSpeed.slice(),
  };
  for (const span of spans) {
    span.dryBulb.forEach((temperature, k) => {
      const hour = (span.start + k) % HOURS_PER_YEAR;
      const upShare = sun.upShare[hour]!;
      const global = upShare > 0 ? Math.max(0, span.globalHorizontal[k]!) : 0;
      const parts = splitGlobal({
        globalHorizontal: global,
        cosZenith: upShare > 0 ? sun.cosZenith[hour]! / upShare : 0,
        upShare,
        extraterrestrialNormal: sun.extraterrestrialNormal[hour]!,
      });
      year.dryBulb[hour] = temperature;
      year.relativeHumidity[hour] = Math.min(1, Math.max(0, span.relativeHumidity[k]!));
      year.globalHorizontal[hour] = global;
      year.directNormal[hour] = parts.directNormal;
      year.diffuseHorizontal[hour] = parts.diffuseHorizontal;
      year.windSpeed[hour] = Math.max(0, span.windSpeed[k]!);
    });
  }
  return { ...climate, ...year, skyLongwave: null };
}
