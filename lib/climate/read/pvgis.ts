/** Reader for the public PVGIS typical-year layout. @module */
import { InputError, notice } from "../../basics/mod.ts";
import { makeStamp, StampFault } from "./stamp.ts";
import { planByHeads } from "./plan.ts";
import { parseNumber, parseRows, splitLines, type TableLayout } from "./table.ts";
import type { Place } from "../types.ts";

const HEADS = /^time\(UTC\),T2m,/;

/** True where the text is laid out as a PVGIS typical year. */
export function isPvgis(lines: readonly string[]): boolean {
  return lines.slice(0, 60).some((line) => HEADS.test(line));
}

/**
 * Lays out a PVGIS typical year.
 *
 * Stamps are UTC and start their hour; temperatures, humidity and wind stand at the stamp, radiation
 * stands "Irradiance Time Offset" hours after it. The rows are turned to local standard time by
 * whole hours and the radiation is brought to the mean of the hour.
 *
 * Source: European Commission JRC, PVGIS user manual [pvgis-web], typical meteorological year, and
 * the head of the files.
 *
 * @param text the file
 * @param file its path, for messages
 * @param study place of the study: its time zone is taken where it lies within 1° of longitude, else the
 *   nearest to the longitude
 * @returns the table
 * @throws {InputError} where the head cannot be read
 */
export function layoutPvgis(text: string, file: string, study?: Place): TableLayout {
  const lines = splitLines(text);
  const headLine = lines.findIndex((line) => HEADS.test(line));
  const head = lines.slice(0, headLine);
  const longitude = headNumber(head, "Longitude", file);
  const near = study !== undefined && Math.abs(study.longitude - longitude) <= 1;
  const zone = Math.round(near ? study.timeZone : longitude / 15);
  const end = lines.findIndex((line, index) => index > headLine && line.trim() === "");
  const body = lines.slice(headLine + 1, end === -1 ? undefined : end);
  const place: Place = {
    name: `PVGIS ${headNumber(head, "Latitude", file)}, ${longitude}`,
    latitude: headNumber(head, "Latitude", file),
    longitude,
    elevation: headNumber(head, "Elevation", file),
    timeZone: zone,
  };
  return {
    layout: "PVGIS",
    file,
    place,
    rows: parseRows(body, { delimiter: ",", file, firstLine: headLine + 2 }),
    firstLine: headLine + 2,
    columns: planByHeads(lines[headLine]!.split(",").map((name) => name.trim()), [
      ["dryBulb", "T2m", "degC"],
      ["relativeHumidity", "RH", "%"],
      ["globalHorizontal", "G(h)", "W/m2"],
      ["directNormal", "Gb(n)", "W/m2"],
      ["diffuseHorizontal", "Gd(h)", "W/m2"],
      ["skyLongwave", "IR(h)", "W/m2"],
      ["windSpeed", "WS10m", "m/s"],
      ["pressure", "SP", "Pa"],
    ]),
    stamp: readStamp,
    stampAt: "start",
    shiftMinutes: zone * 60,
    isMissing: (cell) => cell === "",
    radiationMoment: offset(head, file),
    leaveOutLeapDay: false,
    decimalComma: false,
    notices: [
      notice(
        "info",
        "climate",
        `PVGIS hours shifted from UTC to UTC${
          zone < 0 ? zone : `+${zone}`
        }, radiation converted from instantaneous ` +
          "values to hourly means; the totals of each day are kept",
      ),
    ],
  };
}

function readStamp(row: readonly string[]) {
  const time = /^(\d{4})(\d{2})(\d{2}):(\d{2})(\d{2})$/.exec(row[0] ?? "");
  if (time === null) {
    throw new StampFault(
      `Cannot read the time: expected YYYYMMDD:HHMM, found "${row[0] ?? ""}"; correct the line`,
    );
  }
  return makeStamp(Number(time[2]), Number(time[3]), Number(time[4]) * 60, row[0]!);
}

function headValue(head: readonly string[], name: string): [value: string, line: number] | null {
  const line = head.findIndex((text) => text.startsWith(name));
  return line === -1 ? null : [head[line]!.split(":")[1]?.trim() ?? "", line + 1];
}

function headNumber(head: readonly string[], name: string, file: string): number {
  const found = headValue(head, name);
  const value = parseNumber(found?.[0] ?? "", false);
  if (!Number.isNaN(value)) return value;
  throw new InputError(
    `Cannot read the site: expected a number for ${name}, found "${found?.[0] ?? "nothing"}"`,
    { file, line: found?.[1] ?? 1 },
  );
}

/** Moment of the radiation in its hour; where the head is silent it is taken as the hour's mean. */
function offset(head: readonly string[], file: string): number {
  const name = "Irradiance Time Offset";
  const found = headValue(head, name);
  if (found === null) return 0.5;
  const hours = headNumber(head, name, file);
  if (Math.abs(hours) <= 1) return hours;
  throw new InputError(
    `Cannot use the ${name}: expected -1 to 1 h, found ${found[0]}; correct the line`,
    { file, line: found[1] },
  );
}
