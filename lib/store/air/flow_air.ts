/** The fan's air at the density of the hour: a fan moves a volume, the tubes feel a mass. @module */
import { airDensity } from "../../air/mod.ts";
import type { FanMode } from "../control.ts";
import type { SoilEngine } from "../solver/engine.ts";
import { type TubeCoupling, tubeCoupling } from "./coupling.ts";
import { atFlow, type TubeField } from "./tube_field.ts";

/** Steps of density that are told apart, as a ratio. */
const LEVEL = Math.log(1.01);

/** The fan in one of its two modes. */
export interface ModeFlow {
  /** ratio of the air flow to that for which tubes and rates are given */
  readonly flow: number;
  /** W electric at the fan's own density */
  readonly power: number;
}

/** What the flow of air depends on. */
export interface FanAir {
  /** the tubes at the fan's own density */
  readonly field: TubeField;
  /** m of tube over m of soil in a slice */
  readonly tubeLengthFactor: number;
  /** kg/m³ at which the fan's figures hold */
  readonly density: number;
  /** W/K and kg/s of dry air, all tubes, at that density */
  readonly heatRate: number;
  readonly airRate: number;
  /** the fan while it charges and while it discharges */
  readonly modes: { readonly charge: ModeFlow; readonly discharge: ModeFlow };
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
}

/** Works out a value once for each index. */
function once<T>(make: (index: number) => T): (index: number) => T {
  const known: T[] = [];
  return (index) => known[index] ??= make(index);
}

function flowAir(fan: FanAir, engine: SoilEngine, mode: ModeFlow, density: number): FlowAir {
  const ratio = density * mode.flow;
  const field = ratio === 1 ? fan.field : atFlow(fan.field, ratio);
  const coupling = once((step) => tubeCoupling(engine, field, fan.tubeLengthFactor, step));
  return {
    field,
    heatRate: fan.heatRate * ratio,
    airRate: fan.airRate * ratio,
    fanPower: mode.power * density,
    coupling,
  };
}

/**
 * The air of a fan by temperature, humidity and pressure. A fan moves the same volume at any
 * density; mass flow, pressure and power go with the density, and the film of the tubes with mass
 * flow^0.8 (fan laws; Dittus & Boelter 1930 [dittus-boelter-1930]). Densities are told apart to the
 * nearest hundredth, so that tubes and couplings are worked out once for each. Another speed is
 * another volume and another power, both from where fan and system meet; the share of each tube
 * stays.
 *
 * @param fan tubes, flow and power at the fan's own density
 * @param engine soil
 * @returns the air at degC, kg/kg and Pa while charging (mode 1, unless given) or discharging (−1)
 */
export function flowAirs(
  fan: FanAir,
  engine: SoilEngine,
): (temperature: number, humidityRatio: number, pressure: number, mode?: FanMode) => FlowAir {
  const { charge, discharge } = fan.modes;
  const same = charge.flow === discharge.flow && charge.power === discharge.power;
  const charging = new Map<number, FlowAir>();
  const discharging = same ? charging : new Map<number, FlowAir>();
  return (temperature, humidityRatio, pressure, mode = 1) => {
    const [known, moved] = mode === -1 ? [discharging, discharge] : [charging, charge];
    const density = airDensity(temperature, humidityRatio, pressure);
    const level = Math.round(Math.log(density / fan.density) / LEVEL);
    const found = known.get(level) ?? flowAir(fan, engine, moved, Math.exp(level * LEVEL));
    known.set(level, found);
    return found;
  };
}
