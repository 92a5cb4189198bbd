/** Sun position, radiation on planes, glazing and sky. @module */
export { clearSkyShare, dailySun, extraterrestrialNormal, shortDays } from "./extraterrestrial.ts";
export type { DailySun, ShortDays } from "./extraterrestrial.ts";
export {
  beamTransmittance,
  diffuseTransmittance,
  glazingShares,
  surfaceReflection,
} from "./glazing.ts";
export type { GlazingOptics, GlazingShares, SurfaceReflection } from "./glazing.ts";
export { horizonElevation } from "./horizon.ts";
export type { Horizon, HorizonPoint } from "./horizon.ts";
export { direction, hourAngleAtMidnight, hourlySun } from "./hourly.ts";
export { groundOnPlane, planeRadiation, planeTotal, skyOnPlane } from "./plane.ts";
export type { PlaneRadiationInputs, SkyMoment, SkyParts } from "./plane.ts";
export { sunPosition } from "./position.ts";
export type { Refraction, SunPosition, SunPositionInputs } from "./position.ts";
export { clearSkyEmissivity, skyLongwave } from "./sky_longwave.ts";
export type { ClearSky, SkyYear } from "./sky_longwave.ts";
export { diffuseShare, splitGlobal } from "./split.ts";
export type { SplitInputs, SplitRadiation } from "./split.ts";
export { incidencePath, positiveMean } from "./sun_path.ts";
export type { PathMean, SunPath } from "./sun_path.ts";
export { sunPaths } from "./sun_paths.ts";
export type { DayPath, PathPoint } from "./sun_paths.ts";
export type {
  HourlySun,
  Plane,
  PlaneRadiation,
  RadiationYear,
  SkyModel,
  SunPlace,
} from "./types.ts";
