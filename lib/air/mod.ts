/** Moist air and air properties. @module */
export {
  AIR_HEAT_BY_VOLUME,
  airDensity,
  dewPoint,
  dewPointOverWater,
  DRY_AIR_HEAT_CAPACITY,
  HEAT_OF_SUBLIMATION,
  HEAT_OF_VAPORISATION,
  humidityRatio,
  humidityRatioFromRelativeHumidity,
  LATENT_HEAT,
  moistEnthalpy,
  moistVolume,
  MOLAR_MASS_RATIO,
  relativeHumidityFromDewPoint,
  relativeHumidityFromRatio,
  saturationHumidityRatio,
  saturationPressure,
  saturationPressureOverWater,
  standardPressure,
  VAPOUR_HEAT_CAPACITY,
  vapourPressure,
} from "./moist_air.ts";
export { airProperties } from "./properties.ts";
export type { AirProperties } from "./properties.ts";
export { lewisNumber, massTransferCoefficient, vapourDiffusivity } from "./mass_transfer.ts";
