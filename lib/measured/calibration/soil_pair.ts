/** Stage: diffusivity of the soil from the wave at two depths. @module */
import { InputError } from "../../basics/mod.ts";
import { estimates as inputs, propagate } from "../uncertainty/propagate.ts";
import { type Estimate, ratioEstimate, type Stage } from "./estimate.ts";
import { waveOf } from "./harmonic.ts";
import { showNumber } from "../../units/mod.ts";

/** Two probes in the ground. */
export interface SoilPair {
  /** s, times of both, rising */
  readonly seconds: ArrayLike<number>;
  /** degC by the upper probe; gaps are not numbers */
  readonly upper: ArrayLike<number>;
  /** degC by the lower probe */
  readonly lower: ArrayLike<number>;
  /** m between them */
  readonly distance: number;
  /** s of the wave: a year, or a day for probes within 0.3 m */
  readonly period: number;
  /** standard uncertainty of the distance, m; 0.02 unless given */
  readonly distanceUncertainty?: number;
}

/** fewest readings in a period and periods in a record */
const FEWEST = 12;
const LEAST_PERIODS = 0.7;

/**
 * Diffusivity from how much smaller and how much later the wave is at the lower of two depths:
 * a = π·Δz²/(P·ln²(A₁/A₂)) and a = π·Δz²/(P·Δφ²) (Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6). In a
 * uniform soil that only conducts both are the same; how far they differ says what else goes on, and the
 * stated interval holds both.
 *
 * @param pair probes
 * @returns stage with the diffusivity in m²/s by both, by amplitude and by lag
 * @throws InputError for a short record, or a wave that does not shrink and lag downwards
 */
export function soilPair(pair: SoilPair): Stage {
  const { seconds, upper, lower, distance, period, distanceUncertainty = 0.02 } = pair;
  const count = Array.from(upper).filter((one, i) => Number.isFinite(one + lower[i]!)).length;
  const span = (seconds[seconds.length - 1]! - seconds[0]!) / period;
  if (count < FEWEST || !(span > LEAST_PERIODS) || !(distance > 0)) {
    throw new InputError(
      `soil pair: ${count} readings over ${
        showNumber(span, 2)
      } periods, ${distance} m apart; expected ` +
        `${FEWEST} readings or more over ${LEAST_PERIODS} of the period at least, the lower probe below`,
    );
  }
  const [above, below] = [waveOf(seconds, upper, period), waveOf(seconds, lower, period)];
  const lag = (below.lag - above.lag + 3 * Math.PI) % (2 * Math.PI) - Math.PI;
  if (!(above.amplitude > below.amplitude) || !(lag > 0)) {
    throw new InputError(
      `soil pair: amplitudes ${showNumber(above.amplitude, 2)} and ${
        showNumber(below.amplitude, 2)
      } K, lag ` +
        `${
          showNumber(lag, 2)
        } rad; expected a wave that is smaller and later below: are the probes swapped?`,
    );
  }
  const found = propagate(
    inputs([distance, above.amplitude, below.amplitude, lag], [
      distanceUncertainty,
      above.amplitudeUncertainty,
      below.amplitudeUncertainty,
      Math.hypot(above.lagUncertainty, below.lagUncertainty),
    ]),
    ([apart, first, second, late]) => {
      const scale = Math.PI * apart! ** 2 / period;
      return [scale / Math.log(first! / second!) ** 2, scale / late! ** 2];
    },
  );
  const of = (name: string, j: number): Estimate =>
    ratioEstimate(
      { name, key: null, unit: "m2/s" },
      found.values[j]!,
      found.uncertainties[j]!,
    );
  const [byAmplitude, byLag] = [of("diffusivity by amplitude", 0), of("diffusivity by lag", 1)];
  const both = together(byAmplitude, byLag, found.correlation[0]![1]!);
  const ratio = Math.max(byAmplitude.value / byLag.value, byLag.value / byAmplitude.value);
  return {
    name: "soil, pair of depths",
    estimates: [both, byAmplitude, byLag],
    correlation: [[1, NaN, NaN], [NaN, ...found.correlation[0]!], [NaN, ...found.correlation[1]!]],
    used:
      `${count} readings over ${showNumber(span, 2)} periods of ${
        showNumber(period / 86400, 0)
      } days, ` +
      `${distance} m apart`,
    count,
    places: [],
    cannotTell: [
      ...ratio > 1.25
        ? [
          `Amplitude and lag give values that differ by a factor of ${
            showNumber(ratio, 1)
          }: layers, freezing, ` +
          "moving water or a record that is not a plain wave; these data do not say which.",
        ]
        : [],
      "Conductivity and heat capacity are told only as their ratio.",
      "The value is that of the soil between the probes, at its moisture of that time.",
    ],
  };
}

/** Geometric mean with an interval that holds both intervals' ends and their differing. */
function together(one: Estimate, other: Estimate, correlation: number): Estimate {
  const logs = [Math.log(one.value), Math.log(other.value)] as const;
  const shares = [one, other].map((e) => e.standardUncertainty / e.value) as [number, number];
  const scatter = Math.sqrt(
    Math.max(0, shares[0] ** 2 + shares[1] ** 2 + 2 * correlation * shares[0] * shares[1]),
  ) / 2;
  const apart = Math.abs(logs[0] - logs[1]) / 2;
  const value = Math.exp((logs[0] + logs[1]) / 2);
  return {
    name: "soil diffusivity",
    key: null,
    unit: "m2/s",
    value,
    // a difference to either side taken as a rectangle (GUM 4.3.7)
    standardUncertainty: value * Math.hypot(scatter, apart / Math.sqrt(3)),
    low: value * Math.exp(-Math.hypot(1.96 * scatter, apart)),
    high: value * Math.exp(Math.hypot(1.96 * scatter, apart)),
  };
}

/**
 * The study's measured conductivity from a diffusivity: λ = a·C.
 *
 * @param diffusivity estimate in m²/s
 * @param heatCapacity J/(m³ K) of the study's soil at the moisture of the record
 * @param heatCapacityDoubt standard uncertainty of it over its value; 0.1 unless given
 */
export function conductivityOf(
  diffusivity: Estimate,
  heatCapacity: number,
  heatCapacityDoubt = 0.1,
): Estimate {
  const { value, low, high, standardUncertainty } = diffusivity;
  const [down, up] = [Math.log(value / low), Math.log(high / value)];
  const wide = (log: number) => Math.exp(Math.hypot(log, 1.96 * heatCapacityDoubt));
  const conductivity = value * heatCapacity;
  return {
    name: "soil conductivity",
    key: "soil.measuredConductivity",
    unit: "W/(m K)",
    value: conductivity,
    standardUncertainty: conductivity *
      Math.hypot(standardUncertainty / value, heatCapacityDoubt),
    low: conductivity / wide(down),
    high: conductivity * wide(up),
  };
}
