/** The fan chapter run again with one thing changed. @module */
import type { FanSurroundings } from "./compute.ts";
import { type ElevationTrial, fanElevations, type HigherField } from "./elevations.ts";
import { FANS } from "./products.ts";
import { type FanTrial, fanTrial } from "./trial.ts";
import type { FanInputs } from "./types.ts";

/** One speed over the rated one. */
export interface SpeedTrial extends FanTrial {
  /** over the rated speed */
  readonly speed: number;
}

const SPEEDS = [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1];

/**
 * One, two and three of the study's fans side by side, each with its riser, and the study's own number.
 *
 * @param inputs `fan` section of the study
 * @param surroundings tubes, headers and air
 */
export function fanCounts(inputs: FanInputs, surroundings: FanSurroundings): FanTrial[] {
  const counts = [...new Set([1, 2, 3, inputs.count])].sort((a, b) => a - b);
  return counts.map((count) =>
    fanTrial(count === 1 ? "one fan" : `${count} fans`, { ...inputs, count }, surroundings)
  );
}

/**
 * The study's fans at 30 to 110 % of their rated speed.
 *
 * @param inputs `fan` section of the study
 * @param surroundings tubes, headers and air
 */
export function fanSpeeds(inputs: FanInputs, surroundings: FanSurroundings): SpeedTrial[] {
  return SPEEDS.map((speed) => ({
    speed,
    ...fanTrial(`${Math.round(100 * speed)} %`, { ...inputs, speed }, surroundings),
  }));
}

/**
 * Every fan of the list and of the user's own file, as many as in the study, at rated speed.
 *
 * @param inputs `fan` section of the study
 * @param surroundings tubes, headers and air
 */
export function fanChoices(inputs: FanInputs, surroundings: FanSurroundings): FanTrial[] {
  const fans = [...inputs.ownFans ?? [], ...FANS];
  return fans.map(({ id, name }) => fanTrial(name, { ...inputs, fan: id, speed: 1 }, surroundings));
}

/** What other fans, numbers, speeds and elevations would do. */
export interface FanVariants {
  /** one and more of the study's fans */
  readonly counts: readonly FanTrial[];
  /** other speeds, rising */
  readonly speeds: readonly SpeedTrial[];
  /** every fan of the list */
  readonly choices: readonly FanTrial[];
  /** the same field and fans higher up */
  readonly elevations: readonly ElevationTrial[];
}

/**
 * All variants of a study's fans.
 *
 * @param inputs `fan` section of the study
 * @param surroundings tubes, headers and air
 * @param field house, tubes and headers, to be worked out again in thinner air
 */
export function fanVariants(
  inputs: FanInputs,
  surroundings: FanSurroundings,
  field: HigherField,
): FanVariants {
  return {
    counts: fanCounts(inputs, surroundings),
    speeds: fanSpeeds(inputs, surroundings),
    choices: fanChoices(inputs, surroundings),
    elevations: fanElevations(inputs, field),
  };
}
