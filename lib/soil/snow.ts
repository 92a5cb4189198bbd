/** Snow on the ground from daily temperature alone, by degree-days. @module */
import { halve, MONTH_DAYS, requireInRange } from "../basics/mod.ts";

/**
 * kg/m² a day for each K of the daily mean above 0 °C; WMO 1986 [wmo-1986] gives 2 to 5 (from
 * memory).
 */
export const MELT_RATE = 3;
/** degC at which half falls as snow, and K either side in which rain turns to snow; common practice, no source. */
const MIXED_MIDDLE = 1;
const MIXED_BAND = 2;
/**
 * kg/m³: fresh and settled snow, and days to settle; Verseghy 1991 [verseghy-1991] (from memory).
 */
export const FRESH_DENSITY = 100;
const SETTLED_DENSITY = 300;
const SETTLING_DAYS = 4.2;

/** Times the file's precipitation that is looked through for a stated snow depth. */
const MOST_SNOWFALL = 40;

/**
 * Density of snow after some days of settling.
 *
 * Source: Verseghy 1991 [verseghy-1991] (from memory).
 *
 * @param density kg/m³
 * @param days passed
 * @returns kg/m³
 */
export function settledDensity(density: number, days: number): number {
  return density + (SETTLED_DENSITY - density) * (1 - Math.exp(-days / SETTLING_DAYS));
}

/** Snow on the ground by the day. */
export interface SnowCover {
  /** m */
  readonly depth: Float64Array;
  /** kg/m² of water */
  readonly water: Float64Array;
  /** m² K/W of the snow */
  readonly resistance: Float64Array;
}

/**
 * Conductivity of snow by density in kg/m³, 2.22 (ρ/1000)^1.88 W/(m K); Yen 1981 [yen-1981].
 */
export function snowConductivity(density: number): number {
  return 2.22 * (density / 1000) ** 1.88;
}

/**
 * Share of the precipitation that falls as snow: all below -1, none above 3 degC.
 *
 * Source: common practice, no source.
 *
 * @param temperature degC of the air
 * @returns 0 to 1
 */
export function snowShare(temperature: number): number {
  return Math.min(1, Math.max(0, 0.5 + (MIXED_MIDDLE - temperature) / (2 * MIXED_BAND)));
}

/**
 * Snow cover of a repeating year: falls below about +1 °C, melts by degree-days, settles with age.
 *
 * water += snowfall; melt = 3 kg/(m² K) per day above 0 °C; density goes from 100 to 300 kg/m³ with
 * a time of 4.2 d. Run twice, so that the year begins with the snow it ends with. Wind drift,
 * interception and radiation melt are left out.
 *
 * Source: degree-days WMO 1986 [wmo-1986], settling Verseghy 1991 [verseghy-1991] (both from
 * memory).
 *
 * @param temperature daily mean of the air, degC
 * @param precipitation daily, kg/m²
 * @returns by the day: depth in m, water in kg/m², resistance in m² K/W
 */
export function snowCover(
  temperature: ArrayLike<number>,
  precipitation: ArrayLike<number>,
): SnowCover {
  const days = temperature.length;
  const cover = {
    depth: new Float64Array(days),
    water: new Float64Array(days),
    resistance: new Float64Array(days),
  };
  let water = 0;
  let density = FRESH_DENSITY;
  for (let step = 0; step < 2 * days; step++) {
    const day = step % days;
    const air = temperature[day]!;
    density = settledDensity(density, 1);
    const fall = precipitation[day]! * snowShare(air);
    const left = Math.max(0, water - MELT_RATE * Math.max(0, air));
    if (left + fall > 0) density = (left + fall) / (left / density + fall / FRESH_DENSITY);
    water = left + fall;
    cover.water[day] = water;
    cover.depth[day] = water / density;
    cover.resistance[day] = water / density / snowConductivity(density);
  }
  return cover;
}

/** Mean depth over the three months with the deepest snow, m. */
export function typicalSnowDepth(cover: SnowCover): number {
  let day = 0;
  const months = MONTH_DAYS.map((days) => {
    let sum = 0;
    for (let i = 0; i < days; i++) sum += cover.depth[day++]!;
    return sum / days;
  });
  return months.sort((a, b) => b - a).slice(0, 3).reduce((sum, depth) => sum + depth / 3, 0);
}

/**
 * Snow cover with a stated typical depth: the assumed precipitation is scaled until the mean of the
 * three deepest months is `depth`.
 *
 * A year too warm to keep snow stays below `depth`.
 *
 * @param depth m; 0 gives bare ground
 * @throws {OutOfRangeError} outside 0 to 10 m
 */
export function snowCoverOfDepth(
  temperature: ArrayLike<number>,
  precipitation: ArrayLike<number>,
  depth: number,
): SnowCover {
  return scaledCover(
    temperature,
    precipitation,
    snowfallScale(temperature, precipitation, depth),
  );
}

function scaledCover(
  temperature: ArrayLike<number>,
  precipitation: ArrayLike<number>,
  factor: number,
): SnowCover {
  return snowCover(temperature, Float64Array.from(precipitation, (value) => value * factor));
}

/**
 * What the assumed precipitation has to be multiplied with for a stated typical depth of snow.
 *
 * @param temperature daily mean of the air, degC
 * @param precipitation daily, kg/m²
 * @param depth m; 0 gives bare ground
 * @returns a ratio, at most 40
 * @throws {OutOfRangeError} outside 0 to 10 m
 */
export function snowfallScale(
  temperature: ArrayLike<number>,
  precipitation: ArrayLike<number>,
  depth: number,
): number {
  requireInRange("snow depth", depth, 0, 10, "m");
  if (depth === 0) return 0;
  const tooLittle = (factor: number) =>
    typicalSnowDepth(scaledCover(temperature, precipitation, factor)) < depth;
  return halve(tooLittle, 0, MOST_SNOWFALL, MOST_SNOWFALL / 2 ** 30).fails;
}
