/** Snow on every glazed part of a house. @module */
import { mean, sum } from "d3-array";
import { DRY_AIR_HEAT_CAPACITY } from "../../air/mod.ts";
import { HOUR } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { snowfallScale } from "../../soil/snow.ts";
import { assumedPrecipitation, clearSkyShares, vapourPressures } from "../../soil/surface.ts";
import { dailyWeather } from "../../soil/weather.ts";
import { planeTotal } from "../../sun/mod.ts";
import type { HouseInputs } from "../fields.ts";
import { closedShare } from "./curtain.ts";
import { outsideFilm, splitGlazing } from "./films.ts";
import { findGlazing } from "./glazing_table.ts";
import { leakageRate } from "./leakage.ts";
import { nightConductance } from "./losses.ts";
import { type PaneSnow, paneSnow } from "./pane_snow.ts";
import type { PlaneSeries } from "./solar_gain.ts";
import type { HouseGeometry } from "./types.ts";

/** Share of the sun on the glazing that stays in the house; W/m² that the floor gives in winter. */
const SUN_KEPT = 0.6;
const FLOOR_GIVES = 10;
/** kg/m³ of air, for the leakage of the estimate */
const AIR_DENSITY = 1.25;

/** What {@link glazingSnow} needs. */
export interface GlazingSnowInputs {
  /** house section of the study */
  readonly inputs: HouseInputs;
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** one year of weather */
  readonly climate: ClimateYear;
  /** W/m² onto a plane, hour by hour */
  readonly series: PlaneSeries;
  /** 1 for each hour with the curtain closed */
  readonly closed: Uint8Array;
}

/** kg/m² of water in each hour: what is assumed to fall in a day, evenly, scaled to the snow depth. */
function hourlyPrecipitation(climate: ClimateYear, snowDepth: number): Float64Array {
  const weather = dailyWeather(climate);
  const daily = assumedPrecipitation(weather, vapourPressures(weather), clearSkyShares(weather));
  const scale = snowfallScale(weather.temperature, daily, snowDepth);
  return climate.dryBulb.map((_, hour) => scale * daily[Math.floor(hour / 24)]! / 24);
}

/**
 * degC in the unheated house, roughly: as much above outside as a day's sun and the floor hold it by
 * the losses of the night. The snow hangs on the weather alone, so that it is the same with and
 * without a store or a heater.
 */
function roughInside(given: GlazingSnowInputs): Float64Array {
  const { inputs, geometry, climate } = given;
  const lost = sum(geometry.parts, (part) => nightConductance(part, inputs, geometry)) +
    geometry.volume * AIR_DENSITY * DRY_AIR_HEAT_CAPACITY / HOUR *
      leakageRate(inputs, 20, mean(climate.windSpeed)!);
  const sunny = new Float64Array(climate.dryBulb.length);
  for (const part of geometry.parts) {
    if (part.kind !== "glazed") continue;
    planeTotal(given.series(part.plane)).forEach((light, hour) =>
      sunny[hour]! += SUN_KEPT * part.area * light
    );
  }
  const hours = sunny.length;
  let day = sum(sunny.subarray(hours - 24));
  return climate.dryBulb.map((outside, hour) => {
    day += sunny[hour]! - sunny[(hour - 24 + hours) % hours]!;
    return outside + (day / 24 + FLOOR_GIVES * geometry.floorArea) / lost;
  });
}

/**
 * Snow on each part of the geometry, null for solid parts; null where the study leaves snow out.
 *
 * @param given house, weather and curtain
 */
export function glazingSnow(given: GlazingSnowInputs): readonly (PaneSnow | null)[] | null {
  const { inputs, geometry, climate, closed } = given;
  if (inputs.glazingSnow === "none" || inputs.snowDepth <= 0) return null;
  const glazing = findGlazing(inputs.glazing);
  const { innerResistance } = splitGlazing(
    glazing.heatTransmittance,
    glazing.longWaveTransmittance,
  );
  const { curtain } = inputs;
  const held = curtain === null ? 0 : closedShare(curtain) * curtain.resistance;
  const shared = {
    precipitation: hourlyPrecipitation(climate, inputs.snowDepth),
    outside: climate.dryBulb,
    inside: roughInside(given),
    inner: Float64Array.from(closed, (shut) => innerResistance + (shut === 1 ? held : 0)),
    film: climate.windSpeed.map(outsideFilm),
    clearedAbove: inputs.glazingSnow === "cleared" ? inputs.snowClearedAbove : null,
  };
  return geometry.parts.map((part) =>
    part.kind === "glazed"
      ? paneSnow({ ...shared, tilt: part.plane.tilt, sun: planeTotal(given.series(part.plane)) })
      : null
  );
}
