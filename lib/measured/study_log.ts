/** The log that a study's texts hold. @module */
import type { LogTexts } from "./fields.ts";
import { parseLogMap } from "./log/map_file.ts";
import { readLog } from "./log/read_log.ts";
import type { Log } from "./log/types.ts";

/**
 * Reads the logs of a study on one step.
 *
 * @param texts map and logs
 * @param setting hours east of UTC where the map says none, and s of the step
 * @throws {InputErrors} where the map is faulty, or a file fits no logger of it
 */
export function readStudyLog(
  { map, logs }: LogTexts,
  { timeZone, step }: { readonly timeZone: number; readonly step: number },
): Log {
  return readLog(
    logs.map(({ name, text }) => ({ file: name, text })),
    parseLogMap(map.text, map.name, timeZone),
    { step },
  );
}
