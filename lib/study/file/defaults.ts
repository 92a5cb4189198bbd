/** Lists the defaults a study file leaves to the field table. @module */
import { FIELDS, valueAt } from "./fields.ts";
import type { DefaultTaken } from "../types.ts";
import { NESTED_KEYS } from "./schema.ts";

/** Every fixed default taken, in the order of the table; derived ones are noted where derived. */
export function defaultsTaken(data: unknown): readonly DefaultTaken[] {
  const taken: DefaultTaken[] = [];
  for (const row of FIELDS.values()) {
    if (row.default === "" || valueAt(data, row.key) !== undefined) continue;
    const outer = row.key.slice(0, row.key.lastIndexOf("."));
    const nested = NESTED_KEYS.get(outer);
    if (nested === "list" || (nested === "part" && isNone(data, outer))) continue;
    if (row.key === "climate.seed" && valueAt(data, "climate.normals") === undefined) continue;
    if (row.key === "climate.mendShift" && valueAt(data, "climate.file") === undefined) continue;
    taken.push({ key: row.key, value: row.default, source: row.source });
  }
  return taken;
}

/** True where an optional section is left out or said to be none. */
function isNone(data: unknown, key: string): boolean {
  const section = valueAt(data, key);
  return section === undefined || section === "none";
}
