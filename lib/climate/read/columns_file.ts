/** The columns file: says how to read a table of any layout. @module */
import { z } from "zod";
import { InputError, InputErrors } from "../../basics/mod.ts";
import { parseQuantity, QuantityError, readTimeZone } from "../../units/mod.ts";
import { ACCEPTED_WORDS, type AcceptedWord } from "./accepted.ts";
import { unitLine } from "./plan.ts";
import { type ClimateQuantity, QUANTITIES } from "./quantities.ts";
import { columnName, tableKeys, yesNo } from "./table_keys.ts";
import { describeIssue, type LineOf, readYaml } from "./yaml_text.ts";
import type { Place } from "../types.ts";

/** A column by its number, from 1, or by its head. */
export type ColumnName = number | string;

/** A part of the time: a column and how it is written. */
export interface TimePart {
  /** number or head of the column */
  readonly column: ColumnName;
  /** of YYYY, YY, MM, MMM, DD, HH, mm and a (am or pm), with what stands between them */
  readonly format: string;
}

/** Where one quantity stands. */
export interface ColumnOfQuantity {
  /** number or head of the column */
  readonly column: ColumnName;
  /** "degF", "%", "W/m2", "mph"; "" for plain shares */
  readonly unit: string;
}

/** A columns file, checked. */
export interface ColumnsFile {
  /** path of the columns file, for messages */
  readonly file: string;
  /** lines before the head, or before the first row */
  readonly skipLines: number;
  /** one character between cells */
  readonly delimiter: string;
  /** true where numbers have a decimal comma */
  readonly decimalComma: boolean;
  /** true where the first line read holds heads */
  readonly header: boolean;
  /** cells that mean "no value"; empty cells always do */
  readonly missing: readonly string[];
  /** true where 29 February is left out */
  readonly leaveOutLeapDay: boolean;
  /** place of the weather; that of the study where undefined */
  readonly place: Place | undefined;
  /** empty where rows stand in order from 1 January */
  readonly time: readonly TimePart[];
  /** where the stamp stands in its row of time */
  readonly stampAt: "start" | "middle" | "end";
  /** hours east of UTC of the stamps; the place's where undefined */
  readonly stampZone: number | undefined;
  /** minutes to add to each stamp */
  readonly offsetMinutes: number;
  /** date (YYYY-MM-DD) from which twelve months are taken; all rows where undefined */
  readonly from: string | undefined;
  /** true where the stamps follow summer time */
  readonly daylightSaving: boolean;
  /** weather that cannot be and is meant all the same */
  readonly accept: readonly AcceptedWord[];
  /** where the quantities stand; empty where the table is of a public layout */
  readonly columns: Partial<Record<ClimateQuantity, ColumnOfQuantity>>;
}

/** Most that stamps are moved by, minutes. */
const DAY = 24 * 60;

const WHAT = "the columns file";

const quantityColumn = z.strictObject({ column: columnName, unit: z.string().default("") });
const zone = z.union([z.number(), z.string()]).transform(toZone)
  .refine((hours) => hours >= -12 && hours <= 14, "must lie between UTC-12 and UTC+14");

const schema = z.strictObject({
  ...tableKeys,
  leapDay: z.enum(["refuse", "leave out"]).default("refuse"),
  accept: z.array(z.enum(ACCEPTED_WORDS)).default([]),
  place: z.strictObject({
    name: z.string().default("place of the columns file"),
    latitude: z.number().min(-90).max(90),
    longitude: z.number().min(-180).max(180),
    elevation: z.union([z.number(), z.string()]).transform(toMetres),
    timeZone: zone,
  }).optional(),
  time: z.strictObject({
    stamp: z.enum(["start", "middle", "end"]).default("end"),
    timeZone: zone.optional(),
    offset: z.union([z.number(), z.string()]).default(0).transform(toMinutes)
      .refine((minutes) => Math.abs(minutes) <= DAY, "must lie in -24 h to 24 h"),
    daylightSaving: yesNo.default(false),
    from: z.string().regex(/^\d{4}-\d{2}-\d{2}$/, "must be a date such as 2021-07-01").optional(),
    read: z.array(z.strictObject({ column: columnName, format: z.string().min(1).max(60) }))
      .default([]),
  }).optional(),
  columns: z.strictObject(
    Object.fromEntries(QUANTITIES.map((name) => [name, quantityColumn.optional()])) as Record<
      ClimateQuantity,
      z.ZodOptional<typeof quantityColumn>
    >,
  ).default({}),
});

function toMetres(value: number | string, context: z.RefinementCtx): number {
  return typeof value === "number" ? value : read(value, "length", context);
}

function toMinutes(value: number | string, context: z.RefinementCtx): number {
  return typeof value === "number" ? value : read(value, "time", context) / 60;
}

function toZone(value: number | string, context: z.RefinementCtx): number {
  return typeof value === "number" ? value : attempt(() => readTimeZone(value), context);
}

function read(text: string, kind: "length" | "time", context: z.RefinementCtx): number {
  return attempt(() => parseQuantity(text, kind), context);
}

/** What a reader gives; what it refuses becomes an issue. */
function attempt(reader: () => number, context: z.RefinementCtx): number {
  try {
    return reader();
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    context.addIssue({ code: "custom", message: error.message });
    return z.NEVER;
  }
}

/**
 * Reads a columns file.
 *
 * @param yamlText its text
 * @param file its path, for messages
 * @returns the checked contents
 * @throws {InputErrors} with the line of every unknown key, wrong value or unit
 */
export function parseColumns(yamlText: string, file: string): ColumnsFile {
  const { data, lineOf } = readYaml(yamlText, file, WHAT);
  const parsed = schema.safeParse(data ?? {});
  if (!parsed.success) {
    const place = { file, what: WHAT, lineOf, known };
    throw new InputErrors(parsed.error.issues.map((issue) => describeIssue(issue, place)));
  }
  const found = parsed.data;
  checkUnits(found.columns, file, lineOf);
  return {
    file,
    skipLines: found.skipLines,
    delimiter: found.delimiter,
    decimalComma: found.decimal === "," || found.decimal === "comma",
    header: found.header,
    missing: found.missing,
    accept: found.accept,
    leaveOutLeapDay: found.leapDay === "leave out",
    place: found.place,
    time: found.time?.read ?? [],
    stampAt: found.time?.stamp ?? "end",
    stampZone: found.time?.timeZone,
    offsetMinutes: found.time?.offset ?? 0,
    from: found.time?.from,
    daylightSaving: found.time?.daylightSaving ?? false,
    columns: Object.fromEntries(
      Object.entries(found.columns).filter(([, column]) => column !== undefined),
    ),
  };
}

function known(path: readonly PropertyKey[]): string {
  const keys: Record<string, readonly string[]> = {
    "": Object.keys(schema.shape),
    place: ["name", "latitude", "longitude", "elevation", "timeZone"],
    time: ["stamp", "timeZone", "offset", "daylightSaving", "from", "read"],
    columns: QUANTITIES,
  };
  return (keys[path.join(".")] ??
    (path[0] === "columns" ? ["column", "unit"] : ["column", "format"]))
    .join(", ");
}

function checkUnits(
  columns: Partial<Record<ClimateQuantity, ColumnOfQuantity | undefined>>,
  file: string,
  lineOf: LineOf,
): void {
  const faults: InputError[] = [];
  for (const [quantity, column] of Object.entries(columns)) {
    if (column === undefined) continue;
    try {
      unitLine(quantity as ClimateQuantity, column.unit);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      const reason = error.message.replace("found 0 ", "found ");
      const text = `Cannot use the unit of ${quantity}: ${reason}`;
      faults.push(new InputError(text, { file, line: lineOf(["columns", quantity, "unit"]) }));
    }
  }
  if (faults.length > 0) throw new InputErrors(faults);
}
