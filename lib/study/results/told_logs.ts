/** How logs stand in results.json: by name, hash and rows. Their files lie in `inputs/`. @module */
import { createHash } from "node:crypto";
import type { LogText, LogTexts } from "../../measured/types.ts";
import type { GivenFile } from "../file/given_file.ts";

/** A file of logs as results.json tells it. */
export interface ToldLog {
  /** name, as the study file gives it */
  readonly name: string;
  /** SHA-256, hex, of the file as given */
  readonly hash: string;
  /** count of its lines that are not empty */
  readonly rows: number;
}

/** The files that a study names under `measured`. */
export interface ToldLogs {
  /** the log map */
  readonly map: ToldLog;
  /** the logs, in the order of the study file */
  readonly logs: readonly ToldLog[];
  /** what is true, for grading; only of made-up logs */
  readonly truth?: ToldLog | undefined;
  /** faults that were planted, for grading; only of made-up logs */
  readonly plantedFaults?: ToldLog | undefined;
  /** forecast for the day ahead */
  readonly forecast?: ToldLog | undefined;
}

/** Key of the study file by which a file under `measured` is named, from its place in the inputs. */
const keyOf = (place: string) =>
  place === "map"
    ? "measured.logMap"
    : place.startsWith("logs.")
    ? `measured.${place}.file`
    : `measured.${place}`;

/**
 * The logs of a study without their texts.
 *
 * @param texts null where the study names none
 * @param files of the study, whose bytes give the hashes; a file that is not there, as in runs of earlier
 *   versions, gives that of its text
 */
export function toldLogs(texts: LogTexts | null, files: readonly GivenFile[]): ToldLogs | null {
  if (texts === null) return null;
  const told = (place: string, { name, text }: LogText): ToldLog => {
    const bytes = files.find(({ by }) => by === keyOf(place))?.bytes;
    return {
      name,
      hash: createHash("sha256").update(bytes ?? text).digest("hex"),
      rows: text.split("\n").filter((line) => line.trim() !== "").length,
    };
  };
  const { map, logs, ...single } = texts;
  return {
    map: told("map", map),
    logs: logs.map((log, place) => told(`logs.${place}`, log)),
    ...Object.fromEntries(
      Object.entries(single).flatMap(([key, log]) =>
        log === undefined ? [] : [[key, told(key, log)]]
      ),
    ),
  };
}
