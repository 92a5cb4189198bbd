/** The log that a study's texts hold. @module */
import type { LogTexts } from "./fields.ts";
import { parseLogMap } from "./log/map_file.ts";
import { readLog } from "./log/read_log.ts";
import { parseSensorList } from "./log/sensor_list.ts";
import type { Log } from "./log/types.ts";

/**
 * Reads the logs of a study on one step.
 *
 * @param texts map (a sensor list where its name ends in .csv) and logs
 * @param setting hours east of UTC where the map says none, and s of the step
 * @throws {InputErrors} where the map is faulty, or a file fits no logger of it
 */
export function readStudyLog(
  { map, logs }: LogTexts,
  { timeZone, step }: { readonly timeZone: number; readonly step: number },
): Log {
  const parse = /\.csv$/i.test(map.name) ? parseSensorList : parseLogMap;
  return readLog(
    logs.map(({ name, text }) => ({ file: name, text })),
    parse(map.text, map.name, timeZone),
    { step },
  );
}
