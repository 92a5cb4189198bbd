/** What the climate chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { Horizon } from "../sun/mod.ts";

/** A spot on the earth. */
export interface Place {
  /** name for the report */
  readonly name: string;
  /** degrees, north positive, -90 to 90 */
  readonly latitude: number;
  /** degrees, east positive */
  readonly longitude: number;
  /** m above sea level */
  readonly elevation: number;
  /** hours east of UTC of local standard time */
  readonly timeZone: number;
  /** skyline of the site, azimuths from true north; open where not given */
  readonly horizon?: Horizon;
}

/**
 * One year of hourly weather. Every series has 8760 entries; entry i covers the hour that starts
 * i hours after 1 January 00:00 local standard time. Radiation is the mean over that hour.
 */
export interface ClimateYear {
  /** where the weather is of */
  readonly place: Place;
  /** file or generator the year came from, for the report */
  readonly source: string;
  /** layout the file was recognised as: "TMY3", "NSRDB", "PVGIS", "columns", "normals" */
  readonly layout: string;
  /** dry-bulb temperature, degC */
  readonly dryBulb: Float64Array;
  /** relative humidity over water, 0 to 1 */
  readonly relativeHumidity: Float64Array;
  /** global radiation on the horizontal, W/m² */
  readonly globalHorizontal: Float64Array;
  /** direct radiation normal to the sun, W/m² */
  readonly directNormal: Float64Array;
  /** diffuse radiation on the horizontal, W/m² */
  readonly diffuseHorizontal: Float64Array;
  /** wind speed, m/s */
  readonly windSpeed: Float64Array;
  /** station pressure, Pa */
  readonly pressure: Float64Array;
  /** long-wave radiation from the sky, W/m²; null where the file has none (then modelled) */
  readonly skyLongwave: Float64Array | null;
  /** albedo of the ground, 0 to 1; null or absent where the file has none */
  readonly albedo?: Float64Array | null;
  /**
   * months (1 to 12) in which direct or diffuse radiation is worked out from the global in more than
   * half of the lit hours, so that the three close by themselves
   */
  readonly derivedMonths?: readonly number[];
  /** monthly normals the year was made from; not there for a year from a file */
  readonly normals?: MonthlyNormals | undefined;
  /** what was filled in, derived or found odd while reading */
  readonly notices: readonly Notice[];
}

/** One month of the summary. */
export interface MonthSummary {
  /** 1 to 12 */
  readonly month: number;
  /** degC */
  readonly meanTemperature: number;
  /** degC, lowest hour */
  readonly minTemperature: number;
  /** degC, highest hour */
  readonly maxTemperature: number;
  /** kWh/m² in the month */
  readonly globalRadiation: number;
  /** kWh/m² of it that is diffuse */
  readonly diffuseRadiation: number;
  /** diffuse part of the global radiation, 0 to 1 */
  readonly diffuseShare: number;
  /** 0 to 1 */
  readonly meanRelativeHumidity: number;
  /** m/s */
  readonly meanWindSpeed: number;
  /** K d below 18 degC (daily means) */
  readonly heatingDegreeDays18: number;
}

/** A run of cold days with little sun. */
export interface ColdSpell {
  /** days */
  readonly length: number;
  /** first day of the spell, 0 to 364 */
  readonly startDay: number;
  /** degC */
  readonly meanTemperature: number;
  /** degC, lowest hour */
  readonly minTemperature: number;
  /** kWh/m² a day, mean over the spell */
  readonly globalRadiation: number;
}

/** Twelve monthly normals and what is known of the spread about them. */
export interface MonthlyNormals {
  /** twelve values each, January first: degC, mean of the month */
  readonly meanTemperature: readonly number[];
  /** degC, mean of the daily highest */
  readonly meanDailyMaximum: readonly number[];
  /** degC, mean of the daily lowest */
  readonly meanDailyMinimum: readonly number[];
  /** 0 to 1, mean of the month */
  readonly relativeHumidity: readonly number[];
  /** kWh/m² a day on the horizontal */
  readonly globalRadiation: readonly number[];
  /** m/s */
  readonly windSpeed: readonly number[];
  /** K, standard deviation of daily mean temperatures within the month */
  readonly dayToDaySpread: readonly number[];
  /** K, standard deviation of the mean of each month over the years; where not given, the usual */
  readonly monthToMonthSpread?: readonly number[] | undefined;
}

/** Hours of a year below one limit. */
export interface LimitHours {
  /** degC */
  readonly limit: number;
  /** h a year */
  readonly hours: number;
}

/** Result of the climate chapter. */
export interface ClimateResult {
  /** twelve months, January first */
  readonly months: readonly MonthSummary[];
  /** degC, mean of all hours */
  readonly meanTemperature: number;
  /** degC, lowest hour */
  readonly coldestHour: number;
  /** degC, highest hour */
  readonly warmestHour: number;
  /** degC, exceeded in 99.6 % of the hours */
  // deno-lint-ignore camelcase -- the name of the figure
  readonly design99_6: number;
  /** degC, exceeded in 99 % of the hours */
  readonly design99: number;
  /** K d, daily means below 18 degC */
  readonly heatingDegreeDays18: number;
  /** K d, hourly values below 18.3 degC (65 degF) */
  // deno-lint-ignore camelcase -- the name of the figure
  readonly heatingDegreeDays18_3: number;
  /** kWh/m² a year on the horizontal */
  readonly globalRadiation: number;
  /** kWh/m² on the horizontal from December to February */
  readonly winterRadiation: number;
  /** kWh/m² on the horizontal from June to August */
  readonly summerRadiation: number;
  /** hours below each whole ten degrees that the year reaches on both sides, -40 to 30 degC */
  readonly hoursBelow: readonly LimitHours[];
  /** worst spells of 1, 3, 7 and 14 days */
  readonly coldSpells: readonly ColdSpell[];
  /** of the quality report; those of reading stand in the year */
  readonly notices: readonly Notice[];
}
