/**
 * Moist air on top of the psychrolib package [psychrolib-2019] (ASHRAE Fundamentals 2017
 * [ashrae-2017], ch. 1), in degC, Pa and kg of water per kg of dry air.
 *
 * @module
 */
import psychrolib from "psychrolib";
import { HEAT_OF_FUSION, requireInRange, ZERO_CELSIUS } from "../basics/mod.ts";

psychrolib.SetUnitSystem(psychrolib.SI);

/**
 * Heat of vaporisation of water at 0 degC, J/kg. ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq.
 * 30.
 */
export const LATENT_HEAT = 2.501e6;
/**
 * Heat that turns a kilogram of water into vapour at 20 degC, J/kg, where vapour is bookkept by one
 * number for all of house and tubes. FAO-56 (1998) [fao56-1998] eq. 3-1.
 */
export const HEAT_OF_VAPORISATION = 2.45e6;
/**
 * Heat that turns a kilogram of ice into vapour at 0 degC, J/kg: {@link LATENT_HEAT} and the heat of
 * fusion together, 2.834e6. ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 (from memory).
 */
export const HEAT_OF_SUBLIMATION: number = LATENT_HEAT + HEAT_OF_FUSION;
/** Specific heat of dry air, J/(kg K). ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 30. */
export const DRY_AIR_HEAT_CAPACITY = 1006;
/**
 * Heat capacity of a volume of air, J/(m³ K): {@link DRY_AIR_HEAT_CAPACITY} times 1.2 kg/m³, the
 * density at sea level and 20 degC, for films and resistances that are quoted for such air.
 */
export const AIR_HEAT_BY_VOLUME = 1207;
/** Specific heat of water vapour, J/(kg K). ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 30. */
export const VAPOUR_HEAT_CAPACITY = 1860;
/**
 * Molar mass of water over that of dry air. ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 20.
 */
export const MOLAR_MASS_RATIO = 0.621945;
/** Gas constant of dry air, J/(kg K). ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 1. */
const DRY_AIR_GAS_CONSTANT = 287.042;

/**
 * Saturation pressure of water vapour, over ice below 0 degC, over water above.
 *
 * Source: Hyland & Wexler 1983 [hyland-wexler-1983], as ASHRAE Fundamentals 2017 [ashrae-2017] ch.
 * 1 eq. 5 and 6.
 *
 * @param temperature degC, -100 to 200
 * @returns Pa
 */
export function saturationPressure(temperature: number): number {
  return psychrolib.GetSatVapPres(temperature);
}

/**
 * Saturation pressure over liquid water, also supercooled below 0 degC, as hygrometers and climate
 * files define relative humidity.
 *
 * Source: Hyland & Wexler 1983 [hyland-wexler-1983], as ASHRAE Fundamentals 2017 [ashrae-2017] ch.
 * 1 eq. 6, used below its stated range for supercooled water.
 *
 * @param temperature degC, -50 to 200
 * @returns Pa
 */
export function saturationPressureOverWater(temperature: number): number {
  if (temperature >= 0.01) return psychrolib.GetSatVapPres(temperature);
  const kelvin = temperature + ZERO_CELSIUS;
  return Math.exp(
    -5.8002206e3 / kelvin + 1.3914993 - 4.8640239e-2 * kelvin + 4.1764768e-5 * kelvin ** 2 -
      1.4452093e-8 * kelvin ** 3 + 6.5459673 * Math.log(kelvin),
  );
}

/**
 * Humidity ratio of air with a given vapour pressure. W = 0.621945·p/(P − p).
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 20.
 *
 * @param vapourPressure Pa, 0 to below the pressure
 * @param pressure Pa
 * @returns kg/kg
 */
export function humidityRatio(vapourPressure: number, pressure: number): number {
  requireInRange("vapour pressure", vapourPressure, 0, 0.9 * pressure, "Pa");
  return MOLAR_MASS_RATIO * vapourPressure / (pressure - vapourPressure);
}

/**
 * Vapour pressure of air with a given humidity ratio; the inverse of {@link humidityRatio}.
 *
 * @param ratio kg/kg
 * @param pressure Pa
 * @returns Pa
 */
export function vapourPressure(ratio: number, pressure: number): number {
  return pressure * ratio / (MOLAR_MASS_RATIO + ratio);
}

/**
 * Humidity ratio of saturated air, over ice below 0 degC.
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 20.
 *
 * @param temperature degC
 * @param pressure Pa
 * @returns kg/kg
 */
export function saturationHumidityRatio(temperature: number, pressure: number): number {
  return humidityRatio(saturationPressure(temperature), pressure);
}

/**
 * Relative humidity over water of air with a given humidity ratio; may exceed 1 in supersaturated
 * air.
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 20, solved for the vapour pressure.
 *
 * @param temperature degC
 * @param ratio kg/kg
 * @param pressure Pa
 * @returns 0 to 1, or above
 */
export function relativeHumidityFromRatio(
  temperature: number,
  ratio: number,
  pressure: number,
): number {
  return vapourPressure(ratio, pressure) / saturationPressureOverWater(temperature);
}

/**
 * Humidity ratio from relative humidity over water.
 *
 * @param temperature degC
 * @param relativeHumidity 0 to 1
 * @param pressure Pa
 * @returns kg/kg
 */
export function humidityRatioFromRelativeHumidity(
  temperature: number,
  relativeHumidity: number,
  pressure: number,
): number {
  requireInRange("relative humidity", relativeHumidity, 0, 1.0001, "(0 to 1)");
  return humidityRatio(relativeHumidity * saturationPressureOverWater(temperature), pressure);
}

/**
 * Relative humidity over water from dry bulb and dew point; 1 where the dew point is the higher.
 *
 * Source: exact, definition; pressures by Hyland & Wexler 1983 [hyland-wexler-1983].
 *
 * @param dryBulb degC
 * @param dewPointTemperature degC
 * @returns 0 to 1
 */
export function relativeHumidityFromDewPoint(dryBulb: number, dewPointTemperature: number): number {
  const share = saturationPressureOverWater(dewPointTemperature) /
    saturationPressureOverWater(dryBulb);
  return Math.min(1, share);
}

/**
 * Temperature at which air of this vapour pressure is saturated, frost point below 0 degC.
 *
 * Newton's method of the psychrolib package [psychrolib-2019] (ASHRAE Fundamentals 2017
 * [ashrae-2017] ch. 1).
 *
 * @param pressure vapour pressure, Pa, above 0
 * @returns degC
 */
export function dewPoint(pressure: number): number {
  return psychrolib.GetTDewPointFromVapPres(60, pressure);
}

/**
 * Temperature at which air of this vapour pressure is saturated over liquid water, also supercooled
 * below 0 degC, as weather stations report the dew point. The inverse of
 * {@link saturationPressureOverWater}, by Newton's method on its logarithm from Magnus' formula.
 *
 * @param pressure vapour pressure, Pa, above 0
 * @returns degC
 */
export function dewPointOverWater(pressure: number): number {
  const magnus = Math.log(pressure / 611.2);
  let temperature = 243.12 * magnus / (17.62 - magnus);
  for (let pass = 0; pass < 5; pass++) {
    const error = Math.log(saturationPressureOverWater(temperature) / pressure);
    // Clausius–Clapeyron: d ln p / dT = L/(R T²), L/R of water vapour
    temperature -= error * (temperature + ZERO_CELSIUS) ** 2 / 5420;
  }
  return temperature;
}

/**
 * Enthalpy of moist air above dry air and liquid water at 0 degC.
 * h = 1006·t + W·(2.501e6 + 1860·t).
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 30.
 *
 * @param temperature degC
 * @param ratio kg/kg
 * @returns J per kg of dry air
 */
export function moistEnthalpy(temperature: number, ratio: number): number {
  return DRY_AIR_HEAT_CAPACITY * temperature +
    ratio * (LATENT_HEAT + VAPOUR_HEAT_CAPACITY * temperature);
}

/**
 * Density of moist air, kg of air and vapour per m³.
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 26 and 10 (perfect gas).
 *
 * @param temperature degC
 * @param ratio kg/kg
 * @param pressure Pa
 * @returns kg/m³
 */
export function airDensity(temperature: number, ratio: number, pressure: number): number {
  return (1 + ratio) / moistVolume(temperature, ratio, pressure);
}

/**
 * Volume of moist air that holds one kilogram of dry air.
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 26.
 *
 * @param temperature degC
 * @param ratio kg/kg
 * @param pressure Pa
 * @returns m³ per kg of dry air
 */
export function moistVolume(temperature: number, ratio: number, pressure: number): number {
  return DRY_AIR_GAS_CONSTANT * (temperature + ZERO_CELSIUS) * (1 + ratio / MOLAR_MASS_RATIO) /
    pressure;
}

/**
 * Pressure of the standard atmosphere.
 *
 * Source: ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1 eq. 3.
 *
 * @param elevation m, -500 to 11 000
 * @returns Pa
 */
export function standardPressure(elevation: number): number {
  requireInRange("elevation", elevation, -500, 11000, "m");
  return psychrolib.GetStandardAtmPressure(elevation);
}
