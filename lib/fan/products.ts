/**
 * Fan curves from tables of points.
 *
 * @module
 */
import tableText from "../../data/fans/fans.csv" with { type: "text" };
import { type DataRow, findById, InputError, readDataTable } from "../basics/mod.ts";
import type { FanCurve } from "./types.ts";

const COLUMNS = [
  "id",
  "name",
  "air_flow_m3_per_s",
  "static_pressure_Pa",
  "power_W",
  "outlet_area_m2",
  "source",
] as const;

/**
 * Reads fan curves in the layout of data/fans/fans.csv: one line a point at 1.2 kg/m³ and rated
 * speed, the points of one fan together and in rising order of air flow.
 *
 * @param content CSV text
 * @param file name shown in messages
 * @returns one curve a fan
 * @throws {InputError} with file and line where a point makes no sense
 */
export function readFans(content: string, file: string): readonly FanCurve[] {
  const byFan = new Map<string, DataRow[]>();
  for (const row of readDataTable(content, file, COLUMNS)) {
    const id = row.text("id");
    if (id === "") throw new InputError("Cannot leave the id empty", { file, line: row.line });
    const rows = byFan.get(id) ?? [];
    rows.push(row);
    byFan.set(id, rows);
  }
  return [...byFan].map(([id, rows]) => fanFromPoints(id, rows, file));
}

function fanFromPoints(id: string, rows: readonly DataRow[], file: string): FanCurve {
  const first = rows[0]!;
  const fail = (message: string, line: number, column: string): never => {
    throw new InputError(message, { file, line, column });
  };
  if (rows.length < 3) {
    fail(`Cannot use the fan "${id}": a curve needs at least 3 points`, first.line, "id");
  }
  let before = -1;
  for (const row of rows) {
    const airFlow = row.number("air_flow_m3_per_s");
    if (airFlow < 0 || airFlow <= before) {
      fail(
        `Cannot use the fan "${id}": its air flows must be in ascending order`,
        row.line,
        "air_flow_m3_per_s",
      );
    }
    if (row.number("static_pressure_Pa") < 0) {
      fail("Cannot use a pressure below 0", row.line, "static_pressure_Pa");
    }
    if (row.number("power_W") <= 0) fail("Cannot use a power of 0 or less", row.line, "power_W");
    before = airFlow;
  }
  const outletArea = first.number("outlet_area_m2");
  if (!(outletArea > 0)) fail("Cannot use an outlet area of 0", first.line, "outlet_area_m2");
  return {
    id,
    name: first.text("name"),
    airFlow: rows.map((row) => row.number("air_flow_m3_per_s")),
    staticPressure: rows.map((row) => row.number("static_pressure_Pa")),
    power: rows.map((row) => row.number("power_W")),
    outletArea,
    source: first.text("source"),
  };
}

/** The fans that come with the library. */
export const FANS: readonly FanCurve[] = readFans(tableText, "data/fans/fans.csv");

/**
 * Finds a fan.
 *
 * @param id id in data/fans/fans.csv
 * @param fans where to look; the fans of the library where not given
 * @returns its curve
 * @throws {InputError} listing the known ids
 */
export function findFan(id: string, fans: readonly FanCurve[] = FANS): FanCurve {
  return findById(fans, id, "fan");
}
