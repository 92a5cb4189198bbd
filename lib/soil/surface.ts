/** Daily heat balance of open ground: sun, sky, wind, evaporation, cover, snow. @module */
import { LATENT_HEAT, saturationPressureOverWater, standardPressure } from "../air/mod.ts";
import { clearSkyShare, dailySun } from "../sun/mod.ts";
import { DAY, STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../basics/mod.ts";
import type { SnowCover } from "./snow.ts";
import type { DailyWeather } from "./weather.ts";

/** What covers the ground. */
export interface GroundCover {
  /** share of the sun reflected without snow */
  readonly albedo: number;
  /** m² K/W of grass, thatch and litter between the surface that meets the air and the soil */
  readonly resistance: number;
  /** height of the plants or of the roughness, m */
  readonly height: number;
}

/**
 * Short grass: albedo and height FAO-56 (1998) [fao56-1998]; resistance: common practice, no
 * source.
 */
export const GRASS: GroundCover = { albedo: 0.23, resistance: 0.1, height: 0.12 };

/** Bare moist soil: albedo 0.2 and roughness as 0.03 m of plants; common practice, no source. */
export const BARE_SOIL: GroundCover = { albedo: 0.2, resistance: 0, height: 0.03 };

/** m/s 10 m above ground where the wind is not known: open country; the mean of five public typical years
 * (TMY3: 2.8 to 5.0) is 3.7; common practice, no source. */
const DEFAULT_WIND = 3.5;
/** Albedo of snow on grassland, patches and ageing counted; common practice, no source. */
const WINTER_SNOW_ALBEDO = 0.65;
/** m of snow that hides half the ground. */
const HALF_COVERED = 0.03;
/**
 * Priestley–Taylor coefficient of the complementary method; Brutsaert et al. 2017 [brutsaert-2017]
 * (from memory).
 */
const WET_COEFFICIENT = 1.13;
/** days the water of the air column takes to fall under full cloud; common practice, no source. */
const OVERCAST_FALL_TIME = 5;
/** Grass and snow in the long-wave; common practice, no source. */
const SURFACE_EMISSIVITY = 0.97;
/** J/(kg K) of moist air in the method's own set of round figures; FAO-56 (1998) [fao56-1998] eq. 8. */
const MOIST_AIR_HEAT_CAPACITY = 1013;

/** What the ground meets each day: an equivalent outside temperature behind a conductance. */
export interface SurfaceForcing {
  /** degC, air temperature plus the radiation and evaporation terms over the surface coefficient */
  readonly temperature: Float64Array;
  /** W/(m² K) from there to the soil's face */
  readonly conductance: Float64Array;
  /** W/m², net radiation of a surface at air temperature */
  readonly netRadiation: Float64Array;
  /** W/m² */
  readonly evaporation: Float64Array;
}

/**
 * Global over clear-sky radiation, 0.3 to 1; FAO-56 (1998) [fao56-1998] eq. 37; nights of polar
 * winter carry on.
 */
export function clearSkyShares(weather: DailyWeather): Float64Array {
  const { latitude, elevation } = weather.place;
  const shares = new Float64Array(weather.radiation.length);
  let share = 0.7;
  for (let day = 0; day < shares.length; day++) {
    const clear = clearSkyShare(elevation) * dailySun(latitude, day + 1).radiation / DAY;
    if (clear > 10) share = Math.min(1, Math.max(0.3, weather.radiation[day]! / clear));
    shares[day] = share;
  }
  return shares;
}

/**
 * Vapour pressure each day, Pa: given, or that of the daily lowest temperature (FAO-56 1998
 * [fao56-1998] eq. 48) lowered by 0.6 K for each K of daily swing above 14 K (dry places; no
 * source), or 4 K below the mean where only means are known.
 */
export function vapourPressures(weather: DailyWeather): Float64Array {
  return Float64Array.from(weather.temperature, (mean, day) => {
    if (weather.vapourPressure !== undefined) return weather.vapourPressure[day]!;
    const lowest = weather.minTemperature?.[day] ?? mean - 6;
    const swing = 2 * (mean - lowest);
    return saturationPressureOverWater(lowest - 0.6 * Math.max(0, swing - 14));
  });
}

/**
 * Precipitation assumed where only temperature and sun are known, kg/m² a day: the water of the air
 * column, 0.14·e·p + 2.1 mm (ASCE 2005 [asce-2005] eq. D.3, e and p in kPa), falls within 5 days of
 * full cloud.
 */
export function assumedPrecipitation(
  weather: DailyWeather,
  vapour: ArrayLike<number>,
  clear: ArrayLike<number>,
): Float64Array {
  const pressure = standardPressure(weather.place.elevation) / 1000;
  return Float64Array.from(clear, (share, day) => {
    const column = 0.14 * (vapour[day]! / 1000) * pressure + 2.1;
    return (column / OVERCAST_FALL_TIME) * Math.min(1, (1 - share) / 0.7);
  });
}

/**
 * Net long-wave loss of a surface at air temperature, W/m²: from the measured sky, else 0.97 σT⁴ (1
 * − ε)s with the clear sky of Prata 1996 [prata-1996], 1 − ε = (1 + w)exp(−√(1.2 + 3w)), w = 0.465
 * e/T (Pa, K), and the cloud correction of Crawford & Duchon 1999 [crawford-duchon-1999] by the
 * clear-sky share s.
 */
export function longwaveLoss(
  day: { air: number; vapour: number; clear: number; sky?: number | undefined },
): number {
  const kelvin = day.air + ZERO_CELSIUS;
  const black = STEFAN_BOLTZMANN * kelvin ** 4;
  if (day.sky !== undefined) return SURFACE_EMISSIVITY * (black - day.sky);
  const water = 0.465 * day.vapour / kelvin;
  const openSky = (1 + water) * Math.exp(-Math.sqrt(1.2 + 3 * water));
  return SURFACE_EMISSIVITY * black * openSky * day.clear;
}

/**
 * Evaporation from ground whose wetness is not known, W/m²: complementary principle,
 * E/E_pa = (2 − x)x², x = E_po/E_pa; dry air tells of dry ground.
 *
 * Source: Brutsaert 2015 [brutsaert-2015]; E_po Priestley–Taylor [priestley-taylor-1972], E_pa
 * Penman 1948 [penman-1948].
 */
export function evaporationHeat(
  day: { net: number; air: number; vapour: number; wind: number; pressure: number },
): number {
  if (day.net <= 0) return 0;
  const saturation = saturationPressureOverWater(day.air);
  const slope = (4098 * saturation) / (day.air + 237.3) ** 2;
  const psychrometric = 0.665e-3 * day.pressure;
  const radiative = (slope / (slope + psychrometric)) * day.net;
  const deficit = Math.max(0, saturation - day.vapour) / 100;
  const drying = 0.26 * (1 + 0.54 * 0.748 * day.wind) * deficit * LATENT_HEAT / DAY;
  const apparent = radiative + (psychrometric / (slope + psychrometric)) * drying;
  const x = Math.min(1, (WET_COEFFICIENT * radiative) / apparent);
  return apparent * (2 - x) * x * x;
}

/**
 * Heat transfer from the ground's plants to the air, W/(m² K):
 * ρ c k² u / (ln((z − d)/z_m) ln((z − d)/z_h)), d = 2/3, z_m = 0.123, z_h = 0.0123 of the height.
 *
 * Source: FAO-56 (1998) [fao56-1998] eq. 4; neutral air. Never less than at 0.5 m/s.
 *
 * @param air wind in m/s, height it is measured at in m, plant height in m, air density in kg/m³
 */
export function windCoefficient(
  air: { wind: number; measuredAt: number; plantHeight: number; density: number },
): number {
  const above = air.measuredAt - (2 / 3) * air.plantHeight;
  const roughness = 0.123 * air.plantHeight;
  const logs = Math.log(above / roughness) * Math.log(above / (0.1 * roughness));
  return (air.density * MOIST_AIR_HEAT_CAPACITY * 0.41 ** 2 * Math.max(0.5, air.wind)) / logs;
}

/**
 * Heat balance of the surface, day by day, linear about the air temperature:
 * (1 − albedo) G − L_net − E = (h_wind + h_sky)(T_s − T_air) + q_ground,
 * written as an equivalent temperature behind a conductance.
 *
 * Daily means; a surface under snow is held at or below 0 degC.
 *
 * @param weather daily weather
 * @param cover what grows on the ground
 * @param snow snow cover of the same days
 */
export function surfaceForcing(
  weather: DailyWeather,
  cover: GroundCover,
  snow: SnowCover,
): SurfaceForcing {
  const days = weather.temperature.length;
  const pressure = standardPressure(weather.place.elevation);
  const vapour = vapourPressures(weather);
  const clear = clearSkyShares(weather);
  const forcing: SurfaceForcing = {
    temperature: new Float64Array(days),
    conductance: new Float64Array(days),
    netRadiation: new Float64Array(days),
    evaporation: new Float64Array(days),
  };
  for (let day = 0; day < days; day++) {
    const air = weather.temperature[day]!;
    const wind = weather.windSpeed?.[day] ?? DEFAULT_WIND;
    const covered = snow.depth[day]! / (snow.depth[day]! + HALF_COVERED);
    const albedo = cover.albedo + covered * (WINTER_SNOW_ALBEDO - cover.albedo);
    const sky = weather.skyLongwave?.[day];
    const net = (1 - albedo) * weather.radiation[day]! -
      longwaveLoss({ air, vapour: vapour[day]!, clear: clear[day]!, sky });
    const evaporation = evaporationHeat({ net, air, vapour: vapour[day]!, wind, pressure });
    const density = pressure / (287.05 * (air + ZERO_CELSIUS));
    const blown = { wind, measuredAt: 10, plantHeight: cover.height, density };
    const coefficient = windCoefficient(blown) +
      4 * SURFACE_EMISSIVITY * STEFAN_BOLTZMANN * (air + ZERO_CELSIUS) ** 3;
    const equivalent = air + (net - evaporation) / coefficient;
    forcing.temperature[day] = snow.water[day]! > 0 ? Math.min(0, equivalent) : equivalent;
    forcing.conductance[day] = 1 / (1 / coefficient + cover.resistance + snow.resistance[day]!);
    forcing.netRadiation[day] = net;
    forcing.evaporation[day] = evaporation;
  }
  return forcing;
}
