/** How far a model is from what was measured, in the terms of calibration guidelines. @module */
import { InputError } from "../../basics/mod.ts";

/** Agreement of a model with measurements. */
export interface Agreement {
  /**
   * normalised mean bias error, measured less simulated over the mean of the measured, 1: positive
   * where the model is too low
   */
  readonly nmbe: number;
  /** coefficient of variation of the root mean square error, 1 */
  readonly cvRmse: number;
  /** number of fitted parameters taken off the number of values */
  readonly parameters: number;
}

/** Largest NMBE of either sign and largest CV(RMSE) of a calibrated model, 1. */
export const AGREEMENT_LIMITS = {
  monthly: { nmbe: 0.05, cvRmse: 0.15 },
  hourly: { nmbe: 0.1, cvRmse: 0.3 },
} as const;

/**
 * NMBE and CV(RMSE) of ASHRAE Guideline 14 [ashrae-g14-2002], measured less simulated.
 *
 * @param measured with a mean other than 0; for temperatures in degC the mean has no meaning, so
 * use it for heat, water or money
 * @param simulated of the same length
 * @param parameters taken off the number of values: 1 in the edition of 2002, 0 in common use
 * @throws InputError where lengths differ, values are too few or missing, or the mean is 0
 */
export function agreement(
  measured: readonly number[],
  simulated: readonly number[],
  parameters = 1,
): Agreement {
  const count = measured.length - parameters;
  if (measured.length !== simulated.length) {
    throw new InputError(
      `agreement: ${measured.length} measured and ${simulated.length} simulated values; expected ` +
        "as many of each: cut both to the same hours",
    );
  }
  if (!(count > 0)) {
    throw new InputError(
      `agreement: ${measured.length} values; expected more than ${parameters}: measure longer`,
    );
  }
  const odd = measured.findIndex((value, i) => !Number.isFinite(value + simulated[i]!));
  if (odd >= 0) {
    throw new InputError(
      `agreement: value ${odd + 1} is missing; leave out gaps from both lists first`,
    );
  }
  const mean = measured.reduce((sum, value) => sum + value, 0) / measured.length;
  if (mean === 0) {
    throw new InputError(
      "agreement: the measured values have a mean of 0; shares of it mean nothing",
    );
  }
  const gaps = measured.map((value, i) => value - simulated[i]!);
  return {
    nmbe: gaps.reduce((sum, gap) => sum + gap, 0) / (count * mean),
    cvRmse: Math.sqrt(gaps.reduce((sum, gap) => sum + gap * gap, 0) / count) / Math.abs(mean),
    parameters,
  };
}
