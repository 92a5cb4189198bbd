/** Ranges in words. @module */
import type { Banded } from "../../measured/mod.ts";
import { type Kind, showSi } from "../../units/mod.ts";

/** "from … to …" in SI. */
export function rangeText({ low, high }: Banded, kind: Kind): string {
  return `from ${showSi(low, kind)} to ${showSi(high, kind)}`;
}
