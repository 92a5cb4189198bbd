/** Values in words that may not exist. @module */
import type { Kind } from "../../units/mod.ts";
import { shown } from "./reader.ts";

/**
 * A value in the reader's units.
 *
 * @param value in SI; null where it does not exist
 * @param kind kind of lib/units/kinds.ts
 * @param otherwise said in its place where it does not exist
 */
export function siText(value: number | null, kind: Kind, otherwise = "–"): string {
  return value === null ? otherwise : shown(value, kind);
}
