/** What the house chapter answers. @module */
import { cropTable } from "./crop_table.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import {
  findCrop,
  type HouseInputs,
  type HouseLedger,
  type HouseResult,
  type SummarisedHouse,
} from "../../house/mod.ts";
import { answerCard } from "../kit/answer.ts";
import { firstFreezeText, freezingText, frostLight } from "./frost_words.ts";
import { numbers, table } from "../kit/table.ts";

/** The answer card; the range takes the leakage at half and at twice its value. */
export function answer(result: SummarisedHouse): DisplayItem {
  const { lossShares, leakageRange, freezingRange } = result.summary;
  const largest = lossShares.reduce((a, b) => a.conductance > b.conductance ? a : b);
  const [half, twice] = leakageRange.map((loss) => shownBoth(loss, "conductance"));
  return answerCard({
    light: frostLight(result.crop.freezing.hours),
    answer:
      `In the screening year (floor as separate columns), without heating, the house falls to ${
        shownBoth(result.coldestHour, "temperature")
      } and spends ${shown(result.crop.freezing.hours, "hours")} below freezing; ${
        firstFreezeText(result.crop.freezing.first)
      }. Holding the heating set point would take ${shownBoth(result.heatDemand, "energy")}, ${
        shownBoth(result.peakHeatLoss, "heatFlow")
      } at the design night.`,
    range:
      `Leakage is the least certain part: with half of it the house loses ${half}, with twice ${twice}, compared with ${
        shownBoth(result.lossCoefficient, "conductance")
      } here. House temperatures are not known to better than a kelvin: ${
        freezingText(freezingRange)
      }.`,
    drivenBy: `${largest.name}, ${shown(largest.share, "share")} of the loss.`,
    changesWith: "the largest bar were cut: a night curtain, a second layer, a sealed skin, an " +
      "insulated north wall and edge come before a store.",
  });
}

/** Size of the house. */
export function geometryTable(result: SummarisedHouse): DisplayItem {
  const { floorArea, volume, perimeter } = result.geometry;
  const { glazed, opaque } = result.summary.areas;
  return numbers([
    { label: "floor", value: floorArea, kind: "area" },
    { label: "volume", value: volume, kind: "volume" },
    { label: "perimeter", value: perimeter, kind: "length" },
    { label: "glazed skin", value: glazed, kind: "area" },
    { label: "opaque skin", value: opaque, kind: "area" },
  ]);
}

/**
 * The UA table: each surface of the skin with its loss as at night, then leakage and floor edge,
 * then all together.
 */
export function skinTable(result: SummarisedHouse): DisplayItem {
  const total = {
    name: "total",
    kind: "",
    area: null,
    transmittance: null,
    conductance: result.lossCoefficient,
  };
  return table([...result.summary.losses, total], [
    { head: "part", value: (row) => row.name },
    { head: "kind", value: (row) => row.kind },
    { head: "area", value: (row) => row.area, kind: "area" },
    { head: "U-value, curtain open", value: (row) => row.transmittance, kind: "transmittance" },
    { head: "U·A at night", value: (row) => row.conductance, kind: "conductance", digits: 1 },
  ]);
}

/** First and last hour below freezing and below the crop's limits, and the hours between. */
export function frostTable(result: HouseResult, inputs: HouseInputs): DisplayItem {
  return cropTable(findCrop(inputs.crop).name, [
    { where: "house, screening year", year: result.crop },
    { where: "outdoors", year: result.cropOutdoors },
  ]);
}

const LEDGER_WORDS: readonly (readonly [keyof HouseLedger, string])[] = [
  ["solar", "sun absorbed inside"],
  ["heater", "heater"],
  ["glazing", "through glazing"],
  ["opaque", "through opaque parts"],
  ["leakage", "leakage"],
  ["vent", "vents"],
  ["floor", "floor soil"],
  ["evaporation", "used in evaporation"],
  ["mass", "water and other mass"],
  ["air", "stored in the air"],
];

/** Heat of the year by part, free running beside held at the set point. */
export function ledgerTable(result: HouseResult): DisplayItem {
  const { freeRunningLedger: free, heatedLedger: heated } = result;
  return table(LEDGER_WORDS, [
    { head: "heat of the screening year, gains positive", value: ([, words]) => words },
    { head: "free-running", value: ([key]) => free[key], kind: "energy" },
    { head: "held at the set point", value: ([key]) => heated[key], kind: "energy" },
  ]);
}
