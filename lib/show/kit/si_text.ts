/** Values in words that may not exist. @module */
import { type Kind, showSi } from "../../units/mod.ts";

/**
 * A value in SI with its unit.
 *
 * @param value in SI; null where it does not exist
 * @param kind kind of lib/units/kinds.ts
 * @param otherwise said in its place where it does not exist
 */
export function siText(value: number | null, kind: Kind, otherwise = "–"): string {
  return value === null ? otherwise : showSi(value, kind);
}
