/** The ground: its properties, its temperature without a store, its frost. @module */
export { answer, penetrationTable, propertyTable, sensitivityTable } from "./answer.ts";
export { fieldChart, profileChart } from "./charts.ts";
export { EXERCISES } from "./exercises.ts";
export { frostSnowChart, sensitivityChart, twoEstimatesChart } from "./frost_charts.ts";
export { estimatesTable, groundWaterTable, layerTable } from "./tables.ts";
export {
  type ColumnEnd,
  type ColumnFlow,
  type ColumnMesh,
  type ColumnState,
  type ConductivityEstimates,
  conductivityEstimates,
  coteKonradConductivity,
  type CoteKonradSoil,
  type DailyWeather,
  dampingDepth,
  findSoil,
  fitWave,
  type FreezingLumps,
  groundAtDepth,
  type GroundCover,
  type GroundLedger,
  type GroundQuestion,
  type GroundYear,
  type Harmonic,
  heatContent,
  johansenConductivity,
  type JohansenSoil,
  type SnowCover,
  snowCover,
  type SoilColumn,
  type SoilGrain,
  type SoilLayer,
  type SoilMake,
  soilProperties,
  type SoilRow,
  SOILS,
  type SurfaceForcing,
  undisturbedGround,
  undisturbedTemperature,
  type WaterState,
  waveFrostDepth,
} from "../../soil/mod.ts";
export type * from "../../soil/types.ts";
