/** The new study file of a calibration. @module */
import { type FittedStudy, fittedStudy } from "../calibration/fitted_study.ts";
import type { Estimate } from "../calibration/estimate.ts";
import type { Believed, Calibration } from "./types.ts";

/** What the new study file is made from. */
export interface FittedRequest {
  /** text of the study file */
  readonly text: string;
  /** its name, for messages */
  readonly file: string;
  /** estimates, one for each key at most */
  readonly chosen: readonly Estimate[];
  /** what was believed of each key */
  readonly believed: readonly Believed[];
}

/** Picks what the new file hangs on. */
export function fittedTakes(
  { text, path }: { readonly text: string; readonly path: string },
  { calibration }: { readonly calibration: Calibration },
): FittedRequest {
  const { chosen, believed } = calibration;
  return { text, file: path.split(/[\\/]/).at(-1)!, chosen, believed };
}

/**
 * The study with fitted values in it, and everything else as it was.
 *
 * @param request text, estimates, what was believed
 */
export function fittedFile({ text, file, chosen, believed }: FittedRequest): FittedStudy {
  const priors = Object.fromEntries(believed.map(({ key, low, high }) => [key, { low, high }]));
  return fittedStudy(text, file, chosen, priors);
}
