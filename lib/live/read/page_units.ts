/** What stands for the unit library in a page's script. @module */
import { type ReadUnit, unitReader, type UnitTable } from "./unit_reader.ts";

/** The library's units, put in when the page is bundled. */
declare const UNIT_TABLE: UnitTable;

/** A value with a unit of the library; throws where the unit is unknown. */
export const withUnit: (value: number, unit: string) => ReadUnit = unitReader(UNIT_TABLE);
