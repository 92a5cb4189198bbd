/** Lumps of soil whose water freezes, solved together with the conduction between them. @module */

/**
 * Latent heat of lumps, one entry each. Quantities are for a whole lump, or for a lump of one metre
 * of slice: J or J/m and W or W/m throughout.
 */
export interface FreezingLumps {
  /** J set free when all the water freezes */
  readonly latent: Float64Array;
  /** K below 0 degC over which it freezes, evenly */
  readonly range: Float64Array;
}

/** What holds for every step of one length. */
export interface LumpStep {
  readonly lumps: FreezingLumps;
  readonly seconds: number;
  /** K per W at the end of the step, lump·count + heated lump; symmetric, positive */
  readonly response: Float64Array;
}

/** Changing part of a set of lumps that share a step; several sets may lie one after another. */
export interface LumpState {
  /** J the ice holds less than the water would: 0 thawed, −latent all ice */
  readonly content: Float64Array;
  /** W set free over the last step (freezing > 0) */
  readonly power: Float64Array;
}

/** Latent content of a lump at a temperature, J, 0 or less. */
export function latentContent(latent: number, range: number, temperature: number): number {
  if (temperature >= 0) return 0;
  return temperature <= -range ? -latent : latent * temperature / range;
}

/** K: a sweep that moves no lump by more ends the search. */
const TOLERANCE = 1e-2;
const MOST_SWEEPS = 60;

/**
 * Latent power of the listed lumps over a step so that content and temperature belong together at
 * its end: T = free + response·power and content(T) = content − power·step. With the freezing curve
 * straight between 0 and −range each lump has a closed form; Gauss–Seidel over the lumps from the
 * last step's power. Enthalpy form, so no latent heat is passed over however long the step.
 *
 * Source: enthalpy method, Voller & Cross 1981 [voller-cross-1981], Int. J. Heat Mass Transfer
 * 24:545 (from memory).
 *
 * About 2·listed² flops a sweep, one to three sweeps.
 *
 * @param step constants of the step length
 * @param state changed in place: power of the step, content at its end
 * @param free degC of each lump at the end of the step without latent heat
 * @param start index of the set's first lump in state and free
 * @param listed lumps that hold ice or would fall below 0 degC; the others must have power 0
 * @param count how many of them are listed
 */
export function settleLumps(
  step: LumpStep,
  state: LumpState,
  free: Float64Array,
  start: number,
  listed: Int32Array,
  count: number,
): void {
  for (let sweep = 0; sweep < MOST_SWEEPS; sweep++) {
    if (sweepLumps(step, state, free, start, listed, count) <= TOLERANCE) break;
  }
  for (let i = 0; i < count; i++) closeLump(step, state, start, listed[i]!);
}

/** One sweep; K by which the farthest lump moved. */
function sweepLumps(
  step: LumpStep,
  state: LumpState,
  free: Float64Array,
  start: number,
  listed: Int32Array,
  count: number,
): number {
  const { response, seconds } = step;
  const { latent, range } = step.lumps;
  const { content, power } = state;
  const size = latent.length;
  let moved = 0;
  for (let i = 0; i < count; i++) {
    const lump = listed[i]!;
    const row = lump * size;
    const own = response[row + lump]!;
    let sum = free[start + lump]!;
    // two sums, so that neither waits for its last term
    let odd = 0;
    const paired = count - count % 2;
    for (let j = 0; j < paired; j += 2) {
      const first = listed[j]!;
      const second = listed[j + 1]!;
      sum += response[row + first]! * power[start + first]!;
      odd += response[row + second]! * power[start + second]!;
    }
    if (paired < count) sum += response[row + listed[paired]!]! * power[start + listed[paired]!]!;
    sum += odd;
    const before = power[start + lump]!;
    sum -= own * before;
    const now = lumpPower(content[start + lump]!, sum, seconds / own, latent[lump]!, range[lump]!) /
      seconds;
    power[start + lump] = now;
    moved = Math.max(moved, Math.abs(now - before) * own);
  }
  return moved;
}

/**
 * J set free over a step by a lump that would end at `others` without its own latent heat:
 * content − power·step = content(T), T = others + power·step/stiffness.
 */
function lumpPower(
  content: number,
  others: number,
  stiffness: number,
  latent: number,
  range: number,
): number {
  if (others + content / stiffness >= 0) return content;
  const slope = latent / range;
  const mush = (content + others * stiffness) / (slope + stiffness);
  return mush >= -range ? content - slope * mush : content + latent;
}

/** Share of the latent heat within which a lump counts as thawed, or as frozen through. */
const NEARLY = 1e-10;

/** Moves the content by the power; what is all but thawed or frozen through is so, heat kept. */
function closeLump(step: LumpStep, state: LumpState, start: number, lump: number): void {
  const { content, power } = state;
  const at = start + lump;
  const all = step.lumps.latent[lump]!;
  const left = content[at]! - power[at]! * step.seconds;
  const end = left >= -NEARLY * all ? 0 : left <= (NEARLY - 1) * all ? -all : left;
  if (end !== left) power[at] = (content[at]! - end) / step.seconds;
  content[at] = end;
}
