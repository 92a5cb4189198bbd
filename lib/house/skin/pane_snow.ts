/** Snow on one glazed plane: falls, settles, melts from within and without, slides, is cleared. @module */
import { HEAT_OF_FUSION, HOUR } from "../../basics/mod.ts";
import {
  FRESH_DENSITY,
  MELT_RATE,
  settledDensity,
  snowConductivity,
  snowShare,
} from "../../soil/snow.ts";

/**
 * Share of a pane's height that snow slides in an hour, times the sine of the tilt; and W/(m² K) of
 * sun on the pane that make up for a kelvin of frost. Marion, Schaefer, Caine & Sanchez 2013
 * [marion-2013], measured on solar panels.
 */
const SLIDE = 0.197;
const SUN_FOR_KELVIN = 80;
/**
 * 1/m of sun in snow: 0.1 m leave 3 %; Perovich 2007 [perovich-2007]: 5 % of the visible light and
 * less than 1 % of the infrared.
 */
const EXTINCTION = 35;
/** kg/m² of snow water that no longer counts */
const SPECK = 0.01;
/** hour of the day in which snow is cleared by hand */
const CLEARING_HOUR = 9;

/** What acts on the snow of a pane, hour by hour. */
export interface PaneWeather {
  /** degrees from horizontal */
  readonly tilt: number;
  /** kg/m² of rain and snow on the horizontal in each hour */
  readonly precipitation: Float64Array;
  /** degC outside */
  readonly outside: Float64Array;
  /** degC inside */
  readonly inside: Float64Array;
  /** W/m² of sun on the pane */
  readonly sun: Float64Array;
  /** m² K/W from the house air to the pane's outer surface, curtain counted */
  readonly inner: Float64Array;
  /** W/(m² K) from the snow's surface to the air outside */
  readonly film: Float64Array;
  /** m of snow above which it is cleared in the morning; null where nobody does */
  readonly clearedAbove: number | null;
}

/** Snow of one pane through the year. */
export interface PaneSnow {
  /** share of the pane under snow, 0 to 1 */
  readonly cover: Float64Array;
  /** m of snow where it lies */
  readonly depth: Float64Array;
  /** m² K/W of the snow where it lies */
  readonly resistance: Float64Array;
  /** share of the light that snow lets through to the glazing, 0 to 1 */
  readonly light: Float64Array;
  /** kg/m² of water a year: what fell, and where it went */
  readonly water: Readonly<Record<"fell" | "melted" | "slid" | "cleared" | "stored", number>>;
}

interface Lying {
  /** kg/m² where it lies */
  water: number;
  /** share of the pane */
  cover: number;
  /** kg/m³ */
  density: number;
}

/** kg/m² that melt in an hour where snow lies, and whether it lies wet on the glass. */
function melting(pane: PaneWeather, hour: number, lying: Lying): { melt: number; wet: boolean } {
  const outside = pane.outside[hour]!;
  const resistance = lying.water / lying.density / snowConductivity(lying.density);
  const up = -outside / (resistance + 1 / pane.film[hour]!);
  const within = pane.inside[hour]! / pane.inner[hour]! - Math.max(0, up);
  const fromWithin = Math.max(0, within) * HOUR / HEAT_OF_FUSION;
  const fromWithout = MELT_RATE / 24 * Math.max(0, outside);
  return {
    melt: fromWithin + fromWithout,
    wet: within > 0 || outside + pane.sun[hour]! / SUN_FOR_KELVIN > 0,
  };
}

/**
 * Snow of a pane hour by hour through a year that repeats.
 *
 * New snow covers the whole pane, as much as its tilt catches of what falls straight down. It melts at
 * its foot by the heat that comes from the house less what goes on through the snow, and by
 * degree-days on top. While it lies wet on the glass, or the sun makes up for the frost (T + I/80 >
 * 0), 0.197·sin(tilt) of the pane's height slides free in an hour.
 *
 * Source: sliding Marion et al. 2013 [marion-2013]; degree-days WMO 1986 [wmo-1986], settling Verseghy
 * 1991 [verseghy-1991] (both from memory). Drifts, rime, snow held by bars and gutters, and what piles
 * up at the foot of the wall are left out.
 *
 * @param pane what acts on it
 */
export function paneSnow(pane: PaneWeather): PaneSnow {
  const hours = pane.outside.length;
  const make = () => new Float64Array(hours);
  const series = { cover: make(), depth: make(), resistance: make(), light: make().fill(1) };
  const lying: Lying = { water: 0, cover: 0, density: FRESH_DENSITY };
  let water = { fell: 0, melted: 0, slid: 0, cleared: 0, stored: 0 };
  for (let step = 0; step < 2 * hours; step++) {
    const hour = step % hours;
    if (hour === 0) {
      water = { fell: 0, melted: 0, slid: 0, cleared: 0, stored: -lying.water * lying.cover };
    }
    moveOn(pane, hour, lying, water);
    const depth = lying.cover > 0 ? lying.water / lying.density : 0;
    series.cover[hour] = lying.cover;
    series.depth[hour] = depth;
    series.resistance[hour] = depth / snowConductivity(lying.density);
    series.light[hour] = 1 - lying.cover * (1 - Math.exp(-EXTINCTION * depth));
  }
  water.stored += lying.water * lying.cover;
  return { ...series, water };
}

/** One hour of the snow of a pane; adds to the year's water. */
function moveOn(
  pane: PaneWeather,
  hour: number,
  lying: Lying,
  water: { fell: number; melted: number; slid: number; cleared: number },
): void {
  const tilt = pane.tilt * Math.PI / 180;
  const fall = pane.precipitation[hour]! * snowShare(pane.outside[hour]!) *
    Math.max(0, Math.cos(tilt));
  lying.density = settledDensity(lying.density, 1 / 24);
  if (fall > 0) {
    const held = lying.water * lying.cover;
    lying.density = (held + fall) / (held / lying.density + fall / FRESH_DENSITY);
    lying.water = held + fall;
    lying.cover = 1;
    water.fell += fall;
  }
  if (lying.cover <= 0) return;
  const { melt, wet } = melting(pane, hour, lying);
  const melted = Math.min(lying.water, melt);
  lying.water -= melted;
  water.melted += melted * lying.cover;
  const slid = wet ? Math.min(lying.cover, SLIDE * Math.sin(tilt)) : 0;
  lying.cover -= slid;
  water.slid += slid * lying.water;
  const morning = hour % 24 === CLEARING_HOUR;
  const left = lying.water * lying.cover;
  const high = pane.clearedAbove !== null && lying.water / lying.density > pane.clearedAbove;
  if (left > SPECK && !(morning && high)) return;
  if (left > SPECK) water.cleared += left;
  else water.melted += left;
  lying.water = 0;
  lying.cover = 0;
  lying.density = FRESH_DENSITY;
}
