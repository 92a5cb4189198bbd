/** Hours below freezing of a house that is known to a kelvin. @module */
import { hoursBelow } from "../basics/mod.ts";

/** Hours below freezing of a house that is known to a kelvin. */
export interface FreezingRange {
  /** h a year were it 1 K warmer all year */
  readonly warmer: number;
  /** h a year were it 1 K colder all year */
  readonly colder: number;
}

/**
 * Hours below freezing were the house 1 K warmer or colder all year than computed.
 *
 * @param air hourly air temperature, degC
 */
export function freezingRange(air: Float64Array): FreezingRange {
  return { warmer: hoursBelow(air, -1), colder: hoursBelow(air, 1) };
}
