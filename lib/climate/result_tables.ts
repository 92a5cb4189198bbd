/** Tables that the climate chapter writes. @module */
import { type ResultTable, resultTable } from "../basics/mod.ts";
import type { Daylight } from "./daylight.ts";
import type { ClimateQuality } from "./mend/quality.ts";
import type { ClimateResult } from "./types.ts";

/** Months, hours below limits and cold spells. */
export function climateTables(result: ClimateResult): ResultTable[] {
  return [
    resultTable("climate-months", result.months, [
      ["month", "", (row) => row.month],
      ["mean temperature", "degC", (row) => row.meanTemperature],
      ["lowest temperature", "degC", (row) => row.minTemperature],
      ["highest temperature", "degC", (row) => row.maxTemperature],
      ["global horizontal radiation", "kWh/m2", (row) => row.globalRadiation],
      ["diffuse horizontal radiation", "kWh/m2", (row) => row.diffuseRadiation],
      ["mean relative humidity", "1", (row) => row.meanRelativeHumidity],
      ["mean wind speed", "m/s", (row) => row.meanWindSpeed],
      ["heating degree-days below 18 degC", "K d", (row) => row.heatingDegreeDays18],
    ]),
    resultTable("climate-hours-below", result.hoursBelow, [
      ["limit", "degC", (row) => row.limit],
      ["outdoors below", "h", (row) => row.hours],
    ]),
    resultTable("climate-cold-spells", result.coldSpells, [
      ["length", "d", (row) => row.length],
      ["first day of the year from 1", "", (row) => row.startDay + 1],
      ["mean temperature", "degC", (row) => row.meanTemperature],
      ["lowest temperature", "degC", (row) => row.minTemperature],
      ["mean daily horizontal radiation", "kWh/(m2 d)", (row) => row.globalRadiation],
    ]),
  ];
}

/** How the radiation of each month fits the sun. */
export function qualityTables({ fits }: ClimateQuality): ResultTable[] {
  return [
    resultTable("climate-radiation-fit", fits, [
      ["month", "", (row) => row.month],
      ["misfit as read", "W/m2", (row) => row.misfit],
      ["misfit an hour earlier", "W/m2", (row) => row.misfitEarlier],
      ["misfit an hour later", "W/m2", (row) => row.misfitLater],
      ["late against the sun", "h", (row) => row.late],
    ]),
  ];
}

/** Paths of the sun and short days. */
export function daylightTables({ paths, shortDays }: Daylight): ResultTable[] {
  return [
    resultTable("climate-sun-paths", paths, [
      ["day of the year from 1", "", (row) => row.day],
      ["highest sun", "deg", (row) => row.highest],
      ["daylight", "h", (row) => row.daylight],
      ["of it behind the skyline", "h", (row) => row.hidden],
    ]),
    resultTable("climate-short-days", shortDays, [
      ["days shorter than", "h", (row) => row.hours],
      ["number of days", "d", (row) => row.count],
      ["first day of the year from 1", "", (row) => row.first],
      ["last day of the year from 1", "", (row) => row.last],
    ]),
  ];
}
