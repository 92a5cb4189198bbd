/** Two climates side by side. @module */
import { hoursBelow } from "../basics/mod.ts";
import { degreeHoursBelow } from "../basics/mod.ts";
import { summariseClimate } from "./summary.ts";
import type { ClimateResult, ClimateYear } from "./types.ts";

/** One line of the comparison. */
export interface ClimateDifference {
  /** what is compared */
  readonly label: string;
  /** unit of the three numbers */
  readonly unit: string;
  /** figure of the first climate, in the unit of the figure */
  readonly first: number;
  /** figure of the second climate, in the unit of the figure */
  readonly second: number;
  /** second less first, in the unit of the figure */
  readonly difference: number;
}

/**
 * Compares two climates figure by figure: temperatures, design hours, degree-days, degree-hours
 * below 0 and 5 degC, radiation of the year and of each winter month, worst spells.
 *
 * @param first a year
 * @param second another
 * @returns one row a figure, in reading order
 */
export function compareClimates(first: ClimateYear, second: ClimateYear): ClimateDifference[] {
  const left = rowsOf(first, summariseClimate(first));
  const right = rowsOf(second, summariseClimate(second));
  return left.map(([label, unit, value], index) => ({
    label,
    unit,
    first: value,
    second: right[index]![2],
    difference: right[index]![2] - value,
  }));
}

type Row = readonly [label: string, unit: string, value: number];

function rowsOf(year: ClimateYear, result: ClimateResult): Row[] {
  const month = (number: number) => result.months[number - 1]!;
  const spells = result.coldSpells.flatMap((spell): Row[] => [
    [`Worst ${spell.length}-day spell, mean temperature`, "degC", spell.meanTemperature],
    [`Worst ${spell.length}-day spell, global radiation`, "kWh/m² per day", spell.globalRadiation],
  ]);
  return [
    ["Mean temperature", "degC", result.meanTemperature],
    ["January mean temperature", "degC", month(1).meanTemperature],
    ["July mean temperature", "degC", month(7).meanTemperature],
    ["Coldest hour", "degC", result.coldestHour],
    ["Design temperature, 99.6 % of hours warmer", "degC", result.design99_6],
    ["Design temperature, 99 % of hours warmer", "degC", result.design99],
    ["Degree-days below 18 degC", "K d", result.heatingDegreeDays18],
    ["Degree-hours below 5 degC", "K h", degreeHoursBelow(year.dryBulb, 5)],
    ["Hours below 0 degC", "h", hoursBelow(year.dryBulb, 0)],
    ["Annual global radiation", "kWh/m²", result.globalRadiation],
    ["Global radiation in December", "kWh/m²", month(12).globalRadiation],
    ["Global radiation in January", "kWh/m²", month(1).globalRadiation],
    ["Global radiation in February", "kWh/m²", month(2).globalRadiation],
    ...spells,
  ];
}
