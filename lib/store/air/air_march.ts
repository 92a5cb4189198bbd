/** Air marched from slice to slice through every tube, dry or wet. @module */
import { HEAT_OF_VAPORISATION } from "../../air/mod.ts";
import { sliceHeat } from "./coupling.ts";
import { dewPointOf, saturatedRatio, saturationIndex, type SaturationTable } from "./saturation.ts";
import type { MarchInput, MarchOutput, MarchSlopes } from "./march_buffers.ts";
import type { TubeField } from "./tube_field.ts";

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
  /** kg/(kg K): rise of the saturated ratio at the wall where it takes part; 0 where it does not */
  rise: number;
}

/**
 * Latent heat of one segment, W/m into the wall; the wall's temperature is left in `given`: the
 * root of T_w = T_b + Φ[a(T_a − T_w) + b(w − w_s(T_w))], Φ the response of block and soil side
 * together; Newton from the dry answer. Evaporation stops at the water there is.
 */
function wetWall(given: WetSegment, table: SaturationTable): number {
  const { base, phi, sensible: a, latent: b, air, ratio, evaporable } = given;
  let wall = given.wall;
  let rise = 0;
  let saturated = 0;
  let k = saturationIndex(table, wall);
  for (let pass = 0; pass < 4; pass++) {
    const low = table.ratio[k]!;
    const start = table.from + k / table.perKelvin;
    rise = (table.ratio[k + 1]! - low) * table.perKelvin;
    saturated = low + rise * (wall - start);
    const error = wall - base - phi * (a * (air - wall) + b * (ratio - saturated));
    wall -= error / (1 + phi * (a + b * rise));
    const next = saturationIndex(table, wall);
    saturated = low + rise * (wall - start);
    // the table is straight between its entries: there Newton's step is the answer
    if (next === k) break;
    k = next;
  }
  given.wall = wall;
  given.rise = rise;
  const heat = b * (ratio - saturated);
  if (heat >= -evaporable) return heat;
  given.rise = 0;
  given.wall = (base + phi * (a * air - evaporable)) / (1 + phi * a);
  return -evaporable;
}

/** Scratch of a march by tube: air, humidity, driving difference, heat. */
interface Scratch {
  readonly air: Float64Array;
  readonly ratio: Float64Array;
  readonly driving: Float64Array;
  readonly heat: Float64Array;
  /** rise of the saturated ratio at each tube's wall; 0 where no latent heat answers */
  readonly rise: Float64Array;
  readonly wet: WetSegment;
  /** what a kelvin and a kg/kg at the entrance have become: temperature and ratio of each */
  readonly byTemperature: Pair;
  readonly byRatio: Pair;
}

/** Temperature and humidity by tube. */
interface Pair {
  readonly air: Float64Array;
  readonly ratio: Float64Array;
}

const scratches = new WeakMap<TubeField, Scratch>();

function scratchOf(field: TubeField): Scratch {
  let scratch = scratches.get(field);
  if (scratch === undefined) {
    const row = () => new Float64Array(field.tubes);
    scratch = {
      air: row(),
      ratio: row(),
      driving: row(),
      heat: row(),
      rise: row(),
      byTemperature: { air: row(), ratio: row() },
      byRatio: { air: row(), ratio: row() },
      wet: {
        wall: 0,
        base: 0,
        phi: 0,
        sensible: 0,
        latent: 0,
        air: 0,
        ratio: 0,
        evaporable: 0,
        rise: 0,
      },
    };
    scratches.set(field, scratch);
  }
  return scratch;
}

/** W/(m K): latent heat for each kelvin that the wall lies above the dew point. */
function secant(table: SaturationTable, wall: number, ratio: number, latent: number): number {
  const above = wall - dewPointOf(table, ratio);
  return Math.abs(above) > 1e-6 ? Math.max(0, -latent / above) : 0;
}

/** One segment of one tube: heat and latent heat, W/m, and the wall, K above dew point for the slope. */
function exchange(
  input: MarchInput,
  output: MarchOutput,
  scratch: Scratch,
  tube: number,
  k: number,
  settled: boolean,
): void {
  const { field, saturation, coupling, water, seconds } = input;
  const a = field.sensible[tube]!;
  const phi = coupling.own[tube]!;
  const air = scratch.air[tube]!;
  const ratio = scratch.ratio[tube]!;
  const guess = output.latentHeat[k]!;
  // with no latent heat about, the joint answer of the slice's tubes stands as it is
  let wall = coupling.cross === null
    ? (input.block[k]! + phi * a * air) / (1 + phi * a)
    : air - (scratch.heat[tube]! - guess) / a;
  let latent = 0;
  let slope = 0;
  scratch.rise[tube] = 0;
  const damp = ratio > saturation.ratio[0]!;
  if (damp && (water[k]! > 0 || guess !== 0 || ratio > saturatedRatio(saturation, wall))) {
    const { wet } = scratch;
    // F·q of the joint answer is what drives it less its own drop over the air side
    wet.base = coupling.cross === null ? input.block[k]! : wall - phi * scratch.heat[tube]!;
    wet.wall = (wet.base + phi * a * air) / (1 + phi * a);
    wet.phi = phi;
    wet.sensible = a;
    wet.latent = field.latent[tube]!;
    wet.air = air;
    wet.ratio = ratio;
    wet.evaporable = water[k]! * HEAT_OF_VAPORISATION / (field.segment * seconds);
    latent = wetWall(wet, saturation);
    wall = wet.wall;
    scratch.rise[tube] = wet.rise;
    if (settled) slope = secant(saturation, wall, ratio, latent);
  }
  const sensible = a * (air - wall);
  output.heat[k] = sensible + latent;
  output.latentHeat[k] = latent;
  output.latentSlope[k] = slope;
  scratch.air[tube] = air - sensible * field.segment / field.heatRate[tube]!;
  scratch.ratio[tube] = ratio -
    latent * field.segment / (HEAT_OF_VAPORISATION * field.airRate[tube]!);
  output.latent += latent * field.segment;
}

/**
 * Passes small changes of the entering air on through one segment, of its temperature and of its
 * humidity; all tubes change alike, so that each feels its neighbours as it feels itself.
 */
function passChanges(input: MarchInput, scratch: Scratch, tube: number): void {
  const { field, coupling } = input;
  const { segment } = field;
  const a = field.sensible[tube]!;
  const rise = scratch.rise[tube]!;
  const b = rise > 0 ? field.latent[tube]! : 0;
  const phi = coupling.together[tube]!;
  const stiff = 1 + phi * (a + b * rise);
  const heatRate = field.heatRate[tube]!;
  const vapourRate = HEAT_OF_VAPORISATION * field.airRate[tube]!;
  const { byTemperature, byRatio } = scratch;
  const air = byTemperature.air[tube]!;
  const ratio = byTemperature.ratio[tube]!;
  const wall = phi * (a * air + b * ratio) / stiff;
  byTemperature.air[tube] = air - a * (air - wall) * segment / heatRate;
  byTemperature.ratio[tube] = ratio - b * (ratio - rise * wall) * segment / vapourRate;
  const damperAir = byRatio.air[tube]!;
  const damperRatio = byRatio.ratio[tube]!;
  const damperWall = phi * (a * damperAir + b * damperRatio) / stiff;
  byRatio.air[tube] = damperAir - a * (damperAir - damperWall) * segment / heatRate;
  byRatio.ratio[tube] = damperRatio -
    b * (damperRatio - rise * damperWall) * segment / vapourRate;
}

/** Sums what a kelvin and a kg/kg at the entrance change. */
function gatherSlopes(field: TubeField, scratch: Scratch, slopes: MarchSlopes): void {
  const { byTemperature, byRatio } = scratch;
  let [heatByTemperature, heatByRatio, vapourByTemperature, vapourByRatio] = [0, 0, 0, 0];
  for (let tube = 0; tube < field.tubes; tube++) {
    const rate = field.heatRate[tube]!;
    const airRate = field.airRate[tube]!;
    heatByTemperature += rate * (byTemperature.air[tube]! - 1);
    heatByRatio += rate * byRatio.air[tube]!;
    vapourByTemperature += airRate * byTemperature.ratio[tube]!;
    vapourByRatio += airRate * (byRatio.ratio[tube]! - 1);
  }
  slopes.heatByTemperature = heatByTemperature;
  slopes.heatByRatio = heatByRatio;
  slopes.vapourByTemperature = vapourByTemperature;
  slopes.vapourByRatio = vapourByRatio;
}

/**
 * Marches the air of all tubes downstream, slice by slice. The soil's own response within the step
 * is in the coupling, so heat and temperatures belong together as means over the step; the latent
 * heat of the march before is the guess for how neighbours pull each other.
 *
 * @param input what the air meets
 * @param output heat by segment and sums
 * @param slopes filled with how the sums answer the entering air, where wanted
 */
export function marchAir(
  input: MarchInput,
  output: MarchOutput,
  slopes: MarchSlopes | null = null,
): void {
  const { field, block, coupling, reversed } = input;
  const { tubes, slices } = field;
  const scratch = scratchOf(field);
  scratch.air.fill(input.temperature);
  scratch.ratio.fill(input.ratio);
  output.latent = 0;
  if (slopes !== null) {
    scratch.byTemperature.air.fill(1);
    scratch.byTemperature.ratio.fill(0);
    scratch.byRatio.air.fill(0);
    scratch.byRatio.ratio.fill(1);
  }
  for (let place = 0; place < slices; place++) {
    const first = (reversed ? slices - 1 - place : place) * tubes;
    if (coupling.cross !== null) {
      for (let tube = 0; tube < tubes; tube++) {
        scratch.driving[tube] = scratch.air[tube]! - block[first + tube]! +
          output.latentHeat[first + tube]! / field.sensible[tube]!;
      }
      sliceHeat(coupling, field, scratch.driving, scratch.heat);
    }
    for (let tube = 0; tube < tubes; tube++) {
      exchange(input, output, scratch, tube, first + tube, slopes === null);
    }
    if (slopes === null) continue;
    for (let tube = 0; tube < tubes; tube++) passChanges(input, scratch, tube);
  }
  if (slopes !== null) gatherSlopes(field, scratch, slopes);
  let toAir = 0, vapour = 0, enthalpy = 0, rateSum = 0, moisture = 0, airSum = 0;
  for (let tube = 0; tube < tubes; tube++) {
    const rate = field.heatRate[tube]!;
    const airRate = field.airRate[tube]!;
    toAir += rate * (scratch.air[tube]! - input.temperature);
    vapour += airRate * (scratch.ratio[tube]! - input.ratio);
    enthalpy += rate * scratch.air[tube]!;
    rateSum += rate;
    moisture += airRate * scratch.ratio[tube]!;
    airSum += airRate;
  }
  output.toAir = toAir;
  output.vapour = vapour;
  output.outletTemperature = enthalpy / rateSum;
  output.outletRatio = moisture / airSum;
}

/** Books the step's condensate on the walls; what the wall cannot hold drains. Returns kg drained. */
export function bookWater(input: MarchInput, output: MarchOutput): number {
  const { field, water, seconds } = input;
  let drained = 0;
  for (let k = 0; k < water.length; k++) {
    const held = water[k]! + output.latentHeat[k]! * field.segment * seconds / HEAT_OF_VAPORISATION;
    const most = field.waterHeld[k % field.tubes]!;
    drained += Math.max(0, held - most);
    water[k] = Math.min(most, Math.max(0, held));
  }
  return drained;
}
