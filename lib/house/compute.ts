/** The house chapter: what the house loses, gains and sweats in its screening year. @module */
import { showBoth, showSi } from "../units/mod.ts";
import { max, mean, min } from "d3-array";
import {
  HOUR,
  hoursBelow,
  lowestRunStart,
  monthlyHeat,
  monthlySums,
  type Notice,
  notice,
} from "../basics/mod.ts";
import { designTemperature } from "../climate/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { findCrop } from "./crop/crop_table.ts";
import { cropYear } from "./crop/crop_year.ts";
import { type FloorColumn, floorColumn } from "./floor/floor_column.ts";
import { hoursShutInLight } from "./skin/curtain.ts";
import { lossParts } from "./skin/losses.ts";
import { houseModel } from "./air/model.ts";
import type { HouseGround, HouseInputs, HouseModel, HouseResult, OwnHeater } from "./types.ts";
import { runHouseYear, type YearRun } from "./year.ts";

/** The same house with another heater, W; Infinity for one without limit, 0 to run free. */
export function withHeater(model: HouseModel, heaterPower: number): HouseModel {
  return { ...model, inputs: { ...model.inputs, heaterPower } };
}

/** The floor soil under a house, as separate columns. */
export function houseFloor(model: HouseModel, soil: HouseGround): FloorColumn {
  const { geometry, inputs, floorFilm } = model;
  const { properties, wave, layers } = soil;
  return floorColumn({ geometry, edge: inputs, film: floorFilm, properties, wave, layers });
}

/**
 * Runs the house alone, its floor soil as separate columns: a free-running screening year, one held
 * at the heating set point, and the steady loss coefficient.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param soil properties and annual wave of the soil chapter, layers of the study
 */
export function houseChapter(
  inputs: HouseInputs,
  climate: ClimateYear,
  soil: HouseGround,
): HouseResult {
  const model = houseModel(inputs, climate);
  const { geometry } = model;
  const column = houseFloor(model, soil);
  const free = runHouseYear(withHeater(model, 0), column);
  const heated = runHouseYear(withHeater(model, Infinity), column);
  const ownHeater = inputs.heaterPower > 0 ? heldBy(model, column) : null;
  const design = designTemperature(climate.dryBulb);
  const warmest = Math.max(inputs.heatSetPoint, inputs.heatSetPointDay);
  const difference = Math.max(0, warmest - design);
  const parts = lossParts({
    inputs,
    geometry,
    dryAirMass: model.dryAirMass,
    edgeLossFactor: column.edgeLossFactor,
    difference,
    windSpeed: mean(climate.windSpeed)!,
  });
  const lossCoefficient = parts.reduce((sum, part) => sum + part.conductance, 0);
  const air = free.year.airTemperature;
  const crop = cropYear(air, findCrop(inputs.crop));
  return {
    geometry,
    lossParts: parts,
    lossCoefficient,
    peakHeatLoss: lossCoefficient * difference,
    heatDemand: heated.ledger.heater,
    ownHeater,
    coldestHour: min(air)!,
    crop,
    cropOutdoors: cropYear(climate.dryBulb, findCrop(inputs.crop)),
    edgeLoss: -free.ledger.edge,
    freeRunning: free.year,
    heated: heated.year,
    freeRunningLedger: free.ledger,
    heatedLedger: heated.ledger,
    freeRunningWater: free.water,
    heatDemandByMonth: monthlyHeat(heated.year.heater),
    condensateByMonth: monthlySums(free.year.condensed).map((flow) => flow * HOUR),
    coldestWeekStart: lowestRunStart(climate.dryBulb, 168),
    edgeLossFactor: column.edgeLossFactor,
    notices: [
      ...houseNotices(model, free, heated, lossCoefficient),
      ...curtainNotices(model, climate),
      ...heaterNotices(ownHeater, heated),
    ],
  };
}

/** The screening year with the study's own heater. */
function heldBy(model: HouseModel, column: FloorColumn): OwnHeater {
  const { year, ledger } = runHouseYear(model, column);
  const power = model.inputs.heaterPower;
  const air = year.airTemperature;
  return {
    power,
    heat: ledger.heater,
    coldestHour: min(air)!,
    hoursBelowFreezing: hoursBelow(air, 0),
    hoursTooSmall:
      air.filter((value, hour) =>
        year.heater[hour]! > 0.999 * power && value < model.setPoint[hour]! - 0.05
      ).length,
  };
}

function heaterNotices(heater: OwnHeater | null, heated: YearRun): Notice[] {
  if (heater === null) return [];
  const power = `The heater of ${showBoth(heater.power, "heatFlow")}`;
  if (heater.hoursTooSmall === 0) {
    const heat = showBoth(heater.heat, "energy");
    return [
      notice("info", "house", `${power} holds the set point through the screening year: ${heat}`),
    ];
  }
  const needed = max(heated.year.heater)!;
  return [notice(
    "warning",
    "house",
    `${power} is too small for ${heater.hoursTooSmall} hours of the screening year: the house falls to ` +
      `${showBoth(heater.coldestHour, "temperature")}; holding the set point needs up to ${
        showBoth(needed, "heatFlow")
      }. ` +
      "Burners must be vented outdoors, have a carbon-monoxide alarm, and be fitted by a licensed installer",
  )];
}

/** What a curtain that stays shut by day takes from the crop. */
function curtainNotices(model: HouseModel, climate: ClimateYear): Notice[] {
  const hours = hoursShutInLight(model, climate);
  if (hours === 0) return [];
  return [notice(
    "warning",
    "house",
    `The curtain is shut in ${showSi(hours, "hours")} with light enough to open it (dullDays, ` +
      "clock): it keeps heat, and the crop stands in the dark; leaves that stay dark and damp for " +
      "days rot",
  )];
}

function houseNotices(
  model: HouseModel,
  free: YearRun,
  heated: YearRun,
  lossCoefficient: number,
): Notice[] {
  const notices: Notice[] = [];
  const { inputs, geometry } = model;
  const perFloor = lossCoefficient / geometry.floorArea;
  if (perFloor > 10) {
    notices.push(notice(
      "warning",
      "house",
      `The house loses ${
        showBoth(perFloor, "transmittance")
      } of floor area: seal, insulate and curtain it before building a store`,
    ));
  }
  if (inputs.curtain !== null && inputs.curtain.edgeLeak === 0) {
    notices.push(notice(
      "info",
      "house",
      "The night curtain is assumed tight at its edges: real ones leak 5 to 20 % (common practice)",
    ));
  }
  const damp = hoursBelow(free.year.relativeHumidity.map((value) => -value), -0.95);
  if (damp > 2000) {
    notices.push(notice(
      "caution",
      "house",
      `The air is above 95 % humidity for ${damp} hours of the screening year: expect mould on leaves and wood; ventilate when the weather allows and keep leaves dry overnight`,
    ));
  }
  const drift = Math.max(free.drift, heated.drift);
  if (drift > 0.1) {
    notices.push(notice(
      "warning",
      "house",
      `The floor soil still changes by ${
        showBoth(drift, "temperatureDifference")
      } a year at the end of the spin-up`,
    ));
  }
  if (inputs.leakage + inputs.leakageWind * 3 < 0.3) {
    notices.push(notice(
      "caution",
      "house",
      "A house this tight needs deliberate ventilation: for humidity, carbon dioxide for the plants, radon and any burner's fumes; ask a licensed installer about burners",
    ));
  }
  return notices;
}
