/** Weather of a year: read, checked, made, summed up. @module */
export { LONGEST_GAP } from "./gaps.ts";
export { coldSpells, longestColdDarkRun } from "./cold_spells.ts";
export type { ColdDarkLimits, DayRun } from "./cold_spells.ts";
export { compareClimates } from "./compare.ts";
export type { ClimateDifference } from "./compare.ts";
export type { Daylight, ShortDayRow, SkylinePoint } from "./daylight.ts";
export { daylight } from "./daylight.ts";
export { clockFault, mirroredFault } from "./read/check_place.ts";
export { parseColumns } from "./read/columns_file.ts";
export type { AcceptedWord } from "./read/accepted.ts";
export type { ColumnName, ColumnOfQuantity, ColumnsFile, TimePart } from "./read/columns_file.ts";
export { DEFAULT_WIND_SPEED } from "./mend/complete.ts";
export { degreeDaysBelow, designTemperature } from "./degrees.ts";
export { readNormals } from "./normals/read_normals.ts";
export { meanDailySwing } from "./normals/daily_swing.ts";
export { normalsOfYear } from "./normals/normals_of_year.ts";
export { makeWinter, measuredWinter, type WinterClimate, winterClimate } from "./winters/mod.ts";
export { yearFromNormals } from "./winters/typical_year.ts";
export { climateQuality } from "./mend/quality.ts";
export type { ClimateQuality } from "./mend/quality.ts";
export { readClimate } from "./read_climate.ts";
export type { ReadClimateOptions } from "./read_climate.ts";
export { groundAlbedo } from "./mend/snow_albedo.ts";
export { hoursText } from "./mend/shift_words.ts";
export { summariseClimate } from "./summary.ts";
export { fitToSun } from "./mend/sun_shift.ts";
export type { MonthFit } from "./mend/sun_shift.ts";
export type { ClimateQuantity } from "./read/quantities.ts";
export type {
  ClimateResult,
  ClimateYear,
  ColdSpell,
  LimitHours,
  MonthlyNormals,
  MonthSummary,
  Place,
} from "./types.ts";
export { degreeHoursBelow } from "../basics/mod.ts";
export { climate } from "./chapter.ts";
export { HOURLY_SERIES, meanPressure, openWeather, plainWeather } from "./weather.ts";
export { dateAfterMidsummer, timeOfHour } from "./dates.ts";
export { climateFields, type ClimateGiven, placeFields, type PlaceGiven } from "./fields.ts";
export type { JudgedRadiation } from "./mend/sun_shift.ts";
