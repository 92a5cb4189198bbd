/**
 * The public modules of the library, as `deno.json` exports them.
 *
 * @module
 */
import { join } from "node:path";
import settings from "../../deno.json" with { type: "json" };
import { PROJECT_FOLDER } from "./terminal.ts";

/** Paths of the public modules. */
export function publicModules(): string[] {
  return Object.values(settings.exports).map((path) => join(PROJECT_FOLDER, path));
}
