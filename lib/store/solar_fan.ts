/** The fans on a solar panel with a battery: what would carry them through the year. @module */
import { max, sum } from "d3-array";
import { monthlySums } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { planeSeries } from "../house/mod.ts";
import { hourlySun, type Plane, planeTotal } from "../sun/mod.ts";
import type { StoreYear } from "./types.ts";

/**
 * Power of the panel in the year over its rated power in as much sun as the rating takes: heat, wiring,
 * charge control, dirt. Common practice, no source.
 */
const PERFORMANCE = 0.75;
/** Share of what goes into a battery that comes out. Common practice, no source. */
const ROUND_TRIP = 0.85;
/** Share of a battery's rated content that may be taken out of it. Common practice, no source. */
const USABLE = 0.8;
/** deg by which a panel for winter is steeper than the latitude. Common practice, no source. */
const STEEPER = 15;
/** W/m² in which a panel is rated (IEC 60904-3). */
const RATED_SUN = 1000;
/** Panels looked at, as multiples of the fans' highest hourly power. */
const PANELS = [1, 2, 3, 5, 8, 12] as const;

/** What the fans' supply depends on. */
export interface SolarFanGiven {
  /** weather of the place */
  readonly climate: ClimateYear;
  /** the fans' hours: share, and W */
  readonly year: Pick<StoreYear, "fanShare" | "fanPower">;
}

/** One size of panel. */
export interface SolarPanel {
  /** W, rated */
  readonly power: number;
  /** kWh that it gives in the year */
  readonly energy: number;
  /** share of the electricity of charging met in the hour in which it is made: without a battery, 0 to 1 */
  readonly chargeShare: number | null;
  /** the same of discharging, 0 to 1 */
  readonly dischargeShare: number | null;
  /** kWh, rated, of the battery that leaves no hour of the year without power; null: none does */
  readonly battery: number | null;
}

/** One month of sun and fans. */
export interface SolarMonth {
  /** 0 to 11 */
  readonly month: number;
  /** kWh of the fans */
  readonly fan: number;
  /** kWh from a panel rated as high as the fans' highest hour */
  readonly panel: number;
}

/** The fans on a panel of their own. */
export interface SolarFan {
  /** deg from level, and deg clockwise from north */
  readonly plane: Plane;
  /** W, highest hour of the fans; 0 where they never run */
  readonly fanPower: number;
  /** kWh of the fans in the year */
  readonly fanEnergy: number;
  /** smallest first; none where the fans never run */
  readonly panels: readonly SolarPanel[];
  /** January to December */
  readonly months: readonly SolarMonth[];
}

/**
 * Usable content of the battery that leaves no hour without power: the deepest that it falls below full,
 * in a year that repeats. What a panel makes beyond the hour's load refills it with a loss.
 *
 * @param made W by hour
 * @param load W by hour
 * @returns Wh; null where the year takes more than it gives, whatever the battery
 */
export function batteryFor(made: Float64Array, load: Float64Array): number | null {
  let [below, deepest, atStart] = [0, 0, 0];
  for (let year = 0; year < 2; year++) {
    atStart = below;
    for (let hour = 0; hour < load.length; hour++) {
      const short = load[hour]! - made[hour]!;
      below = Math.max(0, below + (short > 0 ? short : ROUND_TRIP * short));
      deepest = Math.max(deepest, below);
    }
  }
  return below > atStart + 1e-6 * deepest ? null : deepest;
}

/** Share of a load that is met as it comes; null where there is none. */
function metShare(made: Float64Array, load: Float64Array, counts: (hour: number) => boolean) {
  let [met, all] = [0, 0];
  load.forEach((watt, hour) => {
    if (!counts(hour)) return;
    all += watt;
    met += Math.min(watt, made[hour]!);
  });
  return all > 0 ? met / all : null;
}

/** Equator-facing and steep, for the low sun of winter; deg. */
function winterPlane(latitude: number): Plane {
  return { tilt: Math.min(90, Math.abs(latitude) + STEEPER), azimuth: latitude < 0 ? 0 : 180 };
}

/**
 * Sets panels against the fans' electricity of the year, hour by hour. No snow on the panel, no cold
 * battery, no days worse than the year's: a supply to live by wants more of both.
 *
 * @param given weather, and the fans' year with the store, free-running
 */
export function solarFan({ climate, year }: SolarFanGiven): SolarFan {
  const plane = winterPlane(climate.place.latitude);
  const sun = planeTotal(planeSeries(climate, hourlySun(climate.place))(plane));
  const perWatt = sun.map((watt) => PERFORMANCE * watt / RATED_SUN);
  const load = year.fanPower;
  const fanPower = max(load)!;
  const sizes = fanPower > 0 ? PANELS.map((times) => times * fanPower) : [];
  const fans = monthlySums(load);
  const months = monthlySums(perWatt);
  return {
    plane,
    fanPower,
    fanEnergy: sum(load) / 1000,
    panels: sizes.map((power) => {
      const made = perWatt.map((share) => power * share);
      const content = batteryFor(made, load);
      return {
        power,
        energy: sum(made) / 1000,
        chargeShare: metShare(made, load, (hour) => year.fanShare[hour]! > 0),
        dischargeShare: metShare(made, load, (hour) => year.fanShare[hour]! < 0),
        battery: content === null ? null : content / USABLE / 1000,
      };
    }),
    months: fans.map((fan, month) => ({
      month,
      fan: fan / 1000,
      panel: fanPower * months[month]! / 1000,
    })),
  };
}
