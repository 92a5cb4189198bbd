/** The five-minute log of a glass compartment: weather outside, climate and equipment inside. @module */
import Papa from "papaparse";
import { InputError } from "../basics/mod.ts";
import { glassLight } from "./log_light.ts";

/** Series of one length and one step. */
export interface GreenhouseLog {
  /** s between entries */
  readonly stepSeconds: number;
  /** days from the start of the whole log to the first entry */
  readonly firstDay: number;
  /** degC outside */
  readonly outsideTemperature: Float64Array;
  /** 0 to 1 outside */
  readonly outsideHumidity: Float64Array;
  /** W/m² global radiation outside */
  readonly globalRadiation: Float64Array;
  /** share of the global radiation that level glass lets through over that of diffuse light, about 1 */
  readonly glassLight: Float64Array;
  /** m/s */
  readonly windSpeed: Float64Array;
  /** W/m² of the sky less that of a black surface as warm as the air, mostly below 0 */
  readonly netLongwave: Float64Array;
  /** degC measured inside */
  readonly airTemperature: Float64Array;
  /** 0 to 1 measured inside */
  readonly airHumidity: Float64Array;
  /** degC of the heating pipe; 0 while it is off */
  readonly pipeTemperature: Float64Array;
  /** 0 to 1: mean opening of leeward and windward vents */
  readonly ventOpening: Float64Array;
  /** 0 to 1: how far the energy screen is closed */
  readonly energyScreen: Float64Array;
  /** 0 to 1: how far the blackout screen is closed */
  readonly blackoutScreen: Float64Array;
  /** µmol/(m² s) of plant light measured inside */
  readonly plantLight: Float64Array;
}

type Rows = readonly Record<string, string>[];

function readRows(text: string, file: string): Rows {
  const [heads = []] = Papa.parse<string[]>(text, { preview: 1 }).data;
  const names = heads.map((head) => head.trim());
  const twice = names.find((name, place) => name !== "" && names.indexOf(name) !== place);
  if (twice !== undefined) {
    throw new InputError(`Cannot read the log: two columns are named "${twice}"; keep one`, {
      file,
      line: 1,
    });
  }
  const parsed = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
    transformHeader: (head) => head.trim(),
  });
  if (parsed.data.length === 0) throw new InputError("Cannot read the log: it is empty", { file });
  return parsed.data;
}

/** A column with gaps filled by the value before. */
function column(rows: Rows, name: string, file: string, scale = 1): Float64Array {
  if (!(name in rows[0]!)) {
    throw new InputError(
      `Cannot find the column "${name}": the columns are ${Object.keys(rows[0]!).join(", ")}`,
      { file, line: 1 },
    );
  }
  const values = new Float64Array(rows.length);
  let last = NaN;
  rows.forEach((row, i) => {
    const cell = (row[name] ?? "").trim();
    const value = Number(cell);
    if (cell !== "" && Number.isFinite(value)) last = value * scale;
    values[i] = last;
  });
  const first = values.find((value) => Number.isFinite(value));
  if (first === undefined) throw new InputError(`Column "${name}" holds no number`, { file });
  return values.map((value) => Number.isFinite(value) ? value : first);
}

/**
 * Reads the two files of the log: `weather.csv` and `reference_climate.csv` of the
 * autonomous-greenhouse experiment of 2022, five minutes a row, same stamps.
 *
 * @param weather text of the weather file
 * @param climate text of the indoor file; sets the length
 * @returns the series of both files on one step
 * @throws {InputError} where a column is missing or stamps differ
 */
export function readGreenhouseLog(weather: string, climate: string): GreenhouseLog {
  const inside = readRows(climate, "reference_climate.csv");
  const outside = readRows(weather, "weather.csv").slice(0, inside.length);
  inside.forEach((row, i) => {
    if (row["Date"] !== outside[i]?.["Date"]) {
      throw new InputError(
        `Cannot join the logs: "${row["Date"] ?? ""}" inside, "${
          outside[i]?.["Date"] ?? ""
        }" outside`,
        { file: "reference_climate.csv", line: i + 2 },
      );
    }
  });
  const indoor = (name: string, scale?: number) =>
    column(inside, name, "reference_climate.csv", scale);
  const outdoor = (name: string, scale?: number) => column(outside, name, "weather.csv", scale);
  const windward = indoor("VentWind", 0.01);
  const outsideTemperature = outdoor("Tout");
  const globalRadiation = outdoor("Iglob");
  return {
    stepSeconds: 300,
    firstDay: 0,
    outsideTemperature,
    outsideHumidity: outdoor("Rhout", 0.01),
    globalRadiation,
    glassLight: glassLight(inside.map((row) => row["Date"] ?? ""), globalRadiation),
    windSpeed: outdoor("Windsp"),
    netLongwave: outdoor("Pyrgeo"),
    airTemperature: indoor("Tair"),
    airHumidity: indoor("Rhair", 0.01),
    pipeTemperature: indoor("Tpipe"),
    ventOpening: indoor("VentLee", 0.01).map((lee, i) => (lee + windward[i]!) / 2),
    energyScreen: indoor("EnScr", 0.01),
    blackoutScreen: indoor("BlckScr", 0.01),
    plantLight: indoor("PARin"),
  };
}
