/**
 * Reads one year of daily records of the US Climate Reference Network (comma-separated, lower-case
 * heads) and scores the ground column against the soil temperatures in it. Missing days are filled
 * by straight lines in the weather and left out of the soil.
 *
 * @module
 */
import Papa from "papaparse";
import { InputError } from "../../lib/basics/mod.ts";
import type { DailyWeather, GroundYear, SoilProperties } from "../../lib/soil/mod.ts";
import {
  annualHarmonic,
  findSoil,
  groundAtDepth,
  snowCover,
  soilProperties,
  typicalSnowDepth,
  undisturbedGround,
} from "../../lib/soil/mod.ts";

/** Daily records of one station and year. */
export interface StationYear {
  readonly weather: DailyWeather;
  /** measured degC by depth in cm; NaN where missing */
  readonly soil: ReadonlyMap<number, Float64Array>;
  /** m³/m³, mean of the year of the sensors at 20, 50 and 100 cm */
  readonly moisture: number;
  /** mm a day by the gauge, 0 where missing */
  readonly precipitation: Float64Array;
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
  const precipitation = numbers(rows, "p_daily_calc").map((value) => value > 0 ? value : 0);
  return { weather, soil: new Map(soil), moisture: meanMoisture(rows), precipitation };
}

function meanMoisture(rows: readonly Record<string, string>[]): number {
  const means = [20, 50, 100].flatMap((depth) => {
    const values = numbers(rows, `soil_moisture_${depth}_daily`).filter((value) => value > 0);
    return values.length === 0 ? [] : [values.reduce((sum, value) => sum + value) / values.length];
  });
  return means.reduce((sum, value) => sum + value, 0) / means.length;
}

/** Stations of the open data: file, name, and elevation in m (from memory, 10 m matter nothing). */
export const STATIONS: readonly (readonly [file: string, name: string, elevation: number])[] = [
  ["nd_northgate_5_ese", "Northgate ND", 565],
  ["sd_aberdeen_35_wnw", "Aberdeen SD", 597],
  ["ne_lincoln_8_ene", "Lincoln NE", 362],
  ["co_la_junta_17_wsw", "La Junta CO", 1340],
  ["mt_wolf_point_29_ene", "Wolf Point MT", 636],
];

/** Reads the year 2020 of a station from a folder of open data. */
export function readStation(folder: string, file: string, elevation: number): StationYear {
  return readStationYear(
    Deno.readTextFileSync(`${folder}/soil/uscrn_2020_${file}.csv`),
    elevation,
  );
}

/** Mean, extremes and annual amplitude of one series. */
export interface Score {
  /** degC */
  readonly mean: number;
  /** K */
  readonly amplitude: number;
  /** degC, of the daily values */
  readonly lowest: number;
  /** degC, of the daily values */
  readonly highest: number;
}

/** Measured against predicted at one depth. */
export interface StationScore {
  /** by the sensor */
  readonly measured: Score;
  /** by the column, on the same days */
  readonly predicted: Score;
}

/** Loam at its typical density and moisture: nobody told the column what soil lies there. */
export function unknownSoil(): SoilProperties {
  const { texture, dryDensity, moisture, quartz } = findSoil("loam");
  return soilProperties({ texture, dryDensity, moisture, quartz, measuredConductivity: null });
}

/** The column at a station, in typical loam. */
export function stationGround(station: StationYear): GroundYear {
  const layers = [{ thickness: Infinity, properties: unknownSoil() }];
  return undisturbedGround({ weather: station.weather, layers });
}

/** The column at a station with the moisture of its sensors and the snow of its gauge. */
export function ownGround(station: StationYear): GroundYear {
  const { texture, dryDensity, quartz } = findSoil("loam");
  const { moisture, weather, precipitation } = station;
  const properties = soilProperties({
    texture,
    dryDensity,
    quartz,
    moisture: Math.min(0.45, moisture),
    measuredConductivity: null,
  });
  return undisturbedGround({
    weather,
    layers: [{ thickness: Infinity, properties }],
    snowDepth: typicalSnowDepth(snowCover(weather.temperature, precipitation)),
  });
}

/** Scores the column at one depth, cm, over the days with a measurement. */
export function scoreStation(
  station: StationYear,
  depth: number,
  ground = stationGround(station),
): StationScore {
  const measured = station.soil.get(depth)!;
  const days = [...measured.keys()].filter((day) => Number.isFinite(measured[day]!));
  const column = groundAtDepth(ground, depth / 100);
  const score = (series: Float64Array): Score => {
    const values = days.map((day) => series[day]!);
    return {
      mean: values.reduce((sum, value) => sum + value, 0) / days.length,
      amplitude: annualHarmonic(filled(series)).amplitude,
      lowest: Math.min(...values),
      highest: Math.max(...values),
    };
  };
  return { measured: score(measured), predicted: score(column) };
}

/**
 * Deepest 0 degC of the year by the sensors, straight between them, m; where the lowest one freezes,
 * its depth, which is then the least the frost reached.
 */
export function measuredFrost(station: StationYear): number {
  const series = DEPTHS.map((depth) => filled(station.soil.get(depth)!));
  let deepest = 0;
  for (let day = 0; day < series[0]!.length; day++) {
    const frozen = series.findLastIndex((values) => values[day]! < 0);
    if (frozen === -1) continue;
    const [upper, lower] = [series[frozen]![day]!, series[frozen + 1]?.[day]];
    const share = lower === undefined ? 0 : upper / (upper - lower);
    const step = (DEPTHS[frozen + 1] ?? DEPTHS[frozen]!) - DEPTHS[frozen]!;
    deepest = Math.max(deepest, (DEPTHS[frozen]! + share * step) / 100);
  }
  return deepest;
}
