/** The weather of a year: read, checked, summed up and shown. @module */
export * from "./answer.ts";
export * from "./charts.ts";
export * from "./exercises.ts";
export * from "./glazing_charts.ts";
export * from "./sun_path.ts";
export * from "./tables.ts";
export {
  type AcceptedWord,
  type ClimateDifference,
  type ClimateQuality,
  climateQuality,
  type ClimateQuantity,
  type ClimateResult,
  type ClimateYear,
  type ColdDarkLimits,
  type ColdSpell,
  coldSpells,
  type ColumnName,
  type ColumnOfQuantity,
  type ColumnsFile,
  compareClimates,
  type Daylight,
  daylight,
  type DayRun,
  degreeDaysBelow,
  degreeHoursBelow,
  fitToSun,
  groundAlbedo,
  type JudgedRadiation,
  type LimitHours,
  longestColdDarkRun,
  type MonthFit,
  type MonthlyNormals,
  type MonthSummary,
  parseColumns,
  type Place,
  readClimate,
  type ReadClimateOptions,
  readNormals,
  type ShortDayRow,
  type SkylinePoint,
  summariseClimate,
  type TimePart,
  yearFromNormals,
} from "../../climate/mod.ts";
export {
  type GlazedPlanes,
  type GlazingAngles,
  glazingAngles,
  type GlazingLight,
  glazingLight,
  type LightMonth,
  limitsOutdoors,
  type OutdoorLimit,
  type PlaneLight,
} from "../../house/mod.ts";
