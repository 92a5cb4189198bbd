/** The house's air of two finished runs, hour by hour. @module */
import Papa from "papaparse";
import { InputError } from "../../basics/mod.ts";

/** Heads of hourly.csv that are compared. */
const WITH_STORE = "house temperature with store (degC)";
const WITHOUT_STORE = "house temperature without store (degC)";
const HOURS = 8760;

/** Air of the house of one run, degC by hour. */
export interface HouseHours {
  /** with the store */
  readonly withStore: Float64Array;
  /** with the fan never on */
  readonly withoutStore: Float64Array;
}

/** degC below which hours are counted. */
export const COUNTED_LIMITS: readonly number[] = [-10, -5, 0, 5, 10];

/** Air of two runs with the hours below each of {@link COUNTED_LIMITS}. */
export interface ComparedHours {
  /** degC by hour, with the store */
  readonly first: Float64Array;
  readonly second: Float64Array;
  /** hours below each limit */
  readonly firstBelow: readonly number[];
  readonly secondBelow: readonly number[];
}

/**
 * Reads the air of the house from hourly.csv.
 *
 * @param text content of the file
 * @param file its path, for messages
 * @throws {InputError} where a column is missing, a cell is no number or the year is not whole
 */
export function readHours(text: string, file: string): HouseHours {
  const { data, meta } = Papa.parse<Record<string, string>>(text, {
    header: true,
    skipEmptyLines: true,
  });
  const column = (head: string) => {
    if (!meta.fields?.includes(head)) {
      throw new InputError(`Cannot find the column "${head}": run the study again`, {
        file,
        line: 1,
      });
    }
    return Float64Array.from(data, (row, index) => {
      const cell = row[head] ?? "";
      const value = cell.trim() === "" ? NaN : Number(cell);
      if (Number.isFinite(value)) return value;
      throw new InputError(
        `Cannot read "${cell}" in the column "${head}": a number was expected; run the study again`,
        { file, line: index + 2 },
      );
    });
  };
  const hours = { withStore: column(WITH_STORE), withoutStore: column(WITHOUT_STORE) };
  if (data.length === HOURS) return hours;
  throw new InputError(
    `Cannot read the hours: ${HOURS} rows were expected, ${data.length} found; run the study again`,
    { file },
  );
}

/**
 * The air of two runs, with the store, ready to be drawn one over the other.
 *
 * @param first run compared with
 * @param second run compared
 */
export function compareHours(first: HouseHours, second: HouseHours): ComparedHours {
  const below = (series: Float64Array) =>
    COUNTED_LIMITS.map((limit) =>
      series.reduce((count, value) => count + Number(value < limit), 0)
    );
  return {
    first: first.withStore,
    second: second.withStore,
    firstBelow: below(first.withStore),
    secondBelow: below(second.withStore),
  };
}
