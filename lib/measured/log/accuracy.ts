/** Accuracy of a sensor where its owner says none. @module */
import type { Quantity } from "./quantities.ts";

/** Standard uncertainty of a reading: a fixed part and a share of the reading. */
export interface Accuracy {
  /** standard uncertainty in the quantity's SI unit; temperatures in K */
  readonly accuracy: number;
  /** share of the reading that is added in squares */
  readonly relativeAccuracy?: number;
}

const TEMPERATURE: Accuracy = { accuracy: 0.3 };

/**
 * Usual sensors as they are bought, not calibrated by pairs: temperatures ±0.5 K and humidities
 * ±3 % as limits of an even spread or a little more, air flow by traverse 10 %, radiation 5 %,
 * energy meters class 1. Common practice, no source.
 */
export const QUANTITY_ACCURACY: Readonly<Record<Quantity, Accuracy>> = {
  airTemperature: TEMPERATURE,
  outsideTemperature: TEMPERATURE,
  wetBulbTemperature: TEMPERATURE,
  surfaceTemperature: { accuracy: 0.5 },
  soilTemperature: TEMPERATURE,
  relativeHumidity: { accuracy: 0.02 },
  soilMoisture: { accuracy: 0.03 },
  airSpeed: { accuracy: 0.05, relativeAccuracy: 0.05 },
  airFlow: { accuracy: 0, relativeAccuracy: 0.1 },
  pressure: { accuracy: 1, relativeAccuracy: 0.01 },
  barometer: { accuracy: 100 },
  power: { accuracy: 0, relativeAccuracy: 0.01 },
  heaterPower: { accuracy: 0, relativeAccuracy: 0.05 },
  globalRadiation: { accuracy: 5, relativeAccuracy: 0.05 },
  netLongwave: { accuracy: 10, relativeAccuracy: 0.1 },
  windSpeed: { accuracy: 0.3, relativeAccuracy: 0.03 },
  carbonDioxide: { accuracy: 40, relativeAccuracy: 0.03 },
  ventOpening: { accuracy: 0.05 },
  curtain: { accuracy: 0.05 },
  other: { accuracy: 0 },
};
