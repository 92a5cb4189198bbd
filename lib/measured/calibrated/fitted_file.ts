/** The new study file of a calibration. @module */
import { roundToFigures } from "../../basics/mod.ts";
import { type FittedKey, type FittedStudy, fittedStudy } from "../calibration/fitted_study.ts";
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

/** The new study file, and its doubt. */
export interface FittedFiles extends FittedStudy {
  /**
   * text of a sweep file that samples the fitted values within their intervals, for the doubt of chapter
   * `worth`; null where nothing was fitted
   */
  readonly doubt: string | null;
}

/** number of samples, and digits of the ends of an interval */
const [ROWS, DIGITS] = [64, 4];

/** A sweep within the intervals of what was fitted. */
function doubtFile(file: string, changed: readonly FittedKey[]): string | null {
  if (changed.length === 0) return null;
  const end = (value: number, unit: string) => {
    const number = String(roundToFigures(value, DIGITS));
    return unit === "" ? number : `${number} ${unit}`;
  };
  const keys = changed.map(({ key, estimate: { low, high, unit } }) =>
    `  ${key}: { from: ${end(low, unit)}, to: ${end(high, unit)} }`
  );
  return [
    `# What the log of ${file} leaves open: the 95 % intervals of the fitted values.`,
    "# Run it over the fitted study file: deno task sweep FITTED.yaml THIS.yaml",
    "form: sample",
    `rows: ${ROWS}`,
    "points: sobol",
    "seed: 1",
    "chapters: [house, fan, store]",
    "keys:",
    ...keys,
    "",
  ].join("\n");
}

/**
 * The study with fitted values in it, and everything else as it was.
 *
 * @param request text, estimates, what was believed
 */
export function fittedFile({ text, file, chosen, believed }: FittedRequest): FittedFiles {
  const priors = Object.fromEntries(believed.map(({ key, low, high }) => [key, { low, high }]));
  const fitted = fittedStudy(text, file, chosen, priors);
  return { ...fitted, doubt: doubtFile(file, fitted.changed) };
}
