/** Ranges in words. @module */
import type { Banded } from "../../measured/mod.ts";
import type { Kind } from "../../units/mod.ts";
import { shown } from "../kit/reader.ts";

/** "from … to …" in SI. */
export function rangeText({ low, high }: Banded, kind: Kind): string {
  return `from ${shown(low, kind)} to ${shown(high, kind)}`;
}
