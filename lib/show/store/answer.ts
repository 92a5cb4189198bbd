/** What the store chapter answers. @module */
import { min } from "d3-array";
import { hoursBelow } from "../../basics/mod.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { QUARTERS } from "../kit/calendar.ts";
import { showBoth, showNumber, showPower, showSi } from "../../units/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { answerCard } from "../kit/answer.ts";
import { numbers, paragraph, table } from "../kit/table.ts";
import { firstFreezeText, freezingRange, frostLight } from "../house/answer.ts";

/** Says so where the fan is not needed against frost. */
export function needText(hoursBelowFreezingWithout: number): string {
  return hoursBelowFreezingWithout > 0
    ? ""
    : " It would not freeze with the fan never on either: against frost the store is not needed.";
}

/** The answer card. */
export function answer(result: StoreResult): DisplayItem {
  const without = hoursBelow(result.noFan.airTemperature, 0);
  const saved = result.backupHeatNoFan - result.backupHeat;
  return answerCard({
    light: frostLight(result.hoursBelowFreezing),
    answer:
      `With the store the house falls to ${
        showBoth(result.coldestHour, "temperature")
      } instead of ${
        showBoth(min(result.noFan.airTemperature)!, "temperature")
      } with the fan never ` +
      `on, and spends ${showSi(result.hoursBelowFreezing, "hours")} instead of ${
        showSi(without, "hours")
      } below freezing; ${firstFreezeText(result.firstFreeze)}.` + needText(without),
    range:
      `The sums themselves close to ${
        showPower(result.balanceResidual)
      } of the heat moved, but the house is not known to better than a kelvin: ${
        freezingRange(result.year.house.airTemperature)
      }. The soil (conductivity to about ±25 %), the leakage and the year itself move it further: run ` +
      `the study again with each of them changed.`,
    drivenBy: `what the sun leaves over by day: ${
      showBoth(result.heatIn, "energy")
    } a year go in, ${
      showSi(result.latentIn / Math.max(result.heatIn, 1e-9), "share")
    } of it as condensing water; ${showBoth(result.heatOut, "energy")} come back for ${
      showSi(result.fanEnergy, "energy")
    } of fan energy.`,
    changesWith: `the house lost less: holding the set point takes ${
      showBoth(result.backupHeat, "energy")
    } with the store, ${showBoth(Math.abs(saved), "energy")} ${
      saved >= 0 ? "less" : "more"
    } than with the fan never on. A curtain or a sealed skin may save more.`,
  });
}

/** The store's year in numbers. */
export function summaryTable(result: StoreResult): DisplayItem {
  return numbers([
    { label: "heat put in", value: result.heatIn, kind: "energy", note: "into the tube walls" },
    { label: "of that latent", value: result.latentIn, kind: "energy", note: "water condensing" },
    {
      label: "heat given back",
      value: result.heatOut,
      kind: "energy",
      note: "out of the tube walls",
    },
    { label: "of that latent", value: result.latentOut, kind: "energy", note: "water evaporating" },
    { label: "recovery", value: result.recovery, kind: "share", note: "given back over put in" },
    { label: "fan energy", value: result.fanEnergy, kind: "energy" },
    {
      label: "heat given back for 1 kWh of fan energy",
      value: result.cop,
      kind: "ratio",
      note: "gross: the bare floor would give a part of it too",
    },
    {
      label: "carried over from an earlier quarter",
      value: result.carriedAcrossSeasons,
      kind: "share",
      note: "of the heat given back",
    },
    {
      label: "house warmer at night in the cold season",
      value: result.nightLift,
      kind: "temperatureDifference",
      note: "than with the fan never on; nights below 8 degC outdoors",
    },
    { label: "fan hours, charging", value: result.chargeHours, kind: "hours" },
    { label: "fan hours, discharging", value: result.dischargeHours, kind: "hours" },
    { label: "water condensed in the tubes", value: result.condensed, kind: "mass" },
    { label: "of that drained", value: result.drained, kind: "mass" },
    { label: "back-up heat to hold the set point", value: result.backupHeat, kind: "energy" },
    { label: "what the ledger leaves over", value: showPower(result.balanceResidual) },
  ]);
}

/** With the fan never on, and with the store. */
export function withWithoutTable(result: StoreResult): DisplayItem {
  const rows = [
    {
      name: "fan never on",
      low: min(result.noFan.airTemperature)!,
      freezing: hoursBelow(result.noFan.airTemperature, 0),
      heat: result.backupHeatNoFan,
    },
    {
      name: "with the store",
      low: result.coldestHour,
      freezing: result.hoursBelowFreezing,
      heat: result.backupHeat,
    },
  ];
  return table(rows, [
    { head: "", value: (row) => row.name },
    { head: "lowest", value: (row) => row.low, kind: "temperature" },
    { head: "below freezing", value: (row) => row.freezing, kind: "hours" },
    { head: "heat to hold the set point", value: (row) => row.heat, kind: "energy" },
  ]);
}

/** Heat given back by the quarter it was put in. */
export function quartersTable(result: StoreResult): DisplayItem {
  return table(result.quarters, [
    { head: "given back in", value: (_, index) => QUARTERS[index]! },
    ...QUARTERS.map((name, origin) => ({
      head: `put in ${name}`,
      value: (row: readonly number[]) => row[origin]!,
      kind: "energy" as const,
      us: false,
    })),
    {
      head: "ground without the store",
      value: (row: readonly number[]) => row[4] ?? null,
      kind: "energy" as const,
      us: false,
    },
  ]);
}

/** What became of the heat put in during each quarter. */
export function seasonTable(result: StoreResult): DisplayItem {
  return table(result.tagged, [
    { head: "put in", value: (_, index) => QUARTERS[index]! },
    { head: "heat", value: (row) => row.putIn, kind: "energy" },
    { head: "given back by the tubes", value: (row) => row.givenBack, kind: "energy", us: false },
    {
      head: "of that in the same quarter",
      value: (row) => row.sameQuarter,
      kind: "energy",
      us: false,
    },
    { head: "up through the floor", value: (row) => row.throughFloor, kind: "energy", us: false },
    { head: "lost to the ground around", value: (row) => row.lost, kind: "energy", us: false },
  ], "What became of the heat");
}

/** How long the store lasts through a spell without sun. */
export function emptyingTable(result: StoreResult): DisplayItem {
  const { emptying } = result;
  const days = (hours: number | null) =>
    hours === null ? "longer than 60 days" : `${showNumber(hours / 24, 1)} days`;
  return numbers([
    { label: "held outdoors, no sun", value: emptying.outside, kind: "temperature" },
    { label: "heat given back falls to half after", value: days(emptying.hoursToHalf) },
    { label: "and to a tenth after", value: days(emptying.hoursToTenth) },
    { label: "heat given back until then", value: emptying.heatOut, kind: "energy" },
    { label: "back-up heat of the first three days", value: emptying.backupHeat, kind: "energy" },
    {
      label: "the same with the fan never on",
      value: emptying.backupHeatNoFan,
      kind: "energy",
    },
  ], "A sunless cold spell from 1 December, house held at its set point");
}

/** What freezing soil does to the result; nothing to show where the soil stays above freezing. */
export function freezingTable(result: StoreResult): DisplayItem {
  const { freezing } = result;
  if (freezing === null) {
    return paragraph("The soil around the tubes stays above freezing: nothing to correct.");
  }
  return numbers([
    {
      label: "lowest between the tubes, without the heat of freezing",
      value: freezing.coldestLinear,
      kind: "temperature",
      note: "as in the pictures of this chapter",
    },
    { label: "lowest between the tubes, with it", value: freezing.coldest, kind: "temperature" },
    {
      label: "mean shift from November to April",
      value: freezing.meanShift,
      kind: "temperatureDifference",
    },
    {
      label: "below freezing between the tubes, with it",
      value: freezing.hoursBelowFreezing,
      kind: "hours",
    },
  ], "Soil that freezes");
}

/** The first years after building, and the year that repeats. */
export function earlyYearTable(result: StoreResult): DisplayItem {
  const settled = Math.max(result.yearsUntilPeriodic, result.earlyYears.length) + 1;
  const rows = [
    ...result.earlyYears.map((early) => ({ ...early, name: `year ${early.year}` })),
    {
      name: `year that repeats, from about year ${settled}`,
      heatIn: result.heatIn,
      heatOut: result.heatOut,
    },
  ];
  const share = (row: { readonly heatOut: number }) =>
    result.heatOut > 0 ? row.heatOut / result.heatOut : null;
  return table(rows, [
    { head: "", value: (row) => row.name },
    { head: "put in", value: (row) => row.heatIn, kind: "energy" },
    { head: "given back", value: (row) => row.heatOut, kind: "energy" },
    { head: "given back, of the year that repeats", value: share, kind: "sharePrecise" },
  ], "From undisturbed ground, year by year");
}
