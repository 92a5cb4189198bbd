/** Air marched from slice to slice through every tube, dry or wet. @module */
import { LATENT_HEAT } from "../air/mod.ts";
import { dewPointOf, saturatedRatio, saturationIndex, type SaturationTable } from "./saturation.ts";
import type { TubeField } from "./tube_field.ts";

/** What the air meets on its way. Slice-wise arrays are slice·tubes + tube. */
export interface MarchInput {
  readonly field: TubeField;
  readonly saturation: SaturationTable;
  /** degC, mean of each block over the step without tube heat; first lane of the field */
  readonly block: Float64Array;
  /** K per W/m */
  readonly response: Float64Array;
  /** degC and kg/kg entering every tube */
  readonly temperature: number;
  readonly ratio: number;
  /** the air enters at the last slice */
  readonly reversed: boolean;
  /** kg of water on the wall of each segment */
  readonly water: Float64Array;
  /** s */
  readonly seconds: number;
}

/** What the march leaves behind; buffers are reused. */
export interface MarchOutput {
  /** W/m into the soil by slice and tube, sensible + latent */
  readonly heat: Float64Array;
  /** W/m of it that is latent */
  readonly latentHeat: Float64Array;
  /** W/(m K) by slice and tube: latent heat over wall temperature less dew point, 0 where dry */
  readonly latentSlope: Float64Array;
  /** W: Σ ṁc (T_out − T_in) of all modelled tubes: heat to the air, W */
  toAir: number;
  /** W into the walls, latent */
  latent: number;
  /** kg/s of vapour added to the air (negative when it condenses) */
  vapour: number;
  /** degC and kg/kg, mixed outlet */
  outletTemperature: number;
  outletRatio: number;
}

/** Empty buffers for a field. */
export function marchOutput(field: TubeField): MarchOutput {
  return {
    heat: new Float64Array(field.slices * field.tubes),
    latentHeat: new Float64Array(field.slices * field.tubes),
    latentSlope: new Float64Array(field.slices * field.tubes),
    toAir: 0,
    latent: 0,
    vapour: 0,
    outletTemperature: NaN,
    outletRatio: NaN,
  };
}

/** One segment's numbers; one object is reused so that the loop makes no garbage. */
interface WetSegment {
  /** degC: the dry answer in, the wet answer out */
  wall: number;
  base: number;
  phi: number;
  sensible: number;
  latent: number;
  air: number;
  ratio: number;
  /** W/m that the water on the wall could take up in the step */
  evaporable: number;
}

/**
 * Latent heat of one segment, W/m into the wall; the wall's temperature is left in `given`: the root of
 * T_w = T_b + Φ[a(T_a − T_w) + b(w − w_s(T_w))], Φ the response of block and soil side together;
 * Newton from the dry answer. Evaporation stops at the water there is.
 */
function wetWall(given: WetSegment, table: SaturationTable): number {
  const { base, phi, sensible: a, latent: b, air, ratio, evaporable } = given;
  let wall = given.wall;
  for (let pass = 0; pass < 4; pass++) {
    const k = saturationIndex(table, wall);
    const low = table.ratio[k]!;
    const rise = (table.ratio[k + 1]! - low) * table.perKelvin;
    const saturated = low + rise * (wall - table.from - k / table.perKelvin);
    const error = wall - base - phi * (a * (air - wall) + b * (ratio - saturated));
    const step = error / (1 + phi * (a + b * rise));
    wall -= step;
    if (Math.abs(step) < 1e-9) break;
  }
  given.wall = wall;
  const heat = b * (ratio - saturatedRatio(table, wall));
  if (heat >= -evaporable) return heat;
  given.wall = (base + phi * (a * air - evaporable)) / (1 + phi * a);
  return -evaporable;
}

/**
 * Marches the air of every tube downstream. The soil's own response within the step is in Φ, so
 * heat and temperatures belong together at the end of the step and nothing needs iterating.
 */
export function marchAir(input: MarchInput, output: MarchOutput): void {
  const { field, saturation, block, response, reversed, water, seconds } = input;
  const { tubes, slices, segment } = field;
  const leastDew = saturation.ratio[0]!;
  const wet: WetSegment = {
    wall: 0,
    base: 0,
    phi: 0,
    sensible: 0,
    latent: 0,
    air: 0,
    ratio: 0,
    evaporable: 0,
  };
  let toAir = 0, latentSum = 0, vapour = 0, enthalpy = 0, rateSum = 0, moisture = 0, airSum = 0;
  for (let tube = 0; tube < tubes; tube++) {
    const a = field.sensible[tube]!;
    const b = field.latent[tube]!;
    const phi = response[tube]! + field.soilSide[tube]!;
    const rate = field.heatRate[tube]!;
    const airRate = field.airRate[tube]!;
    let air = input.temperature;
    let ratio = input.ratio;
    for (let place = 0; place < slices; place++) {
      const k = (reversed ? slices - 1 - place : place) * tubes + tube;
      const base = block[k]!;
      let wall = (base + phi * a * air) / (1 + phi * a);
      let latent = 0;
      const excess = ratio - saturatedRatio(saturation, wall);
      if (ratio > leastDew && (excess > 0 || water[k]! > 0)) {
        wet.wall = wall;
        wet.base = base;
        wet.phi = phi;
        wet.sensible = a;
        wet.latent = b;
        wet.air = air;
        wet.ratio = ratio;
        wet.evaporable = water[k]! * LATENT_HEAT / (segment * seconds);
        latent = wetWall(wet, saturation);
        wall = wet.wall;
        const above = wall - dewPointOf(saturation, ratio);
        output.latentSlope[k] = Math.abs(above) > 1e-6 ? Math.max(0, -latent / above) : 0;
      } else {
        output.latentSlope[k] = 0;
      }
      const sensible = a * (air - wall);
      output.heat[k] = sensible + latent;
      output.latentHeat[k] = latent;
      air -= sensible * segment / rate;
      ratio -= latent * segment / (LATENT_HEAT * airRate);
      latentSum += latent * segment;
    }
    toAir += rate * (air - input.temperature);
    vapour += airRate * (ratio - input.ratio);
    enthalpy += rate * air;
    rateSum += rate;
    moisture += airRate * ratio;
    airSum += airRate;
  }
  output.toAir = toAir;
  output.latent = latentSum;
  output.vapour = vapour;
  output.outletTemperature = enthalpy / rateSum;
  output.outletRatio = moisture / airSum;
}

/** Books the step's condensate on the walls; what the wall cannot hold drains. Returns kg drained. */
export function bookWater(input: MarchInput, output: MarchOutput): number {
  const { field, water, seconds } = input;
  let drained = 0;
  for (let k = 0; k < water.length; k++) {
    const held = water[k]! + output.latentHeat[k]! * field.segment * seconds / LATENT_HEAT;
    const most = field.waterHeld[k % field.tubes]!;
    drained += Math.max(0, held - most);
    water[k] = Math.min(most, Math.max(0, held));
  }
  return drained;
}

/** W/K: change of the heat to the air with the entering temperature, dry walls. */
export function drySlope(field: TubeField, response: Float64Array): number {
  let slope = 0;
  for (let tube = 0; tube < field.tubes; tube++) {
    const phi = response[tube]! + field.soilSide[tube]!;
    const a = field.sensible[tube]!;
    const exchanged = a / (1 + phi * a) * field.segment / field.heatRate[tube]!;
    slope += field.heatRate[tube]! * ((1 - exchanged) ** field.slices - 1);
  }
  return slope;
}
