/** What the house chapter answers. @module */
import {
  type DisplayItem,
  hourName,
  hoursBelow,
  MONTHS,
  showBoth,
  showSi,
} from "../../charts/mod.ts";
import type { HouseInputs, HouseLedger, HouseResult } from "../../house/mod.ts";
import { answer, type Light } from "../answer.ts";
import { numbers, table } from "../table.ts";

/** "first below freezing on 3 Oct 04:00", or that it never is. */
export function firstFreezeText(hour: number | null): string {
  return hour === null
    ? "it never falls below freezing"
    : `after midsummer it first falls below freezing on ${hourName(hour)}`;
}

/** "it would freeze for 1100 h to 1500 h": were the house 1 K warmer or colder than computed. */
export function freezingRange(airTemperature: ArrayLike<number>): string {
  const [low, high] = [hoursBelow(airTemperature, -1), hoursBelow(airTemperature, 1)];
  const sooner = "were it 1 K warmer or colder all year than computed, it would ";
  return high === 0
    ? `${sooner}not freeze in either case`
    : `${sooner}freeze for ${showSi(low, "hours")} to ${showSi(high, "hours")}`;
}

/** Yes where the house never freezes, no where it freezes for more than a twentieth of the year. */
export function frostLight(hoursBelowFreezing: number): Light {
  if (hoursBelowFreezing === 0) return "yes";
  return hoursBelowFreezing < 8760 / 20 ? "partly" : "no";
}

/** The answer card; the range takes the leakage at half and at twice its value. */
export function houseAnswer(result: HouseResult): DisplayItem {
  const leak = result.lossParts.find((part) => part.name.includes("leak"))?.conductance ?? 0;
  const largest = result.lossParts.reduce((a, b) => a.conductance > b.conductance ? a : b);
  const loss = (factor: number) =>
    showBoth(result.lossCoefficient + (factor - 1) * leak, "conductance");
  return answer({
    light: frostLight(result.hoursBelowFreezingNoStore),
    answer: `Without a store and without heat the house falls to ${
      showBoth(result.coldestHourNoStore, "temperature")
    } and spends ${showSi(result.hoursBelowFreezingNoStore, "hours")} a year below freezing; ${
      firstFreezeText(result.firstFreezeNoStore)
    }. Holding the heating set point would take ${showBoth(result.heatDemand, "energy")} a year, ${
      showBoth(result.peakHeatLoss, "heatFlow")
    } at the design night.`,
    range: `Leakage is the least known part: at half of it the house loses ${loss(0.5)}, at twice ${
      loss(2)
    }, against ${
      showBoth(result.lossCoefficient, "conductance")
    } here. The house is not known to better than a kelvin: ${
      freezingRange(result.freeRunning.airTemperature)
    }.`,
    drivenBy: `${largest.name}, ${
      showSi(largest.conductance / result.lossCoefficient, "share")
    } of the loss.`,
    changesWith: "the largest bar were cut: a night curtain, a second layer, a sealed skin, an " +
      "insulated north wall and edge come before a store.",
  });
}

/** Size of the house. */
export function geometryTable(result: HouseResult): DisplayItem {
  const { floorArea, volume, perimeter, parts } = result.geometry;
  const area = (kind: string) =>
    parts.filter((part) => part.kind === kind).reduce((sum, part) => sum + part.area, 0);
  return numbers([
    { label: "floor", value: floorArea, kind: "area" },
    { label: "volume", value: volume, kind: "volume" },
    { label: "perimeter", value: perimeter, kind: "length" },
    { label: "glazed skin", value: area("glazed"), kind: "area" },
    { label: "opaque skin", value: area("opaque"), kind: "area" },
  ]);
}

/** The surfaces of the skin. */
export function skinTable(result: HouseResult): DisplayItem {
  return table(result.geometry.parts, [
    { head: "part", value: (part) => part.name },
    { head: "kind", value: (part) => part.kind },
    { head: "area", value: (part) => part.area, kind: "area" },
    { head: "U-value", value: (part) => part.transmittanceHeat, kind: "transmittance" },
  ]);
}

const LEDGER_WORDS: readonly (readonly [keyof HouseLedger, string])[] = [
  ["solar", "sun taken up inside"],
  ["heater", "heater"],
  ["glazing", "through glazing"],
  ["opaque", "through opaque parts"],
  ["leakage", "leakage"],
  ["vent", "vents"],
  ["floor", "floor soil"],
  ["evaporation", "turned into vapour"],
  ["mass", "water and other mass"],
  ["air", "kept in the air"],
];

/** Heat of the year by part, free running beside held at the set point. */
export function houseLedgerTable(result: HouseResult): DisplayItem {
  const { freeRunningLedger: free, heatedLedger: heated } = result;
  return table(LEDGER_WORDS, [
    { head: "heat of the year, gains positive", value: ([, words]) => words },
    { head: "running free", value: ([key]) => free[key], kind: "energy" },
    { head: "held at the set point", value: ([key]) => heated[key], kind: "energy" },
  ]);
}

/** Heat demand and water on the cover month by month. */
export function houseMonthTable(result: HouseResult): DisplayItem {
  return table(MONTHS, [
    { head: "month", value: (month) => month },
    { head: "heat demand", value: (_, index) => result.heatDemandByMonth[index]!, kind: "energy" },
    {
      head: "water condensed on the cover",
      value: (_, index) => result.condensateByMonth[index]!,
      kind: "waterMass",
    },
  ]);
}

/** What holds the heating set point, in words, for the input line. */
export function setPointText(inputs: HouseInputs): string {
  return `heating set point ${showBoth(inputs.heatSetPoint, "temperature")}`;
}
