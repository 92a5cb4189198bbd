/** The undisturbed ground as an annual wave. @module */
import { dailyMeans, DAY, HOURS_PER_YEAR, requireInRange, YEAR } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { AnnualWave, SoilProperties } from "./types.ts";

const DAYS = HOURS_PER_YEAR / 24;
const ANGULAR_FREQUENCY = (2 * Math.PI) / YEAR;
/**
 * W/(m K) of settled seasonal snow, chosen: Sturm et al. 1997 [sturm-1997] give 0.09 at 250 and
 * 0.16 at 330 kg/m³, Yen 1981 [yen-1981] 0.16 at 250.
 */
const SNOW_CONDUCTIVITY = 0.15;

/**
 * Depth at which a wave has fallen to 1/e, √(2a/ω).
 *
 * Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6.
 *
 * @param diffusivity m²/s
 * @param period s; one year unless said
 * @returns m
 */
export function dampingDepth(diffusivity: number, period = YEAR): number {
  return Math.sqrt((diffusivity * period) / Math.PI);
}

/**
 * Temperature of the undisturbed ground,
 * T(z,t) = mean − amplitude·exp(−z/d)·cos(2π(t − t_min)/365 − z/d).
 *
 * Source: Kusuda & Achenbach 1965 [kusuda-achenbach-1965]. Uniform soil without freezing. Day 1.0
 * is the start of 2 January; t_min is the day of the lowest surface temperature.
 *
 * @param wave mean, amplitude, day of the minimum, diffusivity
 * @param depth m below the surface
 * @param day days since 1 January 00:00
 * @returns degC
 * @example Half a metre down at the end of January
 * ```ts
 * import { undisturbedTemperature } from "winterground/soil/mod.ts";
 * const wave = { mean: 8, amplitude: 14, minimumDay: 30, diffusivity: 0.05 / 86400 };
 * const found = undisturbedTemperature(wave, 0.5, 30);
 * if (Math.abs(found + 3.1332) > 5e-5) throw new Error(`got ${found}`);
 * ```
 */
export function undisturbedTemperature(wave: AnnualWave, depth: number, day: number): number {
  requireInRange("depth in the ground", depth, 0, 1000, "m");
  const depths = depth / dampingDepth(wave.diffusivity);
  const angle = ANGULAR_FREQUENCY * DAY * (day - wave.minimumDay) - depths;
  return wave.mean - wave.amplitude * Math.exp(-depths) * Math.cos(angle);
}

/** Mean and first harmonic of a year of daily values (least squares). */
export interface Harmonic {
  /** of all values */
  readonly mean: number;
  /** half the swing of the harmonic */
  readonly amplitude: number;
  /** day of the lowest value of the harmonic, 0 to 365 */
  readonly minimumDay: number;
}

/**
 * Least-squares mean and annual harmonic of evenly spaced values covering one year.
 *
 * @param values any count above 3, the first centred half a step after 1 January 00:00
 */
export function annualHarmonic(values: ArrayLike<number>): Harmonic {
  const count = values.length;
  let mean = 0;
  let cosine = 0;
  let sine = 0;
  for (let i = 0; i < count; i++) {
    const angle = (2 * Math.PI * (i + 0.5)) / count;
    mean += values[i]! / count;
    cosine += (2 * values[i]! * Math.cos(angle)) / count;
    sine += (2 * values[i]! * Math.sin(angle)) / count;
  }
  const minimumDay = (Math.atan2(-sine, -cosine) / (2 * Math.PI)) * DAYS;
  return { mean, amplitude: Math.hypot(cosine, sine), minimumDay: (minimumDay + DAYS) % DAYS };
}

/**
 * Share of the frost below 0 °C that reaches the ground through snow,
 * 1/√(1 + 2μ + 2μ²), μ = R·λ/d.
 *
 * Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6, annual wave through a surface
 * resistance R = depth/0.15. Field values of this ratio run from 0.3 under deep snow to 1 on bare
 * ground (Lunardini 1978 [lunardini-1978], freezing n-factor, from memory).
 */
function snowDamping(snowDepth: number, properties: SoilProperties): number {
  const resistance = snowDepth / SNOW_CONDUCTIVITY;
  const mu = (resistance * properties.conductivity) / dampingDepth(properties.diffusivity);
  return 1 / Math.sqrt(1 + 2 * mu + 2 * mu * mu);
}

/**
 * Annual wave of the ground fitted to a climate year.
 *
 * Rule: the surface follows the daily air temperature above 0 °C; below, the snow lets only
 * {@link snowDamping} of the frost through. Mean and amplitude are those of the first harmonic of
 * that surface temperature. Warm places get the air's own mean and harmonic.
 *
 * Source: the damping by snow is exact for a wave; the rule above 0 °C is a convention of ours.
 *
 * @param climate the year
 * @param properties of the soil, unfrozen diffusivity
 * @param snowDepth typical depth in winter, m
 * @returns mean in degC, amplitude in K, day of the minimum, diffusivity in m²/s
 */
export function fitWave(
  climate: Pick<ClimateYear, "dryBulb">,
  properties: SoilProperties,
  snowDepth: number,
): AnnualWave {
  const damping = snowDamping(snowDepth, properties);
  const surface = dailyMeans(climate.dryBulb).map((air) => air < 0 ? damping * air : air);
  return { ...annualHarmonic(surface), diffusivity: properties.diffusivity };
}

/**
 * Depth to which an annual wave freezes, d·ln(amplitude/mean); 0 where it does not.
 *
 * Latent heat is left out, so the wave freezes deeper than wet soil does.
 *
 * Source: exact for the wave of Kusuda & Achenbach 1965 [kusuda-achenbach-1965].
 *
 * @param wave mean in degC, amplitude in K, diffusivity in m²/s
 * @returns m; infinite where the mean itself is below 0 °C
 */
export function waveFrostDepth(wave: AnnualWave): number {
  if (wave.mean <= 0) return Infinity;
  if (wave.amplitude <= wave.mean) return 0;
  return dampingDepth(wave.diffusivity) * Math.log(wave.amplitude / wave.mean);
}
