/** A placed table made into a whole year: gaps filled, the rest derived or set by default. @module */
import { relativeHumidityFromDewPoint, standardPressure } from "../../air/mod.ts";
import { describeHour, describeLocation, HOURS_PER_YEAR, type Notice } from "../../basics/mod.ts";
import { hourlySun } from "../../sun/mod.ts";
import { findGaps, LONGEST_GAP } from "../gaps.ts";
import { completeRadiation } from "./complete_radiation.ts";
import { rowsOffTheHour, sumsOfPartHours } from "./row_times.ts";
import { type Completion, fillStraight, hasValues, type HourSeries, tell } from "./fill_gaps.ts";
import { refuseImpossible } from "./impossible.ts";
import { firstRowOf, type HourRows, valuesByHour } from "../read/hour_rows.ts";
import { type ClimateQuantity, QUANTITY_RULES } from "../read/quantities.ts";
import { FaultList, type TableLayout, type TableValues } from "../read/table.ts";
import type { ClimateYear } from "../types.ts";

/** Wind speed taken where a file has none, m/s. Common practice, no source. */
export const DEFAULT_WIND_SPEED = 3;

/**
 * Makes a whole climate year of a placed table.
 *
 * Missing hours in runs of at most {@link LONGEST_GAP} are filled (radiation in proportion to the
 * sun, the rest straight between its neighbours) and listed; longer runs are refused, but wind,
 * pressure, long-wave radiation and albedo, which have defaults. Humidity comes from the dew point,
 * direct and diffuse radiation from the global (Erbs, Klein & Duffie 1982 [erbs-1982]) where the
 * file has none.
 *
 * @param layout the table
 * @param hours rows of each hour
 * @param values SI values by row
 * @param mendShift true to move radiation that certainly stands in the wrong hours
 * @returns the year
 * @throws {InputErrors} for missing quantities and long gaps
 */
export function completeYear(
  layout: TableLayout,
  hours: HourRows,
  values: TableValues,
  mendShift = false,
): ClimateYear {
  const notices: Notice[] = [...layout.notices];
  const sun = hourlySun(layout.place);
  const series: HourSeries = {};
  for (const [quantity, column] of Object.entries(values) as [ClimateQuantity, Float64Array][]) {
    series[quantity] = valuesByHour(hours, column);
  }
  notices.push(...sumsOfPartHours(layout, hours, series), ...rowsOffTheHour(layout, hours));
  const context: Completion = {
    layout,
    hours,
    sun,
    series,
    notices,
    faults: new FaultList(),
    mendShift,
  };
  refuseMissingQuantities(context);
  refuseImpossible(context);
  const dryBulb = fillStraight(context, "dryBulb")!;
  tellFahrenheit(context);
  const relativeHumidity = humidity(context, dryBulb);
  const radiation = completeRadiation(context);
  const windSpeed = optional(context, "windSpeed", DEFAULT_WIND_SPEED);
  const pressure = optional(context, "pressure", standardPressure(layout.place.elevation));
  const longwave = series.skyLongwave === undefined
    ? undefined
    : fillStraight(context, "skyLongwave");
  context.faults.throwIfAny();
  return {
    place: layout.place,
    source: layout.file,
    layout: layout.layout,
    dryBulb,
    relativeHumidity,
    ...radiation,
    windSpeed,
    pressure,
    skyLongwave: longwave ?? null,
    albedo: albedo(context),
    notices,
  };
}

function refuseMissingQuantities({ series, layout }: Completion): void {
  const faults = new FaultList();
  const location = { file: layout.file, line: Math.max(1, layout.firstLine - 1) };
  const need = (words: string) =>
    faults.add(`Cannot read the climate: expected a column of ${words}, found none`, location);
  if (!hasValues(series.dryBulb)) need("dry-bulb temperature");
  if (!hasValues(series.relativeHumidity) && !hasValues(series.dewPoint)) {
    need("relative humidity or dew point");
  }
  const parts = hasValues(series.directNormal) && hasValues(series.diffuseHorizontal);
  if (!hasValues(series.globalHorizontal) && !parts) {
    need("global radiation (or both direct and diffuse)");
  }
  faults.throwIfAny();
}

/** Temperatures no place on earth has, but many have in degF, are kept as they are and told. */
function tellFahrenheit(context: Completion): void {
  const { layout, series, hours } = context;
  const limit = QUANTITY_RULES.dryBulb.high;
  const hot = [...series.dryBulb!.keys()].filter((hour) => series.dryBulb![hour]! > limit);
  if (hot.length === 0) return;
  const plan = layout.columns.find((column) => column.quantity === "dryBulb")!;
  const line = layout.firstLine + firstRowOf(hours, hot[0]!);
  const location = describeLocation({ file: layout.file, line, column: plan.head });
  tell(
    context,
    `${location}: dry-bulb temperature is above ${limit} degC in ${hot.length} hours: the column looks ` +
      "like degF; give its unit as degF in a columns file. Do not trust anything computed from it",
    "warning",
  );
}

function humidity(context: Completion, dryBulb: Float64Array): Float64Array {
  const { series } = context;
  tellDewPointAbove(context, dryBulb);
  if (!hasValues(series.relativeHumidity)) {
    const dew = fillStraight(context, "dewPoint")!;
    return dryBulb.map((temperature, hour) =>
      relativeHumidityFromDewPoint(temperature, dew[hour]!)
    );
  }
  const relative = fillStraight(context, "relativeHumidity")!;
  let over = 0;
  const result = relative.map((value) => {
    if (value > 1.005) over++;
    return Math.min(1, value);
  });
  if (over > 0) {
    tell(context, `Relative humidity above 100 % in ${over} hours: taken as 100 %`, "warning");
  }
  return result;
}

/** Rounding to whole degrees may set a dew point this far above the dry bulb, K. */
const ROUNDING = 1;

function tellDewPointAbove(context: Completion, dryBulb: Float64Array): void {
  const dew = context.series.dewPoint;
  if (dew === undefined) return;
  const above = [...dew.keys()].filter((hour) => dew[hour]! > dryBulb[hour]! + ROUNDING);
  if (above.length === 0) return;
  tell(
    context,
    `Dew point above the dry bulb in ${above.length} ${
      above.length === 1 ? "hour" : "hours"
    }, first ${describeHour(above[0]!)}: ` +
      (hasValues(context.series.relativeHumidity)
        ? "the file's relative humidity is used"
        : "the air is taken as saturated"),
    "warning",
  );
}

/** Wind or pressure: filled, or the default where the file has none or too little. */
function optional(
  context: Completion,
  quantity: "windSpeed" | "pressure",
  value: number,
): Float64Array {
  const { words, unit } = QUANTITY_RULES[quantity];
  const given = context.series[quantity];
  const shown = `${Number(value.toPrecision(5))} ${unit}`;
  if (!hasValues(given)) {
    tell(context, `No ${words} in the file: ${shown} used for every hour`);
    return new Float64Array(HOURS_PER_YEAR).fill(value);
  }
  const long = findGaps((hour) => Number.isNaN(given![hour]!)).filter((run) =>
    run.length > LONGEST_GAP
  );
  for (const run of long) given!.fill(value, run.start, run.start + run.length);
  if (long.length > 0) {
    const hours = long.reduce((sum, run) => sum + run.length, 0);
    tell(
      context,
      `${words} missing for ${hours} hours in long gaps: ${shown} used there`,
      "warning",
    );
  }
  return fillStraight(context, quantity)!;
}

function albedo(context: Completion): Float64Array | null {
  const given = context.series.albedo;
  if (!hasValues(given)) return null;
  if (given!.every((value) => Number.isNaN(value) || value === 0)) {
    tell(context, "Albedo is 0 in every hour of the file: treated as missing");
    return null;
  }
  const mean = given!.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0) /
    given!.reduce((count, value) => count + (Number.isNaN(value) ? 0 : 1), 0);
  return given!.map((value) => Number.isNaN(value) ? mean : value);
}
