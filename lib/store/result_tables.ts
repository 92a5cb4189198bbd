/** Tables that the store chapter writes. @module */
import { HOURS_PER_YEAR, type ResultTable, resultTable, seriesColumns } from "../basics/mod.ts";
import { timeOfHour } from "../climate/dates.ts";
import { cropLimitTable } from "../house/mod.ts";
import type { SummarisedStore } from "./summary.ts";

/** Names of the quarters in column heads. */
const QUARTERS = ["Jan-Mar", "Apr-Jun", "Jul-Sep", "Oct-Dec"];

/** Heat by day, month and quarter; temperatures; fans; the years after building. */
export function storeTables(result: SummarisedStore): ResultTable[] {
  return [
    ...heatTables(result),
    ...quarterTables(result),
    ...temperatureTables(result),
    ...yearTables(result),
  ];
}

function heatTables({ summary, months }: SummarisedStore): ResultTable[] {
  return [
    resultTable("store-heat-by-month", summary.heatMonths, [
      ["month", "", (row) => row.month + 1],
      ["charged, sensible", "kWh", (row) => row.sensibleIn],
      ["charged, latent", "kWh", (row) => row.latentIn],
      ["discharged, sensible", "kWh", (row) => row.sensibleOut],
      ["discharged, latent", "kWh", (row) => row.latentOut],
      ["fan", "kWh", (row) => row.fan],
      ["water left in the tubes", "kg", (row) => row.condensate],
      ["back-up heat with the store", "kWh", (row) => months[row.month]!.backupHeat],
      ["back-up heat, fan always off", "kWh", (row) => months[row.month]!.backupHeatNoFan],
    ]),
    resultTable("store-heat-by-day", summary.heatDays, [
      ["day of the year from 1", "", (row) => row.day + 1],
      ["charged, sensible", "kWh", (row) => row.sensibleIn],
      ["charged, latent", "kWh", (row) => row.latentIn],
      ["discharged, sensible", "kWh", (row) => row.sensibleOut],
      ["discharged, latent", "kWh", (row) => row.latentOut],
      ["fan", "kWh", (row) => row.fan],
    ]),
    resultTable("store-heat-flows", summary.flows, [
      ["from", "", (row) => row.from],
      ["to", "", (row) => row.to],
      ["heat", "kWh", (row) => row.heat],
    ]),
    resultTable("store-fan-by-month", summary.fan.months, [
      ["month", "", (row) => row.month + 1],
      ["fan while charging", "kWh", (row) => row.charge],
      ["fan while discharging", "kWh", (row) => row.discharge],
      ["running", "h", (row) => row.hours],
    ]),
  ];
}

function quarterTables({ summary, quarters, tagged }: SummarisedStore): ResultTable[] {
  return [
    resultTable("store-recovery-by-day", summary.recoveryByDay, [
      ["season", "", ({ quarter }) => quarter === null ? "year" : QUARTERS[quarter]!],
      ["charged", "kWh", (row) => row.heatIn],
      ["discharged", "kWh", (row) => row.heatOut],
      ["recovery over the period", "1", (row) => row.recovery],
      ["charging days", "d", (row) => row.chargeDays],
      ["median next-morning recovery", "1", (row) => row.dayRecovery],
      ["charged per charging day and metre of tube", "kWh/(m d)", (row) => row.heatPerDayAndMetre],
      ["fan", "kWh", (row) => row.fan],
      ["discharged per fan energy", "1", (row) => row.heatPerFanEnergy],
    ]),
    resultTable("store-quarters", quarters, [
      ["discharged in", "", (_, quarter) => QUARTERS[quarter]!],
      ...seriesColumns<readonly number[]>(
        [...QUARTERS.map((name) => `charged in ${name}`), "ground without the store"],
        "kWh",
        (row, origin) => row[origin] ?? null,
      ),
    ]),
    resultTable("store-fate-of-heat", tagged, [
      ["charged in", "", (_, quarter) => QUARTERS[quarter]!],
      ["charged", "kWh", (row) => row.putIn],
      ["discharged by the tubes", "kWh", (row) => row.givenBack],
      ["of that in the same quarter", "kWh", (row) => row.sameQuarter],
      ["up through the floor", "kWh", (row) => row.throughFloor],
      ["lost to the ground around", "kWh", (row) => row.lost],
      ["remaining", "kWh", (row) => row.remaining],
    ]),
    resultTable("store-charge-by-quarter", summary.chargeByQuarter, [
      ["quarter", "", (_, quarter) => QUARTERS[quarter]!],
      ["lowest state of charge", "1", (row) => row.lowest],
      ["mean state of charge", "1", (row) => row.mean],
      ["highest state of charge", "1", (row) => row.highest],
    ]),
  ];
}

function temperatureTables({ summary, crop, cropNoFan }: SummarisedStore): ResultTable[] {
  const { outdoors, noFan, house, store } = summary.dailyMeans;
  return [
    resultTable("store-hours-below", summary.hoursBelow, [
      ["limit", "degC", (row) => row.limit],
      ["fan always off, below", "h", (row) => row.noFan],
      ["with the store, below", "h", (row) => row.store],
    ]),
    cropLimitTable("store-crop-limits", [
      { air: "with the store", year: crop },
      { air: "fan always off", year: cropNoFan },
    ]),
    resultTable("store-worst-week", summary.worstWeek.days, [
      ["day starts", "", (row) => timeOfHour(row.hour % HOURS_PER_YEAR)],
      ["outdoors lowest", "degC", (row) => row.outdoorsLowest],
      ["fan always off, lowest", "degC", (row) => row.noFanLowest],
      ["with the store, lowest", "degC", (row) => row.storeLowest],
      ["sensible into soil", "kWh", (row) => row.sensible],
      ["latent into soil", "kWh", (row) => row.latent],
    ]),
    resultTable("store-daily-means", Array.from(outdoors, (_, day) => day), [
      ["day of the year from 1", "", (day) => day + 1],
      ["outdoors", "degC", (day) => outdoors[day]!],
      ["house, fan always off", "degC", (day) => noFan[day]!],
      ["house with the store", "degC", (day) => house[day]!],
      ["between the tubes", "degC", (day) => store[day]!],
    ]),
  ];
}

function yearTables({ summary }: SummarisedStore): ResultTable[] {
  const { hour, day, threeDays } = summary.heaterPeaks;
  const peaks = [["hour", hour], ["day", day], ["three days", threeDays]] as const;
  return [
    resultTable("store-first-years", summary.firstYears, [
      ["year", "", (row) => row.year],
      ["settled", "", (row) => row.repeats],
      ["charged", "kWh", (row) => row.heatIn],
      ["discharged", "kWh", (row) => row.heatOut],
      ["discharged, share of the settled year", "1", (row) => row.share],
    ]),
    resultTable("store-heater-peaks", peaks, [
      ["highest", "", ([span]) => span],
      ["mean heat of the back-up heater", "W", ([, heat]) => heat],
    ]),
  ];
}
