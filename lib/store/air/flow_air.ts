/** The fan's air at the density of the hour: a fan moves a volume, the tubes feel a mass. @module */
import { airDensity } from "../../air/mod.ts";
import type { SoilEngine } from "../solver/engine.ts";
import { drySlope } from "./air_march.ts";
import { type TubeCoupling, tubeCoupling } from "./coupling.ts";
import { atDensity, type TubeField } from "./tube_field.ts";

/** Steps of density that are told apart, as a ratio. */
const LEVEL = Math.log(1.01);

/** What the flow of air depends on. */
export interface FanAir {
  /** the tubes at the fan's own density */
  readonly field: TubeField;
  /** m of tube over m of soil in a slice */
  readonly tubeLengthFactor: number;
  /** kg/m³ at which the fan's figures hold */
  readonly density: number;
  /** W/K and kg/s of dry air, all tubes, and W of the fan, at that density */
  readonly heatRate: number;
  readonly airRate: number;
  readonly fanPower: number;
}

/** Air, tubes and fan at one density. */
export interface FlowAir {
  readonly field: TubeField;
  /** W/K and kg/s of dry air, all tubes */
  readonly heatRate: number;
  readonly airRate: number;
  /** W electric */
  readonly fanPower: number;
  /** by step length */
  coupling(step: number): TubeCoupling;
  /** W/K by step length: change of the heat to the air with its entering temperature, dry */
  slope(step: number): number;
}

/** Works out a value once for each index. */
function once<T>(make: (index: number) => T): (index: number) => T {
  const known: T[] = [];
  return (index) => known[index] ??= make(index);
}

function flowAir(fan: FanAir, engine: SoilEngine, ratio: number): FlowAir {
  const field = ratio === 1 ? fan.field : atDensity(fan.field, ratio);
  const coupling = once((step) => tubeCoupling(engine, field, fan.tubeLengthFactor, step));
  return {
    field,
    heatRate: fan.heatRate * ratio,
    airRate: fan.airRate * ratio,
    fanPower: fan.fanPower * ratio,
    coupling,
    slope: once((step) => field.copies * drySlope(field, coupling(step))),
  };
}

/**
 * The air of a fan by temperature, humidity and pressure. A fan moves the same volume at any
 * density; mass flow, pressure and power go with the density, and the film of the tubes with mass
 * flow^0.8 (fan laws; Dittus & Boelter 1930 [dittus-boelter-1930]). Densities are told apart to the
 * nearest hundredth, so that tubes and couplings are worked out once for each.
 *
 * @param fan tubes, flow and power at the fan's own density
 * @param engine soil
 * @returns the air at degC, kg/kg and Pa
 */
export function flowAirs(
  fan: FanAir,
  engine: SoilEngine,
): (temperature: number, humidityRatio: number, pressure: number) => FlowAir {
  const known = new Map<number, FlowAir>();
  return (temperature, humidityRatio, pressure) => {
    const density = airDensity(temperature, humidityRatio, pressure);
    const level = Math.round(Math.log(density / fan.density) / LEVEL);
    const found = known.get(level) ?? flowAir(fan, engine, Math.exp(level * LEVEL));
    known.set(level, found);
    return found;
  };
}
