/** The log map: a YAML file that says how each logger's files are read. @module */
import { z } from "zod";
import { InputError, InputErrors } from "../../basics/mod.ts";
import { columnName, tableKeys, yesNo } from "../../climate/read/table_keys.ts";
import { describeIssue, readYaml } from "../../climate/read/yaml_text.ts";
import { parseQuantity, QuantityError } from "../../units/mod.ts";
import { isoSeconds } from "./clock.ts";
import { type ClockPiece, type LoggerMap, type LogMap, PLAIN_LOGGER } from "./map.ts";
import { QUANTITY_NAMES, sensorColumn, SensorFault } from "./sensor_words.ts";
import { readClockZone } from "./zone_rules.ts";

const WHAT = "the log map";

const zone = z.union([z.number(), z.string()]).transform((value, context) =>
  typeof value === "number"
    ? { timeZone: value, rules: null }
    : attempt(() => readClockZone(value), context)
).refine(
  ({ timeZone }) => timeZone >= -12 && timeZone <= 14,
  "must lie between UTC-12 and UTC+14",
);
const seconds = z.union([z.number(), z.string()]).transform((value, context) =>
  attempt(() => typeof value === "number" ? value : signedTime(value), context)
);
const moment = z.union([z.string(), z.date()]).transform((value, context) => {
  const text = typeof value === "string" ? value : value.toISOString();
  const found = isoSeconds(text);
  if (found !== null) return found.seconds;
  context.addIssue({ code: "custom", message: "must be a date and time such as 2026-01-31 14:05" });
  return z.NEVER;
});
const cell = z.union([z.string(), z.number()]);

const sensorSchema = z.strictObject({
  column: columnName,
  quantity: z.enum(QUANTITY_NAMES as [string, ...string[]]),
  unit: z.string().optional(),
  zone: z.string().min(1).default("inside"),
  accuracy: cell.optional(),
  correlatedWith: z.string().optional(),
  depth: cell.optional(),
  x: cell.optional(),
  y: cell.optional(),
});

const loggerSchema = z.strictObject({
  files: z.union([z.string(), z.array(z.string())]).default([])
    .transform((names) => typeof names === "string" ? [names] : names),
  ...tableKeys,
  time: z.strictObject({
    read: z.array(z.strictObject({ column: columnName, format: z.string().min(1) })).default([]),
    timeZone: zone.optional(),
    daylightSaving: yesNo.default(false),
    stamp: z.enum(["start", "middle", "end"]).default("end"),
    clock: z.union([
      z.literal("find"),
      z.array(z.strictObject({ from: moment, ahead: seconds })),
      seconds.transform((ahead): ClockPiece[] => [{ from: -Infinity, ahead }]),
    ]).default([]),
  }).optional(),
  sensors: z.record(z.string(), sensorSchema),
});

const schema = z.strictObject({
  timeZone: zone.optional(),
  loggers: z.record(z.string(), loggerSchema),
});

/** A time such as "3 min" or "-90 s". */
function signedTime(text: string): number {
  return parseQuantity(text, "time");
}

function attempt<Value>(reader: () => Value, context: z.RefinementCtx): Value {
  try {
    return reader();
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    context.addIssue({ code: "custom", message: error.message });
    return z.NEVER;
  }
}

/**
 * Reads a log map.
 *
 * @param yamlText its text
 * @param file its path, for messages
 * @param timeZone h east of UTC where the map says none
 * @throws {InputErrors} with the line of every unknown key, wrong value or unit
 */
export function parseLogMap(yamlText: string, file: string, timeZone = 0): LogMap {
  const { data, lineOf } = readYaml(yamlText, file, WHAT);
  const parsed = schema.safeParse(data ?? {});
  if (!parsed.success) {
    const place = { file, what: WHAT, lineOf, known };
    throw new InputErrors(parsed.error.issues.map((issue) => describeIssue(issue, place)));
  }
  const faults: InputError[] = [];
  const names = new Set<string>();
  const loggers = Object.entries(parsed.data.loggers).map(([name, logger]): LoggerMap => {
    const { sensors, time, decimal, ...rest } = logger;
    const clockZone = time?.timeZone ?? parsed.data.timeZone ?? { timeZone, rules: null };
    return {
      ...rest,
      name,
      decimalComma: decimal === "," || decimal === "comma",
      time: time?.read ?? [],
      timeZone: clockZone.timeZone,
      zoneRules: clockZone.rules,
      daylightSaving: time?.daylightSaving ?? PLAIN_LOGGER.daylightSaving,
      stampAt: time?.stamp ?? PLAIN_LOGGER.stampAt,
      clock: time?.clock === "find" ? null : time?.clock ?? [],
      sensors: Object.entries(sensors).flatMap(([sensor, words]) => {
        const path = ["loggers", name, "sensors", sensor];
        if (names.has(sensor)) {
          const text = `Cannot use sensor "${sensor}" twice: give each sensor a name of its own`;
          faults.push(new InputError(text, { file, line: lineOf(path) }));
        }
        names.add(sensor);
        try {
          return [sensorColumn({ ...plain(words), name: sensor, logger: name })];
        } catch (error) {
          if (!(error instanceof SensorFault)) throw error;
          const text = `Cannot use ${error.part} of sensor "${sensor}": ${error.message}`;
          faults.push(new InputError(text, { file, line: lineOf([...path, error.part]) }));
          return [];
        }
      }),
    };
  });
  if (faults.length > 0) throw new InputErrors(faults);
  if (names.size === 0) {
    throw new InputError("Cannot use the log map: expected loggers with sensors, found none", {
      file,
      line: 1,
    });
  }
  return { file, loggers };
}

/** The words of a sensor with every part there. */
function plain(words: z.infer<typeof sensorSchema>) {
  return {
    column: words.column,
    quantity: words.quantity as (typeof QUANTITY_NAMES)[number],
    unit: words.unit,
    zone: words.zone,
    accuracy: words.accuracy,
    correlatedWith: words.correlatedWith,
    depth: words.depth,
    x: words.x,
    y: words.y,
  };
}

function known(path: readonly PropertyKey[]): string {
  if (path.length === 0) return "timeZone, loggers";
  if (path.length === 2) return Object.keys(loggerSchema.shape).join(", ");
  if (path[2] === "sensors") return Object.keys(sensorSchema.shape).join(", ");
  if (path[2] !== "time") return "none";
  return path.length === 3
    ? "read, timeZone, daylightSaving, stamp, clock"
    : path[3] === "read"
    ? "column, format"
    : "from, ahead";
}
