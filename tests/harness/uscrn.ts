/**
 * Reads one year of daily records of the US Climate Reference Network (comma-separated, lower-case
 * heads) and scores the ground column against the soil temperatures in it. Missing days are filled
 * by straight lines in the weather and left out of the soil.
 *
 * @module
 */
import Papa from "papaparse";
import { InputError } from "../../lib/basics/mod.ts";
import type { DailyWeather, SoilProperties } from "../../lib/soil/mod.ts";
import {
  annualHarmonic,
  findSoil,
  groundAtDepth,
  soilProperties,
  undisturbedGround,
} from "../../lib/soil/mod.ts";

/** Daily records of one station and year. */
export interface StationYear {
  readonly weather: DailyWeather;
  /** measured degC by depth in cm; NaN where missing */
  readonly soil: ReadonlyMap<number, Float64Array>;
}

/** Soil depths of the network, cm. */
const DEPTHS = [5, 10, 20, 50, 100];
/** J in a MJ and s in a day. */
const MEGAJOULE_PER_DAY = 1e6 / 86400;

function numbers(rows: readonly Record<string, string>[], column: string): Float64Array {
  if (rows[0] === undefined || !(column in rows[0])) {
    throw new InputError(`Station file has no column "${column}"`);
  }
  return Float64Array.from(rows, (row) => {
    const value = row[column] === "" ? NaN : Number(row[column]);
    return value <= -9999 ? NaN : value;
  });
}

/** Straight lines over missing values, the nearest one before the first and after the last. */
function filled(values: Float64Array): Float64Array {
  const known = [...values.keys()].filter((i) => Number.isFinite(values[i]!));
  if (known.length < 300) throw new InputError(`Station file has only ${known.length} good days`);
  return values.map((value, i) => {
    if (Number.isFinite(value)) return value;
    const before = known.findLast((k) => k < i);
    const after = known.find((k) => k > i);
    if (before === undefined || after === undefined) return values[before ?? after!]!;
    const share = (i - before) / (after - before);
    return values[before]! + share * (values[after]! - values[before]!);
  });
}

/**
 * Reads a station file. Only air temperature (mean, lowest), radiation and latitude become weather.
 *
 * @param elevation m; 500 where it is not known
 */
export function readStationYear(text: string, elevation = 500): StationYear {
  const rows =
    Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
  const weather: DailyWeather = {
    place: { latitude: numbers(rows, "latitude")[0]!, elevation },
    temperature: filled(numbers(rows, "t_daily_avg")),
    minTemperature: filled(numbers(rows, "t_daily_min")),
    radiation: filled(numbers(rows, "solarad_daily")).map((value) => value * MEGAJOULE_PER_DAY),
  };
  const soil = DEPTHS.map((depth) =>
    [depth, numbers(rows, `soil_temp_${depth}_daily`)] as [number, Float64Array]
  );
  return { weather, soil: new Map(soil) };
}

/** Mean and annual amplitude of one series. */
export interface Score {
  readonly mean: number;
  readonly amplitude: number;
}

/** Measured against predicted at one depth. */
export interface StationScore {
  readonly measured: Score;
  readonly predicted: Score;
}

/** Loam at its typical density and moisture: nobody told the column what soil lies there. */
export function unknownSoil(): SoilProperties {
  const { texture, dryDensity, moisture, quartz } = findSoil("loam");
  return soilProperties({ texture, dryDensity, moisture, quartz, measuredConductivity: null });
}

/** Scores the column at one depth, cm, over the days with a measurement. */
export function scoreStation(station: StationYear, depth: number): StationScore {
  const layers = [{ thickness: Infinity, properties: unknownSoil() }];
  const ground = undisturbedGround({ weather: station.weather, layers });
  const measured = station.soil.get(depth)!;
  const days = [...measured.keys()].filter((day) => Number.isFinite(measured[day]!));
  const column = groundAtDepth(ground, depth / 100);
  const score = (series: Float64Array): Score => {
    const { amplitude } = annualHarmonic(filled(series));
    return { mean: days.reduce((sum, day) => sum + series[day]!, 0) / days.length, amplitude };
  };
  return { measured: score(measured), predicted: score(column) };
}
