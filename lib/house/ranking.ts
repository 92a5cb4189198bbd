/** "Do this first": what each improvement of the house brings before any store. @module */
import { showBoth, showSi, showUs } from "../units/mod.ts";
import { min } from "d3-array";
import { hoursBelow } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { withHeater } from "./compute.ts";
import { floorColumn } from "./floor/floor_column.ts";
import { usualCurtain } from "./skin/curtain.ts";
import { houseGeometry } from "./skin/geometry.ts";
import { findGlazing } from "./skin/glazing_table.ts";
import { houseModel } from "./air/model.ts";
import { DRUM_SURFACE } from "./barrels_and_masonry.ts";
import type { HouseGround, HouseInputs } from "./types.ts";
import { layerResistance, WALL_FILMS } from "./skin/walls.ts";
import { runHouseYear } from "./year.ts";

/** One improvement and what a year with it says. */
export interface RankedMeasure {
  /** short name */
  readonly name: string;
  /** what was changed, in words and numbers */
  readonly change: string;
  /** kWh a year to hold the heating set point */
  readonly heatDemand: number;
  /** kWh a year less than the house as it is */
  readonly saved: number;
  /** saved over the demand of the house as it is, 0 to 1 */
  readonly savedShare: number;
  /** degC, coldest hour without heater */
  readonly coldestHour: number;
  /** K that the coldest hour gains */
  readonly coldestHourGain: number;
  /** hours below 0 degC without heater */
  readonly hoursBelowFreezing: number;
}

/** A changed house. */
export interface HouseMeasure {
  /** short name */
  readonly name: string;
  /** what was changed */
  readonly change: string;
  /** the house with it */
  readonly inputs: HouseInputs;
}

/** m² K/W of 50 mm closed-cell board. */
const BOARD = layerResistance({ material: "closed-cell-board", thickness: 0.05 });
/** m³ of water per m² of front glazing: 2.5 US gallons a square foot, extension rule for season extension. */
const WATER_PER_GLAZING = 0.1;

function insulated(transmittance: number | "glazed"): number {
  return transmittance === "glazed"
    ? 1 / (BOARD + WALL_FILMS.inside + WALL_FILMS.outside)
    : 1 / (1 / transmittance + BOARD);
}

/**
 * The usual improvements, each alone, as far as the house does not have them yet.
 *
 * @param inputs the house as it is
 * @returns changed houses; empty never
 */
export function houseMeasures(inputs: HouseInputs): readonly HouseMeasure[] {
  const list: HouseMeasure[] = [];
  const add = (name: string, change: string, changed: Partial<HouseInputs>) =>
    list.push({ name, change, inputs: { ...inputs, ...changed } });
  add("sealing", "leakage halved", {
    leakage: inputs.leakage / 2,
    leakageWind: inputs.leakageWind / 2,
  });
  const next = findGlazing(inputs.glazing).nextBetter;
  if (next !== null) {
    add("one more layer of glazing", `${inputs.glazing} to ${next}`, { glazing: next });
  }
  const knee = inputs.kneeWallHeight > 0;
  const height = knee ? inputs.kneeWallHeight : Math.min(0.9, inputs.eaveHeight);
  add(
    "knee-wall insulation",
    knee
      ? "50 mm closed-cell board"
      : `lowest ${showBoth(height, "length")} covered with 50 mm foam board`,
    { kneeWallHeight: height, kneeWall: knee ? insulated(inputs.kneeWall) : insulated("glazed") },
  );
  if (inputs.northWall === "glazed" || inputs.northWall > 0.35) {
    add("north wall insulation", "50 mm closed-cell board", {
      northWall: insulated(inputs.northWall),
    });
  }
  if (inputs.shape !== "lean-to" && (inputs.northRoof === "glazed" || inputs.northRoof > 0.35)) {
    add("north roof insulation", "50 mm closed-cell board", {
      northRoof: insulated(inputs.northRoof),
    });
  }
  if (inputs.edgeInsulation < BOARD || inputs.edgeInsulationDepth < 0.6) {
    add("perimeter foam", "50 mm closed-cell board, 0.6 m deep", {
      edgeInsulation: Math.max(BOARD, inputs.edgeInsulation),
      edgeInsulationDepth: Math.max(0.6, inputs.edgeInsulationDepth),
    });
  }
  if (inputs.curtain === null) {
    const curtain = usualCurtain(inputs.heatSetPoint);
    const { resistance, coverage, edgeLeak } = curtain;
    add(
      "night curtain",
      `${showBoth(resistance, "resistance")}, ${showSi(coverage, "share")} covered, ` +
        `edges leak ${showSi(edgeLeak, "share")}`,
      { curtain },
    );
  } else {
    add("curtain edges sealed", "edge leak cut to a third", {
      curtain: { ...inputs.curtain, edgeLeak: inputs.curtain.edgeLeak / 3 },
    });
  }
  const front = houseGeometry(inputs).parts
    .filter((part) => part.kind === "glazed" && part.side === "front")
    .reduce((sum, part) => sum + part.area, 0);
  const water = WATER_PER_GLAZING * front;
  add(
    "water barrels",
    `${showSi(water, "volume", 1)} (${showUs(water, "volume")}) more water in drums`,
    {
      waterVolume: inputs.waterVolume + water,
      waterSurface: inputs.waterSurface + water * DRUM_SURFACE,
    },
  );
  return list;
}

/**
 * Runs the year again with each improvement alone and puts the one that saves most heat first.
 * The first row is the house as it is.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param soil properties and annual wave of the soil chapter, layers of the study
 * @param measures improvements to try; the usual ones unless given
 * @returns heat demand of each in kWh a year and what it saves, the house as it is first
 */
export function rankMeasures(
  inputs: HouseInputs,
  climate: ClimateYear,
  soil: HouseGround,
  measures: readonly HouseMeasure[] = houseMeasures(inputs),
): readonly RankedMeasure[] {
  const base = tryHouse(inputs, climate, soil);
  const rows = measures.map((measure): RankedMeasure => {
    const found = tryHouse(measure.inputs, climate, soil);
    const saved = base.heatDemand - found.heatDemand;
    return {
      name: measure.name,
      change: measure.change,
      ...found,
      saved,
      savedShare: base.heatDemand > 0 ? saved / base.heatDemand : 0,
      coldestHourGain: found.coldestHour - base.coldestHour,
    };
  });
  const asIs = {
    name: "as it is",
    change: "",
    ...base,
    saved: 0,
    savedShare: 0,
    coldestHourGain: 0,
  };
  return [asIs, ...rows.toSorted((a, b) => b.saved - a.saved)];
}

function tryHouse(
  inputs: HouseInputs,
  climate: ClimateYear,
  soil: HouseGround,
): Pick<RankedMeasure, "heatDemand" | "coldestHour" | "hoursBelowFreezing"> {
  const model = houseModel(inputs, climate);
  const column = floorColumn({
    geometry: model.geometry,
    edge: inputs,
    properties: soil.properties,
    wave: soil.wave,
    layers: soil.layers,
  });
  const free = runHouseYear(withHeater(model, 0), column).year.airTemperature;
  return {
    heatDemand: runHouseYear(withHeater(model, Infinity), column).ledger.heater,
    coldestHour: min(free)!,
    hoursBelowFreezing: hoursBelow(free, 0),
  };
}
