/** How large a heater must be beside the store. @module */

/** Highest means of a heater over some spans, W. */
export interface HeaterPeaks {
  /** W, highest hour */
  readonly hour: number;
  /** W, highest mean of 24 h */
  readonly day: number;
  /** W, highest mean of 72 h */
  readonly threeDays: number;
}

/**
 * Highest hour, highest day and highest three days of a heater; spans start at any hour of the year.
 *
 * @param heater hourly, W
 */
export function heaterPeaks(heater: ArrayLike<number>): HeaterPeaks {
  return {
    hour: highestMean(heater, 1),
    day: highestMean(heater, 24),
    threeDays: highestMean(heater, 72),
  };
}

function highestMean(heater: ArrayLike<number>, hours: number): number {
  let sum = 0;
  let most = 0;
  for (let hour = 0; hour < heater.length; hour++) {
    sum += heater[hour]! - (hour >= hours ? heater[hour - hours]! : 0);
    if (hour >= hours - 1) most = Math.max(most, sum / hours);
  }
  return most;
}
