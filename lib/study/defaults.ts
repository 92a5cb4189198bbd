/** Lists the defaults a study file leaves to the field table. @module */
import { FIELDS } from "./fields.ts";
import type { DefaultTaken } from "./types.ts";

/** Value at a dotted path of plain data; undefined where any part is missing. */
function valueAt(data: unknown, key: string): unknown {
  return key.split(".").reduce<unknown>(
    (value, part) =>
      typeof value === "object" && value !== null
        ? (value as Record<string, unknown>)[part]
        : undefined,
    data,
  );
}

/** Lists: their entries take no default of the file. */
const LIST_KEYS = ["place.horizon", "soil.layers"];

/** Every fixed default taken, in the order of the table; derived ones are noted where derived. */
export function defaultsTaken(data: unknown): readonly DefaultTaken[] {
  const taken: DefaultTaken[] = [];
  for (const row of FIELDS.values()) {
    if (row.default === "" || valueAt(data, row.key) !== undefined) continue;
    if (LIST_KEYS.some((list) => row.key.startsWith(`${list}.`))) continue;
    if (row.key.startsWith("house.curtain.") && noCurtain(data)) continue;
    if (row.key === "climate.seed" && valueAt(data, "climate.normals") === undefined) continue;
    taken.push({ key: row.key, value: row.default, source: row.source });
  }
  return taken;
}

function noCurtain(data: unknown): boolean {
  const curtain = valueAt(data, "house.curtain");
  return curtain === undefined || curtain === "none";
}
