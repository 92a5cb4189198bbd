/**
 * Radiation from monthly normals.
 *
 * Days: a normal variate mapped through the distribution of daily clearness for the month's mean
 * (Graham, Hollands & Unny 1988 [graham-1988], with the exponential distribution of Bendt et al. 1981
 * [bendt-1981] as in Duffie & Beckman 2013 [duffie-beckman-2013], eq. 2.9.6; its parameter is solved
 * so that the mean is met). Hours: the day's sum is spread by Collares-Pereira & Rabl 1979
 * [collares-pereira-rabl-1979], and roughened by the hourly autoregression of Aguiar &
 * Collares-Pereira 1992 [aguiar-1992]. Direct and diffuse: Erbs, Klein & Duffie 1982 [erbs-1982].
 *
 * @module
 */
import { MONTH_DAYS, monthOfHour } from "../../basics/mod.ts";
import { diffuseShare, type HourlySun } from "../../sun/mod.ts";
import { normalProbability } from "./normal_distribution.ts";

const LOWEST_CLEARNESS = 0.05;

/** Radiation of a generated year. */
export interface GeneratedRadiation {
  readonly globalHorizontal: Float64Array;
  readonly directNormal: Float64Array;
  readonly diffuseHorizontal: Float64Array;
}

/** Light outside the atmosphere on the horizontal, W/m² by hour. */
export function outsideLight(sun: HourlySun): Float64Array {
  return sun.cosZenith.map((cosine, hour) => cosine * sun.extraterrestrialNormal[hour]!);
}

/** Direct and diffuse parts of the global radiation, W/m². */
export function splitGlobal(
  global: Float64Array,
  outside: Float64Array,
  sun: HourlySun,
): GeneratedRadiation {
  const diffuse = global.map((value, hour) =>
    outside[hour]! > 0 ? value * diffuseShare(value / outside[hour]!) : 0
  );
  const direct = global.map((value, hour) => directOf(value - diffuse[hour]!, sun, hour));
  global.forEach((value, hour) => {
    const share = sun.upShare[hour]!;
    const beam = share > 0 ? direct[hour]! * sun.cosZenith[hour]! / share : 0;
    diffuse[hour] = value - beam;
  });
  return {
    globalHorizontal: global,
    directNormal: direct,
    diffuseHorizontal: diffuse,
  };
}

function directOf(beam: number, sun: HourlySun, hour: number): number {
  const share = sun.upShare[hour]!;
  if (share === 0 || sun.cosZenith[hour]! / share < 0.035) return 0;
  return Math.min(
    beam * share / sun.cosZenith[hour]!,
    0.85 * share * sun.extraterrestrialNormal[hour]!,
  );
}

/**
 * Distribution of daily clearness of each month.
 *
 * @param means kWh/m² a day, twelve values
 * @param outside light outside the atmosphere, W/m² by hour
 */
export function clearnessByMonth(
  means: readonly number[],
  outside: Float64Array,
): readonly ClearnessDistribution[] {
  const outsideOfMonth = new Float64Array(12);
  outside.forEach((value, hour) => outsideOfMonth[monthOfHour(hour)]! += value / 1000);
  return means.map((mean, month) =>
    clearnessDistribution(
      outsideOfMonth[month]! > 0 ? mean * MONTH_DAYS[month]! / outsideOfMonth[month]! : 0,
    )
  );
}

/**
 * Clearness of each day of a calendar year.
 *
 * @param distributions of the twelve months
 * @param variate standard normal value of each day
 */
export function dailyClearness(
  distributions: readonly ClearnessDistribution[],
  variate: Float64Array,
): Float64Array {
  return variate.map((value, day) =>
    distributions[monthOfHour(day * 24)]!.quantile(normalProbability(value))
  );
}

/** How clear the days of a month are. */
export interface ClearnessDistribution {
  /** clearness that a share of the days stays below */
  readonly quantile: (probability: number) => number;
}

/**
 * Distribution of daily clearness about a monthly mean: density ∝ exp(γ k) between 0.05 and kmax =
 * 0.6313 + 0.267 k̄ - 11.9 (k̄ - 0.75)⁸ (Hollands & Huget 1983 [hollands-huget-1983], as in Duffie
 * & Beckman 2013 [duffie-beckman-2013], eq. 2.9.6), γ solved for the mean.
 */
function clearnessDistribution(mean: number): ClearnessDistribution {
  const highest = Math.max(mean + 0.02, 0.6313 + 0.267 * mean - 11.9 * (mean - 0.75) ** 8);
  const low = Math.min(LOWEST_CLEARNESS, mean / 2);
  const width = highest - low;
  let [below, above] = [-200, 200];
  for (let step = 0; step < 60; step++) {
    const gamma = (below + above) / 2;
    if (low + width * exponentialMean(gamma * width) < mean) below = gamma;
    else above = gamma;
  }
  const bend = (below + above) / 2 * width;
  return {
    quantile: (probability) =>
      Math.abs(bend) < 1e-6
        ? low + width * probability
        : low + width * Math.log(1 + probability * Math.expm1(bend)) / bend,
  };
}

/** Mean of a density ∝ exp(b x) on 0 to 1. */
function exponentialMean(bend: number): number {
  if (Math.abs(bend) < 1e-4) return 0.5 + bend / 12;
  return 1 / (1 - Math.exp(-bend)) - 1 / bend;
}

/**
 * Spreads the light of each day over its hours, W/m².
 *
 * @param clearness of each day of a calendar year, 0 to 1
 * @param outside light outside the atmosphere, W/m² by hour
 * @param sun hourly sun of the place
 * @param noise standard normal draw of an hour, asked in order
 */
export function spreadOverHours(
  clearness: Float64Array,
  outside: Float64Array,
  sun: HourlySun,
  noise: (hour: number) => number,
): Float64Array {
  const global = new Float64Array(8760);
  let memory = 0;
  for (let day = 0; day < 365; day++) {
    const index = clearness[day]!;
    const persistence = 0.38 + 0.06 * Math.cos(7.4 * index - 2.5);
    let [shaped, wanted] = [0, 0];
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      memory = persistence * memory + Math.sqrt(1 - persistence ** 2) * noise(hour);
      const height = sun.upShare[hour]! > 0 ? sun.cosZenith[hour]! / sun.upShare[hour]! : 0;
      const rough = 0.14 * Math.exp(-20 * (index - 0.35) ** 2) *
        Math.exp((3 * (index - 0.45) ** 2 + 16 * index ** 5) * (1 - height));
      const hourly = Math.max(0.1 * index, index * hourShape(sun, hour) + rough * memory);
      global[hour] = outside[hour]! * Math.min(0.82, hourly);
      shaped += global[hour]!;
      wanted += outside[hour]! * index;
    }
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      global[hour] = shaped > 0 ? global[hour]! * wanted / shaped : 0;
    }
  }
  return global;
}

/** a + b cos ω of Collares-Pereira & Rabl: the light of an hour over the light outside. */
function hourShape(sun: HourlySun, hour: number): number {
  if (sun.upShare[hour] === 0) return 0;
  const phi = sun.latitude * Math.PI / 180;
  const delta = sun.declination[hour]! * Math.PI / 180;
  const sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(delta))));
  const angle = (sun.hourAngleStart[hour]! + sun.hourAngleEnd[hour]!) / 2 * Math.PI / 180;
  const a = 0.409 + 0.5016 * Math.sin(sunset - Math.PI / 3);
  const b = 0.6609 - 0.4767 * Math.sin(sunset - Math.PI / 3);
  return Math.max(0.1, a + b * Math.cos(angle));
}

/** Light of an hour is held to this share of the light outside. */
const MOST_LIGHT = 0.85;

/**
 * Scales each month to its mean without passing {@link MOST_LIGHT}; the rest goes to the other hours.
 *
 * @param global W/m² by hour, changed in place
 * @param means kWh/m² a day, twelve values
 * @param outside light outside the atmosphere, W/m² by hour
 */
export function meetMonthlySums(
  global: Float64Array,
  means: readonly number[],
  outside: Float64Array,
): void {
  for (let round = 0; round < 30; round++) {
    const have = new Float64Array(12);
    for (let hour = 0; hour < global.length; hour++) {
      have[monthOfHour(hour)]! += global[hour]! / 1000;
    }
    const scale = means.map((mean, month) =>
      have[month]! > 0 ? mean * MONTH_DAYS[month]! / have[month]! : 1
    );
    if (scale.every((value) => Math.abs(value - 1) < 1e-9)) return;
    for (let hour = 0; hour < global.length; hour++) {
      const most = MOST_LIGHT * outside[hour]!;
      global[hour] = Math.min(most, global[hour]! * scale[monthOfHour(hour)]!);
    }
  }
}
