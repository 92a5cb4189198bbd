/** Tables that the house chapter writes. @module */
import {
  MONTH_ABBREVIATIONS,
  type ResultTable,
  resultTable,
  seriesColumns,
  type YearBelow,
} from "../basics/mod.ts";
import { dateAfterMidsummer, timeOfHour } from "../climate/dates.ts";
import type { AssumedYear } from "./assumptions.ts";
import type { CropYear } from "./crop/crop_year.ts";
import type { OutdoorLimit } from "./crop/limits_outdoors.ts";
import {
  ANGLES,
  type GlazingAngles,
  type GlazingLight,
  type PlaneLight,
} from "./skin/glazing_light.ts";
import type { SummarisedHouse } from "./summary.ts";
import type { HouseLedger } from "./types.ts";

/** A year of air against the crop's limits. */
export interface AirYear {
  /** where the air is, such as "with the store" */
  readonly air: string;
  /** its year, degC */
  readonly year: CropYear;
}

/**
 * Hours of one or more airs below freezing and below each limit of the crop.
 *
 * @param name of the file
 * @param airs each with its year, degC
 */
export function cropLimitTable(name: string, airs: readonly AirYear[]): ResultTable {
  const kinds = ["killing", "damage", "freezing", "growth"] as const;
  const rows = kinds.flatMap((kind) => airs.map(({ air, year }) => ({ kind, air, ...year[kind] })));
  const date = (hour: number | null) => hour === null ? null : dateAfterMidsummer(hour);
  return resultTable<LimitYear>(name, rows, [
    ["limit of", "", (row) => row.kind],
    ["limit", "degC", (row) => row.limit],
    ["air", "", (row) => row.air],
    ["below", "h", (row) => row.hours],
    ["longest spell", "h", (row) => row.longestSpell],
    ["degree-hours", "K h", (row) => row.degreeHours],
    ["first day after 1 July", "", (row) => date(row.first)],
    ["last day before 1 July", "", (row) => date(row.last)],
  ]);
}

interface LimitYear extends YearBelow {
  readonly kind: keyof CropYear;
  readonly air: string;
}

const LEDGER: readonly (readonly [keyof HouseLedger, string])[] = [
  ["solar", "sun"],
  ["heater", "heater"],
  ["glazing", "glazing"],
  ["opaque", "solid walls and roof"],
  ["leakage", "leakage"],
  ["vent", "vents"],
  ["floor", "floor soil"],
  ["edge", "of it through the edge"],
  ["evaporation", "evaporation"],
  ["mass", "water and other mass"],
  ["air", "air"],
];

/** Losses, limits, months and the coldest week of the house in its screening year. */
export function houseTables(result: SummarisedHouse): ResultTable[] {
  return [
    ...lossTables(result),
    ...monthTables(result),
    cropLimitTable("house-crop-limits", [
      { air: "house, screening year", year: result.crop },
      { air: "outdoors", year: result.cropOutdoors },
    ]),
    resultTable("house-hours-below", result.summary.hoursBelow, [
      ["limit", "degC", (row) => row.limit],
      ["outdoors below", "h", (row) => row.outdoors],
      ["house in the screening year below", "h", (row) => row.inside],
    ]),
    resultTable("house-coldest-week", result.summary.coldestWeek.days, [
      ["day starts", "", (row) => timeOfHour(row.hour)],
      ["outdoors lowest", "degC", (row) => row.outdoorsLowest],
      ["house lowest", "degC", (row) => row.insideLowest],
      ["house highest", "degC", (row) => row.insideHighest],
      ["horizontal radiation", "kWh/m2", (row) => row.radiation],
      ["heat demand, screening year", "kWh", (row) => row.heatDemand],
    ]),
  ];
}

function lossTables({ summary, freeRunningLedger, heatedLedger }: SummarisedHouse): ResultTable[] {
  return [
    resultTable("house-losses", summary.losses, [
      ["part", "", (row) => row.name],
      ["kind", "", (row) => row.kind],
      ["area", "m2", (row) => row.area],
      ["U-value, curtain open", "W/(m2 K)", (row) => row.transmittance],
      ["loss at night", "W/K", (row) => row.conductance],
    ]),
    resultTable("house-heat-balance", LEDGER, [
      ["part, gains positive", "", ([, words]) => words],
      ["free-running screening year", "kWh", ([key]) => freeRunningLedger[key]],
      ["held at the set point, screening year", "kWh", ([key]) => heatedLedger[key]],
    ]),
  ];
}

function monthTables({ summary, heatDemandByMonth }: SummarisedHouse): ResultTable[] {
  return [
    resultTable("house-temperatures-by-month", summary.temperatureMonths, [
      ["month", "", (row) => row.month + 1],
      ["outdoors lowest", "degC", (row) => row.outdoorsLowest],
      ["house lowest, screening year", "degC", (row) => row.insideLowest],
      ["house highest, screening year", "degC", (row) => row.insideHighest],
    ]),
    resultTable("house-humidity-by-month", summary.humidityMonths, [
      ["month", "", (row) => row.month + 1],
      ["mean relative humidity", "1", (row) => row.meanHumidity],
      ["above 90 %", "h", (row) => row.dampHours],
      ["evaporated by crop and soil", "kg", (row) => row.evaporated],
      ["condensed on the cover", "kg", (row) => row.condensed],
    ]),
    resultTable("house-heat-by-month", summary.heatMonths, [
      ["month", "", (row) => row.month + 1],
      ["heat demand, screening year", "kWh", (row) => heatDemandByMonth[row.month]!],
      ["sun", "kWh", (row) => row.solar],
      ["floor soil", "kWh", (row) => row.floor],
      ["glazing", "kWh", (row) => row.glazing],
      ["solid walls and roof", "kWh", (row) => row.opaque],
      ["leakage", "kWh", (row) => row.leakage],
      ["vents", "kWh", (row) => row.vent],
      ["evaporation", "kWh", (row) => row.evaporation],
    ]),
  ];
}

/** The screening year with one assumption changed, as planned first. */
export function assumptionTables(years: readonly AssumedYear[]): ResultTable[] {
  return [
    resultTable("house-assumptions", years, [
      ["assumed", "", (row) => row.name],
      ["coldest hour, screening year", "degC", (row) => row.coldestHour],
      ["below freezing, screening year", "h", (row) => row.hoursBelowFreezing],
      ["below the crop's killing limit, screening year", "h", (row) => row.hoursBelowCropLimit],
      ["heat to hold the set point, screening year", "kWh", (row) => row.heatDemand],
    ]),
  ];
}

/** Cold outdoors against the limits of the crop and the set point. */
export function outdoorLimitTables(limits: readonly OutdoorLimit[]): ResultTable[] {
  return [
    resultTable("house-limits-outdoors", limits, [
      ["limit of", "", (row) => row.name],
      ["limit", "degC", (row) => row.limit],
      ["outdoors below", "h", (row) => row.hours],
      ["degree-hours", "K h", (row) => row.degreeHours],
    ]),
  ];
}

const LIGHT_KINDS = [
  ["hayDavies", "sky bright round the sun"],
  ["isotropic", "uniform sky"],
  ["open", "open site"],
] as const;

/** Light on the glazed planes by month, and through glazings by angle. */
export function glazingTables({ planes, all, angles, inside }: GlazingLight): ResultTable[] {
  const lit = [...planes, all].flatMap((plane) =>
    LIGHT_KINDS.map(([kind, words]) => ({ plane, kind, words }))
  );
  type Lit = { plane: PlaneLight; kind: (typeof LIGHT_KINDS)[number][0]; words: string };
  return [
    resultTable<Lit>("house-light-on-glazing", lit, [
      ["plane", "", (row) => row.plane.name],
      ["area", "m2", (row) => row.plane.area],
      ["sky", "", (row) => row.words],
      ...seriesColumns<Lit>(
        MONTH_ABBREVIATIONS,
        "kWh/m2",
        (row, month) => row.plane.months[month]![row.kind],
      ),
      ["year", "kWh/m2", (row) => row.plane.year[row.kind]],
    ]),
    resultTable("house-light-through-glazing", ANGLES.filter((angle) => angle % 5 === 0), [
      ["angle of incidence", "deg", (angle) => angle],
      ...seriesColumns<number>(
        angles.map(({ glazing }: GlazingAngles) => glazing.id),
        "1",
        (angle, column) => angles[column]!.beam[angle]!,
      ),
    ]),
    resultTable("house-light-inside", inside, [
      ["month", "", (row) => MONTH_ABBREVIATIONS[row.month]!],
      ["let in", "kWh", (row) => row.letIn],
      ["crop", "kWh", (row) => row.crop],
      ["floor", "kWh", (row) => row.floor],
      ["barrels and masonry", "kWh", (row) => row.mass],
      ["walls and roof to the air", "kWh", (row) => row.air],
      ["out through the glazing", "kWh", (row) => row.out],
      ["out through walls and roof", "kWh", (row) => row.throughSolid],
    ]),
  ];
}
