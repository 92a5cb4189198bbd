/** Soil that freezes, run apart from the linear year. @module */
import { min, sum } from "d3-array";
import { HOUR, HOURS_PER_YEAR, MONTH_FIRST_HOURS } from "../../basics/mod.ts";
import { heatContent, type SoilProperties, temperatureOf } from "../../soil/mod.ts";
import { adiFactors, type PortResponse, portResponse } from "../solver/full/factors.ts";
import { adiKernel, LANES } from "../solver/full/kernel.ts";
import type { ConductionOperator } from "../ground/operator.ts";
import type { ReducedEngine } from "../solver/reduced/engine.ts";
import type { StoreSite } from "../site.ts";
import type { FreezingCheck } from "../types.ts";
import type { StepListener } from "../step_report.ts";

/** s; hourly steps stay within 0.1 K of short ones where soil freezes (docs/store.md). */
const STEP = HOUR;
/** 1 November and the hours to 1 May. */
const START_HOUR = MONTH_FIRST_HOURS[10]!;
const WINTER_HOURS = 181 * 24;

/**
 * Alternating directions with freezing: the linear step says how much heat each cell gains, the
 * freezing curve what temperature that means. Keeps the ledger to rounding.
 *
 * Conductivity stays that of unfrozen soil; frozen soil conducts about a third better.
 */
export class FreezingStepper {
  /** degC, four lanes for each cell */
  readonly field: Float64Array;
  readonly #enthalpy: Float64Array;
  readonly #before: Float64Array;
  readonly #work: Float64Array;
  readonly #factors;
  readonly #seconds: number;
  readonly #soil: SoilProperties;
  readonly #operator: ConductionOperator;

  constructor(operator: ConductionOperator, soil: SoilProperties, seconds: number) {
    const size = LANES * operator.capacity.length;
    this.#operator = operator;
    this.#soil = soil;
    this.#seconds = seconds;
    this.#factors = adiFactors(operator, seconds);
    this.field = new Float64Array(size);
    this.#enthalpy = new Float64Array(size);
    this.#before = new Float64Array(size);
    this.#work = new Float64Array(size);
  }

  /** Response of one step to 1 W/m or 1 K of a port. */
  response(cells: Int32Array, weights: Float64Array): PortResponse {
    const source = new Float64Array(this.#operator.capacity.length);
    cells.forEach((cell, k) => source[cell] = weights[k]!);
    return portResponse(this.#operator, this.#factors, source);
  }

  /** Sets all temperatures. */
  start(field: Float64Array): void {
    this.field.set(field);
    field.forEach((value, k) => this.#enthalpy[k] = heatContent(this.#soil, value));
  }

  /** Conducts for one step, then calls `add` to add port responses, then freezes or thaws. */
  step(add: (field: Float64Array) => void): void {
    const { field } = this;
    this.#before.set(field);
    adiKernel(this.#operator, this.#factors, field, 0, this.#work);
    add(field);
    for (let k = 0; k < field.length; k++) {
      const gained = this.#soil.heatCapacity * (field[k]! - this.#before[k]!);
      if (gained === 0) continue;
      this.#enthalpy[k]! += gained;
      field[k] = temperatureOf(this.#soil, this.#enthalpy[k]!);
    }
  }

  /** s */
  get seconds(): number {
    return this.#seconds;
  }

  /** Heat content of one lane, J/m. */
  content(lane: number): number {
    const { capacity } = this.#operator;
    let sum = 0;
    for (let c = 0; c < capacity.length; c++) {
      sum += capacity[c]! / this.#soil.heatCapacity * this.#enthalpy[LANES * c + lane]!;
    }
    return sum;
  }
}

/** What the winter's run needs from the year: hourly means for four slices. */
export interface WinterRecord {
  readonly listen: StepListener;
  /** true once a whole year has been heard */
  readonly slices: readonly number[];
  readonly floorDriving: Float64Array;
  readonly outdoor: Float64Array;
  /** degC of the held lower end */
  readonly deep: Float64Array;
  /** W/m, (hour·4 + place)·tubes + tube */
  readonly tubeHeat: Float32Array;
  /** degC between the tubes by hour, mean of the four slices, without latent heat */
  readonly store: Float64Array;
  /** degC on 1 November, four lanes for each cell */
  readonly start: Float64Array;
}

/** Records a year for {@link winterFreezing}. */
export function winterRecorder(
  site: StoreSite,
  engine: ReducedEngine,
  outside: {
    /** degC of the surface outside and of the lower end, where it is held, by hour */
    readonly outdoorAt: (hour: number) => number;
    readonly deepAt: (hour: number) => number;
  },
): WinterRecord {
  const tubes = site.field.tubes;
  const slices = Array.from(
    { length: LANES },
    (_, k) => Math.min(site.slices - 1, Math.round((k + 0.5) * site.slices / LANES - 0.5)),
  );
  const floorDriving = new Float64Array(HOURS_PER_YEAR);
  const hourly = (at: (hour: number) => number) =>
    Float64Array.from({ length: HOURS_PER_YEAR }, (_, hour) => at(hour));
  const tubeHeat = new Float32Array(HOURS_PER_YEAR * LANES * tubes);
  const start = new Float64Array(LANES * site.operator.capacity.length);
  const store = new Float64Array(HOURS_PER_YEAR);
  let taken = false;
  return {
    slices,
    floorDriving,
    outdoor: hourly(outside.outdoorAt),
    deep: hourly(outside.deepAt),
    tubeHeat,
    store,
    start,
    listen: (report) => {
      const { hour } = report;
      if (hour === START_HOUR && !taken) {
        taken = true;
        slices.forEach((slice, lane) =>
          engine.cells(slice).forEach((value, c) => start[LANES * c + lane] = value)
        );
      }
      const share = report.seconds / HOUR;
      for (const slice of slices) store[hour]! += share * engine.storeTemperature[slice]! / LANES;
      floorDriving[hour]! += share * report.house.floorDriving;
      if (report.mode === 0) return;
      slices.forEach((slice, place) => {
        for (let tube = 0; tube < tubes; tube++) {
          tubeHeat[(hour * LANES + place) * tubes + tube]! += share *
            report.heat[slice * tubes + tube]! * site.tubeLengthFactor;
        }
      });
    },
  };
}

/** Lowest temperature between the tubes and mean over the winter, with freezing. */
function runWinter(
  site: StoreSite,
  record: WinterRecord,
  soil: SoilProperties,
): { readonly coldest: number; readonly mean: number; readonly frozenHours: number } {
  const { operator } = site;
  const tubes = operator.tubes.length;
  const stepper = new FreezingStepper(operator, soil, STEP);
  stepper.start(record.start);
  const tubePorts = operator.tubes.map((tube) => stepper.response(tube.cells, tube.weights));
  const floor = stepper.response(operator.floor.cells, operator.floor.conductances);
  const outdoor = stepper.response(operator.outdoor.cells, operator.outdoor.conductances);
  const deep = stepper.response(operator.deep.cells, operator.deep.conductances);
  const add = (field: Float64Array, port: PortResponse, lane: number, size: number) => {
    if (size === 0) return;
    for (let k = 0; k < port.cells.length; k++) {
      field[LANES * port.cells[k]! + lane]! += size * port.values[k]!;
    }
  };
  let coldest = Infinity;
  let mean = 0;
  let frozenHours = 0;
  for (let count = 0; count < WINTER_HOURS; count++) {
    const hour = (START_HOUR + count) % HOURS_PER_YEAR;
    for (let part = 0; part < HOUR / STEP; part++) {
      stepper.step((field) => {
        for (let lane = 0; lane < LANES; lane++) {
          add(field, floor, lane, record.floorDriving[hour]!);
          add(field, outdoor, lane, record.outdoor[hour]!);
          add(field, deep, lane, record.deep[hour]!);
          for (let tube = 0; tube < tubes; tube++) {
            add(
              field,
              tubePorts[tube]!,
              lane,
              record.tubeHeat[(hour * LANES + lane) * tubes + tube]!,
            );
          }
        }
      });
    }
    let store = 0;
    for (let lane = 0; lane < LANES; lane++) {
      operator.store.cells.forEach((cell, k) =>
        store += operator.store.weights[k]! * stepper.field[LANES * cell + lane]! / LANES
      );
    }
    coldest = Math.min(coldest, store);
    mean += store / WINTER_HOURS;
    if (store < 0) frozenHours++;
  }
  return { coldest, mean, frozenHours };
}

/**
 * Runs the winter again with the latent heat of freezing and the heat flows of the year: floor, weather and tube heat as recorded, four slices, 1 November to 1 May.
 *
 * Source of the method: enthalpy form, Voller & Cross 1981 [voller-cross-1981].
 */
export function winterFreezing(
  site: StoreSite,
  record: WinterRecord,
  properties: SoilProperties,
): FreezingCheck {
  const winter = runWinter(site, record, properties);
  const linear = Float64Array.from(
    { length: WINTER_HOURS },
    (_, count) => record.store[(START_HOUR + count) % HOURS_PER_YEAR]!,
  );
  return {
    coldestLinear: min(linear)!,
    coldest: winter.coldest,
    meanShift: winter.mean - sum(linear) / WINTER_HOURS,
    hoursBelowFreezing: winter.frozenHours,
  };
}
