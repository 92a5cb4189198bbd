/** The store chapter in words and tables: control, seasons, other houses and stores. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { siText } from "../kit/si_text.ts";
import { QUARTERS } from "../kit/calendar.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import { VARIANT_COLUMNS, wayColumns } from "./ways_columns.ts";
import type { HouseResult } from "../../house/types.ts";
import {
  type ComparedVariant,
  HOUSE_BAND,
  type HouseWay,
  INTAKE_BAND,
  NEAR_FREEZING,
  type ReturnedPart,
  STORE_BAND,
  type StoreInputs,
  type SummarisedStore,
} from "../../store/mod.ts";
import { numbers, paragraph, table } from "../kit/table.ts";

/**
 * The thermostat of the study in words, with its own settings.
 *
 * @param inputs of the store
 * @param title line above the table
 */
export function controlTable(inputs: StoreInputs, title?: string): DisplayItem {
  const kelvin = (value: number) => shownBoth(value, "temperatureDifference");
  const degrees = (value: number) => shownBoth(value, "temperature");
  const rows = [
    {
      what: "charging starts",
      when: `the air under the ridge is above ${degrees(inputs.chargeAbove)} and ${
        kelvin(inputs.chargeStart)
      } warmer than the soil between the tubes`,
    },
    {
      what: "charging stops",
      when: `it is less than ${kelvin(inputs.chargeStop)} warmer than the soil, or ${
        kelvin(INTAKE_BAND)
      } below the limit`,
    },
    {
      what: "discharging starts",
      when: `the house is below ${degrees(inputs.dischargeBelow)} and the soil ${
        kelvin(inputs.dischargeStart)
      } warmer than the house`,
    },
    {
      what: "discharging stops",
      when: `the soil is less than ${kelvin(inputs.dischargeStop)} warmer, or the house ${
        kelvin(HOUSE_BAND)
      } above the limit`,
    },
    {
      what: "discharging waits",
      when: `the house is more humid than ${
        shown(inputs.humidityLockOut, "share")
      }, unless it is below ${degrees(NEAR_FREEZING)}`,
    },
    {
      what: "each run",
      when: `lasts at least ${showNumber(inputs.minimumRun / 60, 0)} minutes`,
    },
    {
      what: "vents",
      when: inputs.ventsFirst === true
        ? "no charging while they stand open"
        : "the store is charged first; the vents release what it cannot take",
    },
    ...seasonRows(inputs),
    {
      what: "air direction",
      when: inputs.reverse ? "reversed for discharging" : "the same for charging and discharging",
    },
  ];
  return table(rows, [
    { head: "", value: (row) => row.what },
    { head: "when", value: (row) => row.when },
  ], title);
}

/** Seasons and limits of the ground, where the study has them. */
function seasonRows(inputs: StoreInputs): { readonly what: string; readonly when: string }[] {
  const { fanSeason = "all year", chargeSeason = "all year" } = inputs;
  const { chargeBelowGround, maximumStore } = inputs;
  const degrees = (value: number) => shownBoth(value, "temperature");
  return [
    ...(fanSeason === "all year" ? [] : [{ what: "the fan may run", when: fanSeason }]),
    ...(chargeSeason === "all year" ? [] : [{ what: "it may charge", when: chargeSeason }]),
    ...(chargeBelowGround === undefined ? [] : [{
      what: "it may charge",
      when: `while the undisturbed ground at the tubes is below ${degrees(chargeBelowGround)}`,
    }]),
    ...(maximumStore === undefined ? [] : [{
      what: "charging stops",
      when: `the soil between the tubes is above ${degrees(maximumStore)}, and starts again ${
        shownBoth(STORE_BAND, "temperatureDifference")
      } below`,
    }]),
  ];
}

/** Recovery by day and by season, with what it costs in electricity. */
export function recoveryTable(result: SummarisedStore): DisplayItem {
  return table(
    result.summary.recoveryByDay,
    [
      {
        head: "season",
        value: ({ quarter }) => quarter === null ? "year" : QUARTERS[quarter]!,
      },
      { head: "charged", value: (row) => row.heatIn, kind: "energy", us: false },
      { head: "discharged", value: (row) => row.heatOut, kind: "energy", us: false },
      { head: "recovery over the period", value: (row) => row.recovery, kind: "share" },
      { head: "charging days", value: (row) => row.chargeDays, digits: 0 },
      { head: "median next-morning recovery", value: (row) => row.dayRecovery, kind: "share" },
      {
        head: "charged per charging day and metre of tube",
        value: (row) => row.heatPerDayAndMetre,
        kind: "energy",
        digits: 3,
        us: false,
      },
      { head: "fan", value: (row) => row.fan, kind: "energy", us: false },
      {
        head: "discharged per kWh of fan",
        value: (row) => row.heatPerFanEnergy,
        kind: "ratio",
        digits: 1,
      },
    ],
    "Days run from 06:00 to 06:00, so that a sunny day and its night count as one",
  );
}

const SEASONS = ["January to March", "April to June", "July to September", "October to December"];

/** The first row of the quarter-to-quarter table, read aloud. */
export function quartersWords(result: SummarisedStore): DisplayItem {
  const { heat, sameQuarter, autumn, summer, ground } = result.summary.firstQuarter;
  if (!(heat > 0)) return paragraph("From January to March the tubes discharge no heat.");
  const words = (part: ReturnedPart) =>
    `${shown(part.heat, "energy")} (${siText(part.share, "share")})`;
  return paragraph(
    `Read the first row: of the ${shown(heat, "energy")} discharged by the tubes from ` +
      `${SEASONS[0]}, ${words(sameQuarter)} were charged in a first quarter, ${
        words(autumn)
      } from ${SEASONS[3]} and ${words(summer)} from ${SEASONS[1]} and ${SEASONS[2]}; ${
        words(ground)
      } would have been in the ground if the tubes had never charged it. Over the whole year ${
        siText(result.carriedAcrossSeasons, "share", "none")
      } of the heat discharged was charged in an earlier quarter.`,
  );
}

/** The four houses in numbers. */
export function waysTable(ways: readonly HouseWay[]): DisplayItem {
  return table(ways, wayColumns());
}

/** What the curtain and the store save, alone and together. */
export function waysWords(ways: readonly HouseWay[]): DisplayItem {
  const find = (store: boolean, curtain: boolean) =>
    ways.find((way) => way.store === store && way.curtain === curtain)!;
  const both = find(true, true);
  const curtain = find(false, true).saved;
  const store = find(true, false).saved;
  if (find(false, false).backupHeat < 1) {
    return paragraph("There is no heat to save: each house holds its set point without heating.");
  }
  const first = curtain >= store ? "The curtain saves more" : "The store saves more";
  return paragraph(
    `The curtain alone saves ${shownBoth(curtain, "energy")} a year, the store alone ${
      shownBoth(store, "energy")
    }, both together ${
      shownBoth(both.saved, "energy")
    }. ${first}; behind a curtain the store saves ${shownBoth(both.savedByStore!, "energy")} more.`,
  );
}

/** Other stores in numbers. */
export function variantsTable(variants: readonly ComparedVariant[]): DisplayItem {
  return table(variants, VARIANT_COLUMNS);
}

/** How large a heater must be that holds the set point beside the store. */
export function heaterTable(result: SummarisedStore, house: HouseResult): DisplayItem {
  const peaks = result.summary.heaterPeaks;
  return numbers([
    {
      label: "house on its design night, steady loss",
      value: house.peakHeatLoss,
      kind: "heatFlow",
    },
    { label: "highest hour of the year, with the store", value: peaks.hour, kind: "heatFlow" },
    { label: "highest day, with the store", value: peaks.day, kind: "heatFlow" },
    { label: "highest three days, with the store", value: peaks.threeDays, kind: "heatFlow" },
  ], "Heater size to hold the set point");
}
