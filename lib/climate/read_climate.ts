/** One door for every climate file. @module */
import { InputError } from "../basics/mod.ts";
import { checkPlace } from "./read/check_place.ts";
import { placeRows } from "./read/place_rows.ts";
import { type ColumnsFile, layoutColumns } from "./read/columns_table.ts";
import { completeYear } from "./mend/complete.ts";
import { isNsrdb, layoutNsrdb } from "./read/nsrdb.ts";
import { isPvgis, layoutPvgis } from "./read/pvgis.ts";
import { readValues, splitLines, type TableLayout } from "./read/table.ts";
import { isTmy3, layoutTmy3 } from "./read/tmy3.ts";
import type { ClimateYear, Place } from "./types.ts";

/** How to read a climate file. */
export interface ReadClimateOptions {
  /** path of the file, for messages */
  readonly file: string;
  /** columns file, for text tables of any other layout */
  readonly columns?: ColumnsFile | undefined;
  /** place of the study: used where the file does not say its own */
  readonly place?: Place | undefined;
  /** true to move radiation back that certainly stands in the wrong hours; false where not given */
  readonly mendShift?: boolean;
}

/**
 * Reads one year of hourly weather, recognising the layout by content.
 *
 * TMY3, NSRDB and PVGIS typical years are read as they are; any other table through a columns file,
 * which goes first where it names columns. The place in a file outranks the place of the study.
 *
 * @param text the file's text
 * @param options path, columns file, place of the study
 * @returns the year, with notices of all that was filled in or derived
 * @throws {InputError} naming file, line and column of what cannot be used
 */
export function readClimate(text: string, options: ReadClimateOptions): ClimateYear {
  const layout = recognise(text, options);
  checkPlace(layout.place, options.file);
  const rows = placeRows(layout);
  return completeYear(layout, rows, readValues(layout), options.mendShift);
}

function recognise(text: string, options: ReadClimateOptions): TableLayout {
  const { file, columns, place } = options;
  if (text.trim() === "") {
    throw new InputError("Cannot read the climate: the file is empty", { file });
  }
  if (columns !== undefined && Object.keys(columns.columns).length > 0) {
    return layoutColumns(text, columns, options);
  }
  const layout = publicLayout(text, file, place);
  return columns === undefined ? layout : adjust(layout, columns);
}

function publicLayout(text: string, file: string, place: Place | undefined): TableLayout {
  const lines = splitLines(text.slice(0, 20000));
  if (isTmy3(lines)) return layoutTmy3(text, file);
  if (isNsrdb(lines)) return layoutNsrdb(text, file);
  if (isPvgis(lines)) return layoutPvgis(text, file, place);
  throw new InputError(
    "Cannot recognise the layout: expected a TMY3, NSRDB or PVGIS year, found a first line of " +
      `"${
        lines[0]!.slice(0, 60)
      }"; describe the table in a columns file and give that too (on a command line, with --columns)`,
    { file, line: 1 },
  );
}

/** What a columns file without columns may change of a public layout. */
function adjust(layout: TableLayout, columns: ColumnsFile): TableLayout {
  return {
    ...layout,
    leaveOutLeapDay: columns.leaveOutLeapDay,
    accept: columns.accept,
    isMissing: (cell) => layout.isMissing(cell) || columns.missing.includes(cell),
  };
}
