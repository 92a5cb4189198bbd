/** The log of a real glass compartment, where a folder with it is named. @module */
import { join } from "node:path";
import { checkLog, type LogHalves, readGreenhouseLog } from "../../measured/mod.ts";
import { readTextFile } from "./read_text.ts";

/** Names the folder of the log. */
export const LOG_VARIABLE = "WINTERGROUND_GREENHOUSE_LOG";

/**
 * Fits and predicts the log in the folder that `WINTERGROUND_GREENHOUSE_LOG` names (`weather.csv`
 * and `reference_climate.csv`), some seconds of work.
 *
 * @returns null where the variable is not set
 * @throws {InputError} where the folder lacks the files or they cannot be read
 */
export async function greenhouseLog(): Promise<LogHalves | null> {
  const folder = Deno.env.get(LOG_VARIABLE);
  if (folder === undefined || folder === "") return null;
  const read = async (name: string) =>
    await readTextFile(join(folder, name), `log in the folder that ${LOG_VARIABLE} names`, "table");
  return checkLog(
    readGreenhouseLog(await read("weather.csv"), await read("reference_climate.csv")),
  );
}
