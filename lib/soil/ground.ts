/** The undisturbed ground through the years until they repeat. @module */
import { mean } from "d3-array";
import { DAY, InputError, NotConvergedError } from "../basics/mod.ts";
import {
  buildColumn,
  columnHeat,
  columnStepper,
  frostFront,
  startColumn,
  temperatureAtDepth,
} from "./column.ts";
import type { ColumnMesh, ColumnState, SoilColumn, SoilLayer } from "./column.ts";
import { snowCover, snowCoverOfDepth } from "./snow.ts";
import type { SnowCover } from "./snow.ts";
import {
  assumedPrecipitation,
  clearSkyShares,
  GRASS,
  surfaceForcing,
  vapourPressures,
} from "./surface.ts";
import type { GroundCover, SurfaceForcing } from "./surface.ts";
import { requireYear } from "./weather.ts";
import type { DailyWeather } from "./weather.ts";

/** Cells fit for the annual wave and frost. */
export const ANNUAL_MESH: ColumnMesh = {
  depth: 15,
  firstCell: 0.04,
  growth: 1.08,
  largestCell: 0.5,
};

/** What the undisturbed ground is computed from. */
export interface GroundQuestion {
  /** weather of the year that repeats */
  readonly weather: DailyWeather;
  /** soil from the top down */
  readonly layers: readonly SoilLayer[];
  /** typical depth of the winter snow, m; where missing, snow follows from the weather */
  readonly snowDepth?: number;
  /** what covers the ground; grass unless said */
  readonly cover?: GroundCover;
  /** cells; the annual ones unless said */
  readonly mesh?: ColumnMesh;
  /** steps a day; 2 unless said */
  readonly stepsPerDay?: number;
}

/** Heat ledger of the last year, J/m². */
export interface GroundLedger {
  /** heat into the ground over the days it warmed and out of it over the days it cooled */
  readonly in: number;
  /** heat out of the surface */
  readonly out: number;
  /** gain of the column's heat content over the year */
  readonly gain: number;
  /** |in − out − gain| over in + out */
  readonly residual: number;
}

/** The undisturbed ground over one year of the repeating weather. */
export interface GroundYear {
  /** cells of the column */
  readonly column: SoilColumn;
  /** degC at the end of each day, by cell */
  readonly temperature: readonly Float64Array[];
  /** deepest 0 degC in the year, m */
  readonly frostDepth: number;
  /** snow of the year */
  readonly snow: SnowCover;
  /** equivalent outside temperature and conductance of each day */
  readonly forcing: SurfaceForcing;
  /** years run until they repeated */
  readonly years: number;
  /** K, largest difference between the last two years' ends */
  readonly drift: number;
  /** heat balance of the last year */
  readonly ledger: GroundLedger;
}

const MOST_YEARS = 200;
/** K between two years' ends that count as the same. */
const SAME_YEAR = 0.005;
/** K a year that slowly freezing or thawing deep ground may still move after 200 years. */
const SLOW_DRIFT = 0.05;

/** Snow of the question's weather. */
function groundSnow(question: GroundQuestion): SnowCover {
  const { weather, snowDepth } = question;
  const rain = assumedPrecipitation(weather, vapourPressures(weather), clearSkyShares(weather));
  return snowDepth === undefined
    ? snowCover(weather.temperature, rain)
    : snowCoverOfDepth(weather.temperature, rain, snowDepth);
}

/** One year of the column in place; gives temperatures by day and the ledger. */
function runYear(
  column: SoilColumn,
  state: ColumnState,
  forcing: SurfaceForcing,
  stepsPerDay: number,
): { temperature: Float64Array[]; ledger: GroundLedger } {
  const step = columnStepper(column);
  const before = columnHeat(column, state);
  const seconds = DAY / stepsPerDay;
  const base = { temperature: 0, conductance: 0 };
  const temperature: Float64Array[] = [];
  let into = 0;
  let out = 0;
  for (let day = 0; day < forcing.temperature.length; day++) {
    const surface = {
      temperature: forcing.temperature[day]!,
      conductance: forcing.conductance[day]!,
    };
    for (let i = 0; i < stepsPerDay; i++) {
      const heat = step(state, surface, base, seconds).surface;
      if (heat > 0) into += heat;
      else out -= heat;
    }
    temperature.push(state.temperature.slice());
  }
  const gain = columnHeat(column, state) - before;
  const residual = Math.abs(into - out - gain) / (into + out || 1);
  return { temperature, ledger: { in: into, out, gain, residual } };
}

/** Mean of a year of profiles, by cell. */
function meanProfile(temperature: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(temperature[0]!.length);
  for (const profile of temperature) {
    profile.forEach((value, i) => mean[i]! += value / temperature.length);
  }
  return mean;
}

/** Profile that starts the next year nearer to repeating: deep soil takes the mean found above it. */
function hastened(
  column: SoilColumn,
  temperature: readonly Float64Array[],
  frostDepth: number,
): Float64Array {
  const mean = meanProfile(temperature);
  const anchor = column.depth.findIndex((depth) => depth > Math.max(0.5, frostDepth + 0.1));
  const end = temperature.at(-1)!;
  if (anchor < 0) return end;
  return end.map((value, i) => i <= anchor ? value : value + mean[anchor]! - mean[i]!);
}

/**
 * Temperature of the undisturbed ground: a one-dimensional column through the same year again and
 * again until it repeats, with surface balance, snow, freezing and thawing, no heat through the
 * bottom.
 *
 * @param question weather, layers, snow, cover
 * @returns temperature of each layer on each day in degC, frost depth in m, heat ledger in J/m²
 * @throws {NotConvergedError} where the ground still moves by 0.05 K a year after 200 years
 */
export function undisturbedGround(question: GroundQuestion): GroundYear {
  requireYear(question.weather);
  const stepsPerDay = question.stepsPerDay ?? 2;
  if (!(Number.isInteger(stepsPerDay) && stepsPerDay > 0)) {
    throw new InputError(`Steps per day must be a whole number above 0: ${stepsPerDay}`);
  }
  const snow = groundSnow(question);
  const forcing = surfaceForcing(question.weather, question.cover ?? GRASS, snow);
  const column = buildColumn(question.layers, question.mesh ?? ANNUAL_MESH);
  const guess = mean(forcing.temperature)!;
  let state = startColumn(column, () => guess);
  let drift = Infinity;
  for (let years = 1; years <= MOST_YEARS; years++) {
    const start = state.temperature.slice();
    const { temperature, ledger } = runYear(column, state, forcing, stepsPerDay);
    drift = Math.max(...start.map((value, i) => Math.abs(value - state.temperature[i]!)));
    const frostDepth = Math.max(...temperature.map((profile) => frostFront(column, profile)));
    if (drift < SAME_YEAR || (years === MOST_YEARS && drift < SLOW_DRIFT)) {
      return { column, temperature, frostDepth, snow, forcing, years, drift, ledger };
    }
    const next = years < 6 ? hastened(column, temperature, frostDepth) : state.temperature;
    state = startColumn(column, (depth) => temperatureAtDepth(column, next, depth));
  }
  throw new NotConvergedError("a repeating year of the ground", MOST_YEARS, drift);
}

/**
 * Temperature of each day at one depth, degC.
 *
 * @param ground a settled year of the ground
 * @param depth m, 0 or more
 * @returns 365 daily values, degC
 */
export function groundAtDepth(ground: GroundYear, depth: number): Float64Array {
  return Float64Array.from(
    ground.temperature,
    (profile) => temperatureAtDepth(ground.column, profile, depth),
  );
}
