/** What the year hangs on and nobody knows well: leaf area, what lies on the floor, snow on the glazing. @module */
import { min } from "d3-array";
import { alone, each, hoursBelow, type Steps, type Task } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { houseFloor, withHeater } from "./compute.ts";
import { findCrop } from "./crop/crop_table.ts";
import { findFloorCover } from "./floor/floor_cover.ts";
import { houseModel } from "./air/model.ts";
import type { HouseGround, HouseInputs, HouseResult } from "./types.ts";
import { runHouseYear } from "./year.ts";

/** One assumption changed. */
export interface AssumedHouse {
  /** what it is about */
  readonly about: "plan" | "leaves" | "floor" | "snow" | "light";
  /** in words */
  readonly name: string;
  /** the house with it */
  readonly inputs: HouseInputs;
}

/** Screening year of one assumption. */
export interface AssumedYear {
  /** what it is about; the house as planned is first */
  readonly about: AssumedHouse["about"];
  /** the assumption in words */
  readonly name: string;
  /** degC, coldest hour of the unheated house */
  readonly coldestHour: number;
  /** h a year below 0 degC, unheated */
  readonly hoursBelowFreezing: number;
  /** h a year below the crop's killing limit, unheated */
  readonly hoursBelowCropLimit: number;
  /** kWh a year to hold the heating set point */
  readonly heatDemand: number;
}

/** Leaf areas over floor area, all year: seedlings, greens cut small, greens, fruit up the wires. */
const LEAF_AREAS = [0.5, 1, 2, 4];
/** Share of paths that is tried; common practice, no source. */
const PATHS = 0.3;
/** Share of the light that goes to the air at once by a common rule; no source. */
const FIXED_LIGHT = 0.1;
/** Share of the light that white paint takes up; from memory. */
const WHITE_WALLS = 0.2;

/**
 * The usual range of what is not known: leaf area, mulch and paths where the floor is bare, snow on
 * the glazing where it is left out, where the light falls and what the walls make of it.
 *
 * @param inputs house section of the study
 * @returns houses with one assumption changed, leaf area as a ratio to the floor
 */
export function usualAssumptions(inputs: HouseInputs): AssumedHouse[] {
  const list: AssumedHouse[] = [];
  const add = (about: AssumedHouse["about"], name: string, change: Partial<HouseInputs>) =>
    list.push({ about, name, inputs: { ...inputs, ...change } });
  if (inputs.crop !== "bare") {
    for (const leafArea of LEAF_AREAS) {
      add("leaves", `leaf area ${leafArea} all year`, { leafArea });
    }
  }
  if (inputs.bedCover === "bare") {
    add("floor", findFloorCover("straw").name, { bedCover: "straw" });
  }
  if (inputs.pathShare === 0) {
    add("floor", "30 % of the floor paved", { pathShare: PATHS, pathCover: "paving" });
  }
  if (inputs.glazingSnow === "none") {
    add("snow", "snow lies on the glazing", { glazingSnow: "lies" });
  }
  if (inputs.lightToAir === null) {
    add("light", "a tenth of the light to the air", { lightToAir: FIXED_LIGHT });
  }
  if (inputs.wallAbsorptance > 2 * WHITE_WALLS) {
    add("light", "white walls and roof inside", { wallAbsorptance: WHITE_WALLS });
  }
  return list;
}

/**
 * Runs the screening year again with each assumption alone; the house as planned is first.
 *
 * @param inputs house section of the study
 * @param climate one year of weather
 * @param soil properties and annual wave of the soil chapter, layers of the study
 * @param planned the chapter's own result
 * @param assumptions to try, the usual ones unless given
 * @returns coldest hour in degC, hours below 0 degC and the crop's limit, heat demand in kWh a year
 */
export function assumedYears(
  inputs: HouseInputs,
  climate: ClimateYear,
  soil: HouseGround,
  planned: Pick<HouseResult, "coldestHour" | "crop" | "heatDemand">,
  assumptions: readonly AssumedHouse[] = usualAssumptions(inputs),
): readonly AssumedYear[] {
  return alone(assumedSteps(inputs, climate, soil, planned, assumptions));
}

/** The assumptions in pieces. Parameters and result are those of {@link assumedYears}. */
export function* assumedSteps(
  inputs: HouseInputs,
  climate: ClimateYear,
  soil: HouseGround,
  planned: Pick<HouseResult, "coldestHour" | "crop" | "heatDemand">,
  assumptions: readonly AssumedHouse[] = usualAssumptions(inputs),
): Steps<readonly AssumedYear[]> {
  const years = yield* each(
    screeningTask,
    assumptions.map((assumed) => ({ inputs: assumed.inputs, climate, soil })),
  );
  return [
    {
      about: "plan",
      name: "as planned",
      coldestHour: planned.coldestHour,
      hoursBelowFreezing: planned.crop.freezing.hours,
      hoursBelowCropLimit: planned.crop.killing.hours,
      heatDemand: planned.heatDemand,
    },
    ...assumptions.map(({ about, name }, k) => ({ about, name, ...years[k]! })),
  ];
}

/** A house on its ground, to be screened. */
export interface ScreeningQuestion {
  /** house section of the study */
  readonly inputs: HouseInputs;
  /** one year of weather */
  readonly climate: ClimateYear;
  /** properties, wave and layers of the soil */
  readonly soil: HouseGround;
}

function screeningYear(
  { inputs, climate, soil }: ScreeningQuestion,
): Omit<AssumedYear, "about" | "name"> {
  const model = houseModel(inputs, climate);
  const column = houseFloor(model, soil);
  const air = runHouseYear(withHeater(model, 0), column).year.airTemperature;
  return {
    coldestHour: min(air)!,
    hoursBelowFreezing: hoursBelow(air, 0),
    hoursBelowCropLimit: hoursBelow(air, findCrop(inputs.crop).killingLimit),
    heatDemand: runHouseYear(withHeater(model, Infinity), column).ledger.heater,
  };
}

/** The screening year of one house. */
export const screeningTask: Task<ScreeningQuestion, Omit<AssumedYear, "about" | "name">> = {
  name: "house.screening",
  run: screeningYear,
};
