/** Lists the defaults a study file leaves to the field table. @module */
import { FIELDS } from "./fields.ts";
import type { DefaultTaken } from "../types.ts";

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

/** Sections that may be none: then their keys take no default. */
const OPTIONAL_SECTIONS = ["house.curtain", "store.collector", "store.gravelBed"];

/** Every fixed default taken, in the order of the table; derived ones are noted where derived. */
export function defaultsTaken(data: unknown): readonly DefaultTaken[] {
  const taken: DefaultTaken[] = [];
  for (const row of FIELDS.values()) {
    if (row.default === "" || valueAt(data, row.key) !== undefined) continue;
    if (LIST_KEYS.some((list) => row.key.startsWith(`${list}.`))) continue;
    if (OPTIONAL_SECTIONS.some((key) => row.key.startsWith(`${key}.`) && isNone(data, key))) {
      continue;
    }
    if (row.key === "climate.seed" && valueAt(data, "climate.normals") === undefined) continue;
    taken.push({ key: row.key, value: row.default, source: row.source });
  }
  return taken;
}

/** True where an optional section is left out or said to be none. */
function isNone(data: unknown, key: string): boolean {
  const section = valueAt(data, key);
  return section === undefined || section === "none";
}
