/** A year of the house on its own floor soil, repeated until the soil comes back to its start. @module */
import { sum } from "d3-array";
import { HOUR, HOURS_PER_YEAR, KILOWATT_HOUR } from "../basics/mod.ts";
import { type FloorColumn, steadyColumn } from "./floor/floor_column.ts";
import { floorBoundary, floorIce, floorStepper } from "./floor/floor_stepper.ts";
import type { LumpState } from "../soil/mod.ts";
import { initialHouseState } from "./air/model.ts";
import { stepHouse } from "./air/step.ts";
import { emptyHouseYear, recordStep } from "./year_record.ts";
import type {
  HouseFlows,
  HouseLedger,
  HouseModel,
  HouseState,
  HouseWater,
  HouseYear,
} from "./types.ts";

/** Steps in an hour unless said; the controls act in each. */
const STEPS_PER_HOUR = 2;
const SPIN_UP_YEARS = 4;
/** K of change of any layer from one year's start to the next that ends the spin-up */
const PERIODIC = 0.04;

/** A year and its sums. */
export interface YearRun {
  /** hourly year */
  readonly year: HouseYear;
  /** heat balance of the year */
  readonly ledger: HouseLedger;
  /** water balance of the year */
  readonly water: HouseWater;
  /** K: largest change of a soil layer over the year */
  readonly drift: number;
}

/** Flows of heat that together warm the air, in the order in which they are summed. */
const HEAT_FLOWS = [
  "solar",
  "glazing",
  "opaque",
  "leakage",
  "vent",
  "heater",
  "floor",
  "evaporation",
  "mass",
] as const;
const SUMMED = [...HEAT_FLOWS, "air", "evaporated", "condensed", "ventedVapour"] as const;

/** Sums of the flows over the steps of a year, and of the heat lost through the edge. */
type Sums = Record<(typeof SUMMED)[number] | "edge", number>;

function zeroSums(): Sums {
  return Object.fromEntries([...SUMMED, "edge"].map((flow) => [flow, 0])) as Sums;
}

interface OneYear {
  readonly year: HouseYear;
  readonly sums: Sums;
  readonly meanDriving: number;
  readonly meanSoil: Float64Array;
  readonly end: HouseState;
}

function oneYear(
  model: HouseModel,
  column: FloorColumn,
  soil: Float64Array,
  ice: LumpState | null,
  start: HouseState,
  stepsPerHour: number,
): OneYear {
  const stepSeconds = HOUR / stepsPerHour;
  const stepper = floorStepper(column, stepSeconds, ice);
  const year = emptyHouseYear();
  const sums = zeroSums();
  const meanSoil = new Float64Array(soil.length);
  let [state, driving] = [start, 0];
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    for (let part = 0; part < stepsPerHour; part++) {
      const boundary = floorBoundary(stepper, stepper.prepare(soil, hour));
      const step = stepHouse(model, state, hour, stepSeconds, boundary);
      sums.edge -= stepper.finish(soil, -step.flows.floor, hour);
      addFlows(sums, step.flows);
      recordStep(year, model, hour, step, 1 / stepsPerHour);
      driving += step.floorDriving;
      state = step.state;
    }
    for (let i = 0; i < soil.length; i++) meanSoil[i]! += soil[i]! / HOURS_PER_YEAR;
  }
  return {
    year,
    sums,
    meanDriving: driving / HOURS_PER_YEAR / stepsPerHour,
    meanSoil,
    end: state,
  };
}

function addFlows(sums: Sums, flows: HouseFlows): void {
  for (const flow of SUMMED) sums[flow] += flows[flow];
}

/**
 * Runs the house on its floor column for whole years until the soil is periodic; the last year
 * counts. After each year the layers are moved to the steady profile of the year's mean driving
 * temperature, which takes the slow part of the start away at once.
 *
 * @param model the house
 * @param column floor soil
 * @param stepsPerHour number of steps, 2 unless given
 * @returns hourly series, heat and water balance of the year, and how far the soil still moves, K
 */
export function runHouseYear(
  model: HouseModel,
  column: FloorColumn,
  stepsPerHour: number = STEPS_PER_HOUR,
): YearRun {
  const outside = sum(model.outsideTemperature) / HOURS_PER_YEAR;
  let soil = steadyColumn(column, Math.max(outside + 6, model.inputs.heatSetPoint));
  const ice = floorIce(column, soil);
  let state = initialHouseState(model);
  for (let attempt = 1;; attempt++) {
    const before = soil.slice();
    const run = oneYear(model, column, soil, ice, state, stepsPerHour);
    const drift = soil.reduce((most, value, i) => Math.max(most, Math.abs(value - before[i]!)), 0);
    if (drift < PERIODIC || attempt > SPIN_UP_YEARS) {
      return {
        year: run.year,
        drift,
        ledger: makeLedger(run.sums, HOUR / stepsPerHour),
        water: makeWater(
          run.sums,
          HOUR / stepsPerHour,
          (run.end.humidityRatio - state.humidityRatio) * model.dryAirMass,
        ),
      };
    }
    const steady = steadyColumn(column, run.meanDriving);
    const shifted = soil.map((value, i) => value + steady[i]! - run.meanSoil[i]!);
    // the year's answer overshoots by a quarter: four fifths of the way get there sooner
    const way = attempt > 1 ? 0.8 : 1;
    soil = shifted.map((value, i) => before[i]! + way * (value - before[i]!));
    state = run.end;
  }
}

function makeLedger(sums: Sums, seconds: number): HouseLedger {
  const toHours = seconds / KILOWATT_HOUR;
  const parts = HEAT_FLOWS.map((flow) => sums[flow]);
  const total = sum(parts);
  const gains = sum(parts, (value) => Math.max(0, value));
  const heat = Object.fromEntries(
    ([...HEAT_FLOWS, "edge", "air"] as const).map((flow) => [flow, sums[flow] * toHours]),
  ) as Omit<HouseLedger, "residual">;
  return { ...heat, residual: gains > 0 ? (total - sums.air) / gains : 0 };
}

function makeWater(sums: Sums, seconds: number, stored: number): HouseWater {
  const [evaporated, condensed, vented] = [
    sums.evaporated * seconds,
    sums.condensed * seconds,
    sums.ventedVapour * seconds,
  ];
  const throughput = evaporated + condensed + Math.abs(vented);
  return {
    evaporated,
    condensed,
    vented,
    stored,
    residual: throughput > 0 ? (evaporated - condensed - vented - stored) / throughput : 0,
  };
}
