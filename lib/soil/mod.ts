/** The soil chapter: properties, undisturbed temperature, frost. @module */
export type * from "./types.ts";
export { soilChapter } from "./chapter.ts";
export { coteKonradConductivity, johansenConductivity, solidConductivity } from "./conductivity.ts";
export type { CoteKonradSoil, JohansenSoil, WaterState } from "./conductivity.ts";
export { conductivityEstimates, soilProperties } from "./properties.ts";
export type { ConductivityEstimates, SoilMake } from "./properties.ts";
export { findSoil, SOILS } from "./table.ts";
export type { SoilGrain, SoilRow } from "./table.ts";
export {
  annualHarmonic,
  dampingDepth,
  fitWave,
  snowDamping,
  undisturbedTemperature,
  waveFrostDepth,
} from "./wave.ts";
export type { Harmonic } from "./wave.ts";
