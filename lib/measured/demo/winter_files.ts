/** The files of the made-up winter: a CSV a logger, and the log map that says how they are read. @module */
import type { ClimateYear } from "../../climate/types.ts";
import { type DemoLogger, demoLoggers, type DemoSensor, demoSensors } from "./instruments.ts";
import type { TrueYear } from "./true_year.ts";
import { type LoggerRow, loggerRows, type WinterSetting } from "./winter_rows.ts";

/** A file of the winter. */
export interface WinterFile {
  /** its name */
  readonly name: string;
  /** what stands in it */
  readonly text: string;
}

const stampText = (stamp: number) =>
  new Date(1000 * stamp).toISOString().slice(0, 16).replace("T", " ");

function csv(sensors: readonly DemoSensor[], rows: readonly LoggerRow[]): string {
  const head = ["time", ...sensors.map(({ name }) => name)].join(",");
  const cell = (value: number, { scale, digits }: DemoSensor) =>
    Number.isNaN(value) ? "" : (value * scale).toFixed(digits).replace(/^-(0(?:\.0*)?)$/, "$1");
  const lines = rows.map(({ stamp, cells }) =>
    [stampText(stamp), ...cells.map((value, k) => cell(value, sensors[k]!))].join(",")
  );
  return [head, ...lines, ""].join("\n");
}

const accuracyText = ({ accuracy, relative, unit }: DemoSensor): string =>
  relative || unit === "%"
    ? `${Number((100 * accuracy).toPrecision(3))} %`
    : `${accuracy} ${unit === "degC" ? "K" : unit}`;

function sensorLines(sensor: DemoSensor): string[] {
  const { name, quantity, unit, zone, batch, depth } = sensor;
  const parts = [
    `column: ${name}`,
    `quantity: ${quantity}`,
    `unit: "${unit}"`,
    `zone: ${zone}`,
    `accuracy: ${accuracyText(sensor)}`,
    ...(batch === undefined ? [] : [`correlatedWith: ${batch}`]),
    ...(depth === undefined ? [] : [`depth: ${depth} m`]),
  ];
  return [`      ${name}: { ${parts.join(", ")} }`];
}

function loggerLines(logger: DemoLogger, sensors: readonly DemoSensor[], clean: boolean): string[] {
  const { name, timeZone, ahead } = logger;
  return [
    `  ${name}:`,
    `    files: ${name}.csv`,
    "    time:",
    `      timeZone: ${timeZone}`,
    ...(ahead === 0 || clean ? [] : [`      clock: ${ahead} s`]),
    "    sensors:",
    ...sensors.flatMap(sensorLines),
  ];
}

/**
 * Writes the files of a winter.
 *
 * @param year true year of the house as built
 * @param climate its weather
 * @param setting time, seed and faults; a seed of null gives a winter without any error
 */
export function winterFiles(
  year: TrueYear,
  climate: ClimateYear,
  setting: WinterSetting,
): { readonly map: WinterFile; readonly logs: readonly WinterFile[] } {
  const sensors = demoSensors(year, climate, setting);
  const loggers = demoLoggers(climate.place.timeZone);
  const of = (logger: DemoLogger) => sensors.filter((one) => one.logger === logger.name);
  const map = [
    "# How the loggers of Harrow Bend are read. The place is invented and so are its logs: a model",
    "# house was run through a winter and seen through sensors that err. Nothing here is measured.",
    "loggers:",
    ...loggers.flatMap((logger) => loggerLines(logger, of(logger), setting.seed === null)),
    "",
  ].join("\n");
  return {
    map: { name: "log-map.yaml", text: map },
    logs: loggers.map((logger) => ({
      name: `${logger.name}.csv`,
      text: csv(of(logger), loggerRows(logger, sensors, setting)),
    })),
  };
}
