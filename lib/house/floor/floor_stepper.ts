/** The floor's soil moved on step by step, together with the house above. @module */
import {
  type FreezingCurve,
  latentContent,
  type LumpState,
  type LumpStep,
  potentialAt,
  settleLumps,
  temperatureAt,
} from "../../soil/mod.ts";
import type { HouseBoundary } from "../types.ts";
import type { FloorColumn } from "./floor_column.ts";

/** The column's implicit step of one length, factored once. */
export interface FloorStepper {
  /** W/K between what drives the floor surface and the soil's answer, film in series */
  readonly conductance: number;
  /** Prepares a step; gives the temperature the first layer would have without floor heat. */
  prepare(temperatures: Float64Array, hour: number): number;
  /** Ends the step with the heat that went in, W; gives the heat that left sideways, W. */
  finish(temperatures: Float64Array, heat: number, hour: number): number;
}

/** Ice of a column's layers that goes with their temperatures; null where nothing freezes. */
export function floorIce(column: FloorColumn, temperatures: Float64Array): LumpState | null {
  const { water } = column;
  if (water === undefined) return null;
  return {
    content: temperatures.map((value, i) =>
      latentContent(water.latent[i]!, water.range[i]!, potentialAt(column.curve, value))
    ),
    power: new Float64Array(temperatures.length),
  };
}

/** Heat of a column over 0 °C unfrozen, J, its ice counted. */
export function floorContent(
  column: FloorColumn,
  temperatures: Float64Array,
  ice: LumpState | null,
): number {
  return temperatures.reduce(
    (sum, value, i) =>
      sum + column.capacity[i]! * potentialAt(column.curve, value) + (ice?.content[i] ?? 0),
    0,
  );
}

/** K by which the potential leads on a face at a temperature. */
const leadAt = (curve: FreezingCurve | null, face: number) => potentialAt(curve, face) - face;

/** Gives a solver of the column's implicit step: W by layer in, degC out, in place. */
function columnSolver(column: FloorColumn, store: Float64Array): (values: Float64Array) => void {
  const layers = store.length;
  const { downward, sideways } = column;
  const pivot = new Float64Array(layers);
  const factor = new Float64Array(layers);
  for (let i = 0; i < layers; i++) {
    const up = i > 0 ? downward[i - 1]! : 0;
    const full = store[i]! + up + downward[i]! + sideways[i]!;
    factor[i] = i > 0 ? up / pivot[i - 1]! : 0;
    pivot[i] = full - (i > 0 ? factor[i]! * up : 0);
  }
  return (values) => {
    for (let i = 1; i < layers; i++) values[i] = values[i]! + factor[i]! * values[i - 1]!;
    values[layers - 1] = values[layers - 1]! / pivot[layers - 1]!;
    for (let i = layers - 2; i >= 0; i--) {
      values[i] = (values[i]! + downward[i]! * values[i + 1]!) / pivot[i]!;
    }
  };
}

/** degC of each layer at the step's end for 1 W in one of them. */
function unitAnswer(layers: number, heated: number, solve: (values: Float64Array) => void) {
  const answer = new Float64Array(layers);
  answer[heated] = 1;
  solve(answer);
  return answer;
}

/** K per W between all layers, layer·layers + heated layer. */
function allAnswers(layers: number, solve: (values: Float64Array) => void): Float64Array {
  const response = new Float64Array(layers * layers);
  for (let heated = 0; heated < layers; heated++) {
    unitAnswer(layers, heated, solve).forEach((value, i) => response[i * layers + heated] = value);
  }
  return response;
}

/** temperatures + sign·response·power */
function addPower(
  response: Float64Array,
  power: Float64Array,
  temperatures: Float64Array,
  sign: number,
): void {
  const layers = power.length;
  for (let i = 0; i < layers; i++) {
    let sum = 0;
    for (let k = 0; k < layers; k++) sum += response[i * layers + k]! * power[k]!;
    temperatures[i]! += sign * sum;
  }
}

/** Latent heat of a column's step: temperatures without it in, with it out, ice moved on. */
function freezeColumn(step: LumpStep, ice: LumpState, temperatures: Float64Array): void {
  const listed = new Int32Array(temperatures.length);
  let count = 0;
  temperatures.forEach((value, i) => {
    if (ice.content[i] !== 0 || value < 0) listed[count++] = i;
    else ice.power[i] = 0;
  });
  if (count === 0) return;
  settleLumps(step, ice, temperatures, 0, listed, count);
  addPower(step.response, ice.power, temperatures, 1);
}

/**
 * Backward Euler for the column in the potential of conduction, split so that the floor's heat can be
 * found in between. Where its
 * water freezes the latent power of the last step goes on until the floor's heat is known, and is
 * then solved with it.
 *
 * @param column the floor's soil
 * @param stepSeconds s
 * @param ice of the layers, moved on in place; null where nothing freezes
 */
export function floorStepper(
  column: FloorColumn,
  stepSeconds: number,
  ice: LumpState | null = null,
): FloorStepper {
  const layers = column.depths.length;
  const store = column.capacity.map((heat) => heat / stepSeconds);
  const solve = columnSolver(column, store);
  const unit = unitAnswer(layers, 0, solve);
  const lumps = ice === null || column.water === undefined
    ? null
    : { lumps: column.water, seconds: stepSeconds, response: allAnswers(layers, solve) };
  const { curve } = column;
  const outside = column.outside.map((value) => potentialAt(curve, value));
  const conductance = 1 / (1 / column.film + 1 / column.surface + unit[0]!);
  const free = new Float64Array(layers);
  let lead = 0;
  const outsideAt = (hour: number) => Math.floor(hour / 24) * layers;
  return {
    conductance,
    prepare(temperatures, hour) {
      const day = outsideAt(hour);
      for (let i = 0; i < layers; i++) {
        free[i] = store[i]! * potentialAt(curve, temperatures[i]!) +
          column.sideways[i]! * outside[day + i]!;
      }
      solve(free);
      if (lumps !== null) addPower(lumps.response, ice!.power, free, 1);
      return free[0]! - lead;
    },
    finish(temperatures, heat, hour) {
      const day = outsideAt(hour);
      for (let i = 0; i < layers; i++) temperatures[i] = free[i]! + heat * unit[i]!;
      if (lumps !== null) {
        addPower(lumps.response, ice!.power, temperatures, -1);
        freezeColumn(lumps, ice!, temperatures);
      }
      let lost = 0;
      for (let i = 0; i < layers; i++) {
        lost += column.sideways[i]! * (temperatures[i]! - outside[day + i]!);
        temperatures[i] = temperatureAt(curve, temperatures[i]!);
      }
      // the face as it was: what drives it, less what the film takes
      lead = leadAt(curve, free[0]! - lead + heat / conductance - heat / column.film);
      return lost;
    },
  };
}

/** Boundary of a house that has a floor column and no tubes. */
export function floorBoundary(stepper: FloorStepper, floorTemperature: number): HouseBoundary {
  return {
    floorConductance: stepper.conductance,
    floorTemperature,
    storeHeat: 0,
    storeSlope: 0,
    storeReference: 0,
    storeVapour: 0,
  };
}
