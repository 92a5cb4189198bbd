/** The sensor list: a table that a monitoring plan writes and the log reader takes as its map. @module */
import Papa from "papaparse";
import { InputError, InputErrors, readDataTable } from "../../basics/mod.ts";
import { matchWord, QuantityError } from "../../units/mod.ts";
import { type LoggerMap, type LogMap, PLAIN_LOGGER, type SensorColumn } from "./map.ts";
import { logQuantity } from "./quantities.ts";
import { QUANTITY_NAMES, sensorColumn, SensorFault, type SensorWords } from "./sensor_words.ts";
import { type ClockZone, readClockZone } from "./zone_rules.ts";
import { roundToDecimals } from "../../basics/round.ts";

/** Columns that a sensor list must have. */
const NEEDED = ["sensor", "logger", "quantity", "zone"] as const;

/** Columns that the reader takes where they are there; others (shield, price …) are for people. */
const TAKEN = {
  files: "files",
  column: "column",
  unit: "unit",
  depth: "depth",
  along: "along",
  across: "across",
  accuracy: "accuracy",
  calibratedWith: "calibrated_with",
  timeZone: "time_zone",
  stamp: "stamp",
  daylightSaving: "daylight_saving",
} as const;

/**
 * Reads a sensor list as a log map. The files it describes have the time in their first column,
 * such as 2026-01-31 14:05, and one head for each sensor.
 *
 * @param text CSV with at least sensor, logger, quantity and zone; column and files default to the
 * names of sensor and logger, time_zone to the place's, stamp to end
 * @param file its path, for messages
 * @param timeZone h east of UTC where the list says none
 * @throws {InputErrors} naming line and column of what cannot be read
 */
export function parseSensorList(text: string, file: string, timeZone = 0): LogMap {
  const rows = readDataTable(text, file, NEEDED);
  const heads = headsOf(text);
  const faults: InputError[] = [];
  const loggers = new Map<string, LoggerMap>();
  const names = new Set<string>();
  for (const row of rows) {
    const at = (column: string) => ({ file, line: row.line, column });
    const given = (column: string) => {
      const cell = heads.includes(column) ? row.text(column) : "";
      return cell === "" ? undefined : cell;
    };
    const fault = (column: string, message: string) =>
      void faults.push(new InputError(message, at(column)));
    const name = row.text("sensor");
    const logger = row.text("logger");
    if (name === "" || names.has(name)) {
      fault("sensor", `Cannot use the sensor "${name}": expected a name of its own for each`);
    }
    names.add(name);
    const quantity = QUANTITY_NAMES.find((one) => one === row.text("quantity"));
    if (quantity === undefined) {
      fault(
        "quantity",
        `Cannot use the quantity "${row.text("quantity")}": known are ${QUANTITY_NAMES.join(", ")}`,
      );
      continue;
    }
    const clock = clockOf(given, timeZone, fault);
    const words: SensorWords = {
      name,
      logger,
      column: given(TAKEN.column) ?? name,
      quantity,
      unit: given(TAKEN.unit),
      zone: row.text("zone"),
      accuracy: given(TAKEN.accuracy),
      correlatedWith: given(TAKEN.calibratedWith),
      depth: given(TAKEN.depth),
      x: given(TAKEN.along),
      y: given(TAKEN.across),
    };
    let sensor: SensorColumn;
    try {
      sensor = sensorColumn(words);
    } catch (error) {
      if (!(error instanceof SensorFault)) throw error;
      fault(COLUMN_OF[error.part] ?? error.part, `Cannot use the ${error.part}: ${error.message}`);
      continue;
    }
    const known = loggers.get(logger);
    const other = known !== undefined &&
      (known.timeZone !== clock.timeZone || known.zoneRules !== clock.zoneRules ||
        known.stampAt !== clock.stampAt ||
        known.daylightSaving !== clock.daylightSaving);
    if (other) {
      fault(
        "logger",
        `Cannot give logger "${logger}" two clocks: write one time_zone, stamp and ` +
          "daylight_saving in all its rows",
      );
    }
    loggers.set(logger, {
      ...PLAIN_LOGGER,
      ...clock,
      files: known?.files ?? filesOf(given(TAKEN.files), logger),
      name: logger,
      sensors: [...known?.sensors ?? [], sensor],
    });
  }
  if (faults.length > 0) throw new InputErrors(faults);
  return { file, loggers: [...loggers.values()] };
}

const COLUMN_OF: Partial<Record<keyof SensorWords, string>> = {
  x: "along",
  y: "across",
  correlatedWith: "calibrated_with",
};

/** File names, `*` for any letters, with semicolons between them; those that begin with the logger's name. */
function filesOf(cell: string | undefined, logger: string): readonly string[] {
  return cell === undefined ? [`${logger}*`] : cell.split(";").map((name) => name.trim());
}

function clockOf(
  given: (column: string) => string | undefined,
  timeZone: number,
  fault: (column: string, message: string) => void,
): Pick<LoggerMap, "timeZone" | "zoneRules" | "stampAt" | "daylightSaving"> {
  const stamp = matchWord(given(TAKEN.stamp) ?? "end", ["start", "middle", "end"]);
  if (stamp === undefined) fault("stamp", "Cannot use the stamp: expected start, middle or end");
  const saving = matchWord(given(TAKEN.daylightSaving) ?? "no", ["yes", "no"]);
  if (saving === undefined) fault("daylight_saving", "Cannot read it: expected yes or no");
  let zone: ClockZone = { timeZone, rules: null };
  try {
    zone = readClockZone(given(TAKEN.timeZone) ?? timeZone);
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    fault("time_zone", error.message);
  }
  return {
    timeZone: zone.timeZone,
    zoneRules: zone.rules,
    stampAt: stamp ?? "end",
    daylightSaving: saving === "yes",
  };
}

function headsOf(text: string): string[] {
  const first = text.replace(/^\uFEFF/, "").split(/\r\n|\r|\n/)
    .find((line) => line.trim() !== "" && !line.startsWith("#")) ?? "";
  return (Papa.parse<string[]>(first, { delimiter: "," }).data[0] ?? []).map((head) => head.trim());
}

/** A row of a sensor list: a sensor with its column and what people want to know of it. */
export interface ListedSensor {
  /** the sensor and its column */
  readonly column: SensorColumn;
  /** its logger's clock, h east of UTC */
  readonly timeZone: number;
  /** further cells by head, such as shield and price */
  readonly remarks: Readonly<Record<string, string>>;
}

/** A sensor list as a table. */
export interface SensorListTable {
  /** heads of its columns */
  readonly heads: readonly string[];
  /** cells row by row */
  readonly rows: readonly (readonly string[])[];
}

/**
 * Writes a sensor list, which `parseSensorList` reads back.
 *
 * @param sensors in the order of their rows
 */
export function writeSensorList(sensors: readonly ListedSensor[]): string {
  const { heads, rows } = sensorListTable(sensors);
  const data = { fields: [...heads], data: rows.map((row) => [...row]) };
  return Papa.unparse(data, { newline: "\n" }) + "\n";
}

/** The same as a table. */
export function sensorListTable(sensors: readonly ListedSensor[]): SensorListTable {
  const remarks = [...new Set(sensors.flatMap(({ remarks }) => Object.keys(remarks)))];
  const rows = sensors.map(({ column, timeZone, remarks: own }) => {
    const { sensor } = column;
    const metres = (value: number | undefined) => value === undefined ? "" : `${round(value)} m`;
    return [
      sensor.name,
      sensor.logger,
      String(column.column),
      sensor.quantity,
      column.unit,
      sensor.zone,
      metres(sensor.depth),
      metres(sensor.x),
      metres(sensor.y),
      accuracyText(column),
      sensor.correlatedWith ?? "",
      `UTC${timeZone < 0 ? "-" : "+"}${Math.abs(timeZone)}`,
      "end",
      ...remarks.map((head) => own[head] ?? ""),
    ];
  });
  const { column, unit, depth, along, across, accuracy, calibratedWith } = TAKEN;
  const heads = [
    "sensor",
    "logger",
    column,
    "quantity",
    unit,
    "zone",
    depth,
    along,
    across,
    accuracy,
    calibratedWith,
    TAKEN.timeZone,
    TAKEN.stamp,
    ...remarks,
  ];
  return { heads, rows };
}

/** Three decimals at most. */
function round(value: number): string {
  return String(roundToDecimals(value, 3));
}

/** Accuracy as `sensorColumn` reads it: "0.15 K", "5 %", "1 Pa + 0.5 %". */
function accuracyText({ sensor }: SensorColumn): string {
  const { kind, unit } = logQuantity(sensor.quantity);
  const fixed = kind === "share"
    ? `${round(100 * sensor.accuracy)} %`
    : `${round(sensor.accuracy)} ${kind === "temperature" ? "K" : unit}`.trim();
  const relative = sensor.relativeAccuracy ?? 0;
  if (!(relative > 0)) return fixed;
  const share = `${round(100 * relative)} %`;
  return sensor.accuracy > 0 ? `${fixed} + ${share}` : share;
}
