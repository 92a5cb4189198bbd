/** Pictures of the store chapter: heat day by day, and how full the store is. @module */
import { max, mean, min, sum } from "d3-array";
import * as Plot from "@observablehq/plot";
import type { StoreResult, StoreYear } from "../../store/types.ts";
import { monthOfHour } from "../../basics/mod.ts";
import { axisDate, dayName, monthTicks, QUARTERS } from "../kit/calendar.ts";
import { dataTable } from "../kit/data_table.ts";
import { showSi } from "../../units/mod.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { lineLegend, timePlot } from "../kit/lines.ts";
import { PALETTE } from "../kit/palette.ts";

/** Heat of one day, kWh; what is given back is counted positive too. */
export interface HeatDay {
  /** day of the year from 0 */
  readonly day: number;
  /** sensible heat put in, kWh */
  readonly sensibleIn: number;
  /** latent heat put in, kWh */
  readonly latentIn: number;
  /** sensible heat given back, kWh */
  readonly sensibleOut: number;
  /** latent heat given back, kWh */
  readonly latentOut: number;
  /** kWh of fan energy */
  readonly fan: number;
}

/**
 * Heat into and out of the tube walls by day. A day may start later than at midnight, so that a
 * sunny day and the night after it count as one.
 *
 * @param year hourly year of the store
 * @param startHour hour of the clock at which a day starts
 */
export function heatDays(year: StoreYear, startHour = 0): HeatDay[] {
  const hours = year.sensible.length;
  return Array.from({ length: Math.floor(hours / 24) }, (_, day) => {
    const heat = (series: Float64Array, sign: 1 | -1) => {
      let total = 0;
      for (let hour = 0; hour < 24; hour++) {
        total += Math.max(0, sign * series[(day * 24 + startHour + hour) % hours]!) / 1000;
      }
      return total;
    };
    return {
      day,
      sensibleIn: heat(year.sensible, 1),
      latentIn: heat(year.latent, 1),
      sensibleOut: heat(year.sensible, -1),
      latentOut: heat(year.latent, -1),
      fan: heat(year.fanPower, 1),
    };
  });
}

/** Heat of every day: put in above the line, given back below, sensible and latent apart. */
export function dailyHeatChart(result: StoreResult): DisplayItem {
  const days = heatDays(result.year);
  const best = days.reduce((a, b) =>
    a.sensibleIn + a.latentIn >= b.sensibleIn + b.latentIn ? a : b
  );
  const bars = days.flatMap((row) => {
    const x1 = axisDate(row.day * 24);
    const x2 = axisDate(row.day * 24 + 24);
    return [
      { x1, x2, y1: 0, y2: row.sensibleIn, colour: PALETTE.warm },
      { x1, x2, y1: row.sensibleIn, y2: row.sensibleIn + row.latentIn, colour: PALETTE.latent },
      { x1, x2, y1: 0, y2: -row.sensibleOut, colour: PALETTE.cold },
      { x1, x2, y1: -row.sensibleOut, y2: -row.sensibleOut - row.latentOut, colour: PALETTE.ink },
    ].filter((bar) => Math.abs(bar.y2 - bar.y1) > 0.05);
  });
  return figure({
    height: 300,
    marginLeft: 70,
    x: {
      type: "utc",
      label: null,
      ticks: monthTicks(),
      tickFormat: "%b",
      domain: [axisDate(0), axisDate(8760)],
    },
    y: { label: "heat into the soil, kWh a day", grid: true },
    color: { type: "identity" },
    marks: [
      Plot.rect(bars, { x1: "x1", x2: "x2", y1: "y1", y2: "y2", fill: "colour", inset: 0 }),
      Plot.ruleY([0], { stroke: PALETTE.ink }),
    ],
  }, {
    title: "Heat charged and discharged, day by day",
    alt: `Heat into the tube walls and back, every day of the year. Most is charged on ${
      dayName(best.day)
    }: ${showSi(best.sensibleIn + best.latentIn, "energy")}.`,
    note: "Above the line: charged into the soil. Below: discharged into the house.",
    legend: [
      { label: "charged, sensible", colour: PALETTE.warm },
      { label: "charged, latent (condensing)", colour: PALETTE.latent },
      { label: "discharged, sensible", colour: PALETTE.cold },
      { label: "discharged, latent (evaporating)", colour: PALETTE.ink },
    ],
  });
}

/** What a season's days put in and get back; kWh. */
export interface SeasonRecovery {
  /** quarter, or the year */
  readonly name: string;
  /** kWh put in */
  readonly heatIn: number;
  /** kWh given back */
  readonly heatOut: number;
  /** kWh of fan energy */
  readonly fan: number;
  /** days on which more than 1 kWh goes in */
  readonly chargeDays: number;
  /** middle of those days' ratios of heat given back by the next morning to heat put in; null: none */
  readonly dayRecovery: number | null;
}

/** Hour of the clock at which a day of sun and its night begin. */
const MORNING = 6;
/** kWh below which a day does not count as one of charging. */
const CHARGED = 1;

/** Recovery by day (06:00 to 06:00) and by season; the last row is the year. */
export function seasonRecoveries(result: StoreResult): SeasonRecovery[] {
  const days = heatDays(result.year, MORNING);
  const row = (name: string, own: readonly HeatDay[]): SeasonRecovery => {
    const heatIn = own.map((day) => day.sensibleIn + day.latentIn);
    const heatOut = own.map((day) => day.sensibleOut + day.latentOut);
    const ratios = own.flatMap((_, k) => heatIn[k]! > CHARGED ? [heatOut[k]! / heatIn[k]!] : [])
      .sort((a, b) => a - b);
    return {
      name,
      heatIn: sum(heatIn),
      heatOut: sum(heatOut),
      fan: sum(own.map((day) => day.fan)),
      chargeDays: ratios.length,
      dayRecovery: ratios.length === 0 ? null : ratios[Math.floor(ratios.length / 2)]!,
    };
  };
  const quarter = (day: HeatDay) => Math.floor(monthOfHour(day.day * 24) / 3);
  return [
    ...QUARTERS.map((name, k) => row(name, days.filter((day) => quarter(day) === k))),
    row("year", days),
  ];
}

/** How full the store is through the year, between its own coldest and warmest. */
export function stateOfChargeChart(result: StoreResult): DisplayItem {
  const percent = Float64Array.from(result.stateOfCharge, (share) => share * 100);
  const lines = [
    { label: "state of charge", colour: PALETTE.soil, series: percent, width: 1.6 },
  ];
  const monthly = QUARTERS.map((name, quarter) => {
    const own = percent.filter((_, hour) => Math.floor(monthOfHour(hour) / 3) === quarter);
    const limits = own.reduce(
      (found, value) => ({ low: Math.min(found.low, value), high: Math.max(found.high, value) }),
      { low: Infinity, high: -Infinity },
    );
    return { name, ...limits, mean: mean(own)! };
  });
  const temperatures = result.year.storeTemperature;
  const low = min(temperatures)!;
  const high = max(temperatures)!;
  return figure(
    timePlot({ lines, start: 0, hours: 8760, axis: "state of charge, %", limits: [0, 100] }),
    {
      title: "How full the store is",
      alt: `State of charge through the year: 0 % is ${showSi(low, "temperature")} between the ` +
        `tubes, 100 % is ${showSi(high, "temperature")}.`,
      note:
        "A thermometer between the tubes, scaled between its lowest and highest readings of the year. " +
        "The house can only draw heat from soil warmer than itself.",
      legend: lineLegend(lines),
      table: dataTable(monthly, [
        { head: "quarter", value: (row) => row.name },
        { head: "lowest, %", value: (row) => row.low, digits: 0 },
        { head: "mean, %", value: (row) => row.mean, digits: 0 },
        { head: "highest, %", value: (row) => row.high, digits: 0 },
      ]),
    },
  );
}
