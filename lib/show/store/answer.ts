/** What the store chapter answers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { hourName, QUARTERS } from "../kit/calendar.ts";
import { showNumber, showPower } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { FirstYear, SummarisedStore } from "../../store/mod.ts";
import { findCrop, type HouseInputs, type HouseResult } from "../../house/mod.ts";
import type { StoreResult } from "../../store/types.ts";
import { answerCard } from "../kit/answer.ts";
import { cropTable } from "../house/crop_table.ts";
import { killingText, savedText } from "./crop_words.ts";
import { numbers, paragraph, table } from "../kit/table.ts";
import { firstFreezeText, freezingText, frostLight, needText } from "../house/frost_words.ts";

/** The answer card. */
export function answer(result: SummarisedStore): DisplayItem {
  const { freezingRange } = result.summary;
  const without = result.cropNoFan.freezing.hours;
  return answerCard({
    light: frostLight(result.crop.freezing.hours),
    answer:
      `With the store the house falls to ${
        shownBoth(result.coldestHour, "temperature")
      } instead of ${shownBoth(result.coldestHourNoFan, "temperature")} with the fan always ` +
      `off, and spends ${shown(result.crop.freezing.hours, "hours")} instead of ${
        shown(without, "hours")
      } below freezing; ${killingText(result)}; ${savedText(result)}; ${
        firstFreezeText(result.crop.freezing.first)
      }.` + needText(without),
    range:
      `The heat balance closes to ${
        showPower(result.balanceResidual)
      } of the heat moved, but house temperatures are not known to better than a kelvin: ${
        freezingText(freezingRange)
      }. The soil (conductivity to about ±25 %), the leakage and the year itself add to that: run ` +
      `the study again with each of them changed.`,
    drivenBy: `the surplus sun by day: ${chargedText(result)}; with the warmth of the ground ` +
      `itself ${shownBoth(result.heatOut, "energy")} is discharged for ${
        shown(result.fanEnergy, "electricity")
      } of fan energy.`,
    changesWith: `the house lost less: holding the set point takes ${
      shownBoth(result.backupHeat, "energy")
    } with the store, ${shownBoth(Math.abs(result.savedHeat), "energy")} ${
      result.savedHeat >= 0 ? "less" : "more"
    } than with the fan always off. A curtain or better sealing may save more.`,
  });
}

function chargedText({ heatIn, taggedReturn, summary }: SummarisedStore): string {
  if (taggedReturn === null || summary.latentShare === null) return "no heat is charged";
  return `${shownBoth(heatIn, "energy")} a year is charged, ${
    shown(summary.latentShare, "share")
  } of it as condensing water, and ${
    shown(taggedReturn, "share")
  } of it comes back through the tubes`;
}

/** The store's year in numbers. */
export function summaryTable(result: StoreResult): DisplayItem {
  return numbers([
    {
      label: "back-up heat saved",
      value: result.savedHeat,
      kind: "energy",
      note: "fan always off less with the store",
    },
    { label: "saved per kWh of fan energy", value: result.savedHeatPerFanEnergy, kind: "ratio" },
    {
      label: "charged heat that comes back",
      value: result.taggedReturn,
      kind: "share",
      note: "through the tubes, followed by tags",
    },
    { label: "heat charged", value: result.heatIn, kind: "energy", note: "into the tube walls" },
    { label: "of which latent", value: result.latentIn, kind: "energy", note: "water condensing" },
    {
      label: "heat discharged",
      value: result.heatOut,
      kind: "energy",
      note: "out of the tube walls",
    },
    {
      label: "of which latent",
      value: result.latentOut,
      kind: "energy",
      note: "water evaporating",
    },
    {
      label: "gross recovery",
      value: result.recovery,
      kind: "share",
      note: "discharged over charged, whatever warmed the soil",
    },
    { label: "fan energy", value: result.fanEnergy, kind: "electricity" },
    {
      label: "heat discharged per kWh of fan energy",
      value: result.cop,
      kind: "ratio",
      note: "gross: the bare floor would give part of it too",
    },
    {
      label: "carried over from an earlier quarter",
      value: result.carriedAcrossSeasons,
      kind: "share",
      note: "share of the heat discharged",
    },
    {
      label: "rise of house temperature on cold-season nights",
      value: result.nightLift,
      kind: "temperatureDifference",
      note: "compared with the fan always off; nights below " + shown(8, "temperature", 0) +
        " outdoors",
    },
    { label: "fan hours, charging", value: result.chargeHours, kind: "hours" },
    { label: "fan hours, discharging", value: result.dischargeHours, kind: "hours" },
    { label: "water condensed in the tubes", value: result.condensed, kind: "mass" },
    { label: "of which drained", value: result.drained, kind: "mass" },
    { label: "back-up heat to hold the set point", value: result.backupHeat, kind: "energy" },
    {
      label: "lost at the edge",
      value: result.edgeLoss,
      kind: "energy",
      note: "from the soil outdoors",
    },
    {
      label: "air above 90 % humidity",
      value: result.damp.humid,
      kind: "hours",
      note: `fan always off: ${shown(result.dampNoFan.humid, "hours")}`,
    },
    {
      label: "cover dripping",
      value: result.damp.dripping,
      kind: "hours",
      note: `fan always off: ${shown(result.dampNoFan.dripping, "hours")}`,
    },
    { label: "residual of the heat balance", value: showPower(result.balanceResidual) },
  ]);
}

/** With the fan always off, and with the store. */
export function withWithoutTable(result: SummarisedStore): DisplayItem {
  const rows = [
    {
      name: "fan always off",
      low: result.coldestHourNoFan,
      freezing: result.cropNoFan.freezing.hours,
      heat: result.backupHeatNoFan,
    },
    {
      name: "with the store",
      low: result.coldestHour,
      freezing: result.crop.freezing.hours,
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

/** Hours below freezing and the crop's limits, with the store, with the fan always off, outdoors. */
export function cropLimitsTable(
  result: StoreResult,
  house: HouseResult,
  { crop }: HouseInputs,
): DisplayItem {
  return cropTable(findCrop(crop).name, [
    { where: "with the store", year: result.crop },
    { where: "fan always off", year: result.cropNoFan },
    { where: "outdoors", year: house.cropOutdoors },
  ]);
}

/** Heat given back by the quarter it was put in. */
export function quartersTable(result: StoreResult): DisplayItem {
  return table(result.quarters, [
    { head: "discharged in", value: (_, index) => QUARTERS[index]! },
    ...QUARTERS.map((name, origin) => ({
      head: `charged ${name}`,
      value: (row: readonly number[]) => row[origin]!,
      kind: "energy" as const,
      us: false,
    })),
    {
      head: "undisturbed ground",
      value: (row: readonly number[]) => row[4] ?? null,
      kind: "energy" as const,
      us: false,
    },
  ]);
}

/** What became of the heat put in during each quarter. */
export function seasonTable(result: StoreResult): DisplayItem {
  return table(result.tagged, [
    { head: "charged", value: (_, index) => QUARTERS[index]! },
    { head: "heat", value: (row) => row.putIn, kind: "energy" },
    { head: "discharged by the tubes", value: (row) => row.givenBack, kind: "energy", us: false },
    {
      head: "of which in the same quarter",
      value: (row) => row.sameQuarter,
      kind: "energy",
      us: false,
    },
    { head: "up through the floor", value: (row) => row.throughFloor, kind: "energy", us: false },
    { head: "lost to the ground around", value: (row) => row.lost, kind: "energy", us: false },
  ], "Where the heat went");
}

/** How long the store lasts through a spell without sun. */
export function emptyingTable(result: StoreResult): DisplayItem {
  const { emptying } = result;
  const days = (hours: number | null) =>
    hours === null ? "longer than 60 days" : `${showNumber(hours / 24, 1)} days`;
  return numbers([
    { label: "outdoor temperature held, no sun", value: emptying.outside, kind: "temperature" },
    { label: "discharge falls to half after", value: days(emptying.hoursToHalf) },
    { label: "and to a tenth after", value: days(emptying.hoursToTenth) },
    { label: "heat discharged until then", value: emptying.heatOut, kind: "energy" },
    { label: "back-up heat in the first three days", value: emptying.backupHeat, kind: "energy" },
    {
      label: "the same with the fan always off",
      value: emptying.backupHeatNoFan,
      kind: "energy",
    },
  ], "A sunless cold spell from 1 December, house held at its set point");
}

/** How much of the soil under the floor freezes, when and for how long. */
export function freezingTable(result: StoreResult): DisplayItem {
  const { freezing } = result;
  if (freezing === null) return paragraph("No soil freezes under the floor.");
  return numbers([
    {
      label: "most latent heat set free at a time",
      value: freezing.latentHeat,
      kind: "energy",
      note: `on ${hourName(freezing.mostFrozen)}`,
    },
    {
      label: "soil frozen through, if it lay evenly under the floor",
      value: freezing.frozenDepth,
      kind: "depth",
    },
    { label: "ice somewhere under the floor", value: freezing.hoursFrozen, kind: "hours" },
    { label: "lowest between the tubes", value: freezing.coldest, kind: "temperature" },
    {
      label: "below freezing between the tubes",
      value: freezing.hoursBelowFreezing,
      kind: "hours",
    },
  ], "Soil that freezes");
}

/** Names a row of the first years. */
function firstYearName({ year, repeats, standing }: FirstYear): string {
  if (repeats) return `settled year, from about year ${year}`;
  return `year ${year}, ${standing ? "under a house that has stood for years" : "open ground"}`;
}

/**
 * The first years after building, and the year that repeats.
 *
 * @param result of the store chapter
 * @param existing the first year under a house that has stood for years
 */
export function earlyYearTable(result: SummarisedStore, existing: FirstYear): DisplayItem {
  const { firstYears } = result.summary;
  return table([...firstYears.slice(0, -1), existing, ...firstYears.slice(-1)], [
    { head: "", value: firstYearName },
    { head: "charged", value: (row) => row.heatIn, kind: "energy" },
    { head: "discharged", value: (row) => row.heatOut, kind: "energy" },
    {
      head: "discharged, share of the settled year",
      value: (row) => row.share,
      kind: "sharePrecise",
    },
  ], "The first years, year by year");
}
