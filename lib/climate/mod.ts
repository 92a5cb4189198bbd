/** Weather of a year: read, checked, made, summed up. @module */
export { describeHour, LONGEST_GAP, MONTH_NAMES, MONTH_STARTS, monthOfHour } from "./calendar.ts";
export { coldSpells, LIFT_BY_SUN, longestColdDarkRun } from "./cold_spells.ts";
export type { ColdDarkLimits, DayRun } from "./cold_spells.ts";
export { compareClimates } from "./compare.ts";
export type { ClimateDifference } from "./compare.ts";
export { parseColumns } from "./columns_file.ts";
export type { ColumnName, ColumnOfQuantity, ColumnsFile, TimePart } from "./columns_file.ts";
export { DEFAULT_WIND_SPEED } from "./complete.ts";
export { dailyMeans, degreeDaysBelow, degreeHoursBelow, hoursBelow } from "./degrees.ts";
export { readNormals } from "./normals.ts";
export { meanDailySwing } from "./normals_temperature.ts";
export { yearFromNormals } from "./normals_year.ts";
export { climateQuality } from "./quality.ts";
export type { ClimateQuality } from "./quality.ts";
export { readClimate } from "./read_climate.ts";
export type { ReadClimateOptions } from "./read_climate.ts";
export { BARE_ALBEDO, groundAlbedo, SNOW_ALBEDO } from "./snow_albedo.ts";
export { summariseClimate } from "./summary.ts";
export { fitToSun } from "./sun_shift.ts";
export type { MonthFit } from "./sun_shift.ts";
export { writeClimate } from "./write_climate.ts";
export type { WrittenClimate } from "./write_climate.ts";
export type { Quantity } from "./quantities.ts";
export type {
  ClimateResult,
  ClimateYear,
  ColdSpell,
  MonthlyNormals,
  MonthSummary,
  Place,
} from "./types.ts";
