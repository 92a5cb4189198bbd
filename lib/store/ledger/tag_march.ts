/** One tagged field's air, marched through the tubes of a discharging pass. @module */
import type { TubeField } from "../air/tube_field.ts";
import { fromOthers, sliceHeat, type TubeCoupling } from "../air/coupling.ts";

/** A pass of tagged air. Slice-wise arrays are slice·tubes + tube. */
export interface TagPass {
  readonly field: TubeField;
  readonly coupling: TubeCoupling;
  /** degC of the tagged blocks, mean over the step without heat; the field starts at `first` */
  readonly block: Float64Array;
  readonly first: number;
  /** the air enters at the last slice */
  readonly reversed: boolean;
  /** W/(m K): secant of the whole segment's latent heat */
  readonly slope: Float64Array;
}

/** What the march writes: W/m of tube for all fields, sensible + latent and latent alone. */
export interface TagHeat {
  readonly heat: Float64Array;
  readonly latent: Float64Array;
}

/** Scratch by tube. */
export interface TagScratch {
  readonly air: Float64Array;
  readonly driving: Float64Array;
  readonly now: Float64Array;
}

/** Empty scratch. */
export function tagScratch(tubes: number): TagScratch {
  const row = () => new Float64Array(tubes);
  return { air: row(), driving: row(), now: row() };
}

/** Joint answer of a slice's tubes to tagged air, W/m, into `now`. */
function answerSlice(pass: TagPass, out: TagHeat, scratch: TagScratch, first: number): void {
  const { field, coupling, block } = pass;
  for (let tube = 0; tube < field.tubes; tube++) {
    scratch.driving[tube] = scratch.air[tube]! - block[first + tube]! +
      out.latent[first + tube]! / field.sensible[tube]!;
  }
  sliceHeat(coupling, field, scratch.driving, scratch.now);
}

/** One segment: wall, heat by both ways, air onwards. Returns W/m into the wall. */
function passSegment(
  pass: TagPass,
  out: TagHeat,
  scratch: TagScratch,
  tube: number,
  k: number,
  s: number,
): number {
  const { field, coupling, block } = pass;
  const a = field.sensible[tube]!;
  const phi = coupling.own[tube]!;
  const base = block[k]! + fromOthers(coupling, field.tubes, tube, scratch.now);
  const wall = (base + phi * a * scratch.air[tube]!) / (1 + phi * (a + s));
  const sensible = a * (scratch.air[tube]! - wall);
  out.latent[k] = -s * wall;
  out.heat[k] = sensible - s * wall;
  scratch.air[tube]! -= sensible * field.segment / field.heatRate[tube]!;
  return out.heat[k]!;
}

/**
 * Marches one tagged field's air, which enters at 0 K; evaporation goes by the secant of the whole
 * segment.
 *
 * @returns W into the soil
 */
export function marchTag(pass: TagPass, out: TagHeat, scratch: TagScratch): number {
  const { field, first, reversed, slope } = pass;
  const { tubes, slices } = field;
  let total = 0;
  scratch.air.fill(0);
  for (let place = 0; place < slices; place++) {
    const lane = (reversed ? slices - 1 - place : place) * tubes;
    answerSlice(pass, out, scratch, first + lane);
    for (let tube = 0; tube < tubes; tube++) {
      const heat = passSegment(pass, out, scratch, tube, first + lane + tube, slope[lane + tube]!);
      total += heat * field.segment * field.copies;
    }
  }
  return total;
}
