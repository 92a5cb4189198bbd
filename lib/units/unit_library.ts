/** The unit library with the trade's units added. @module */
import type { MathJsInstance, Unit } from "mathjs";
import inOneFile from "mathjs/lib/browser/math.js";

/** Read module by module, the same library takes half a second of every start. */
const library: Pick<MathJsInstance, "unit" | "createUnit"> = inOneFile;

/**
 * Units the library does not have. Water column: conventional inch of water, 249.08891 Pa (NIST SP
 * 811 [nist-sp811-2008], appendix B.8). The others follow from their definition.
 */
const ADDED: readonly (readonly [string, string])[] = [
  ["cfm", "1 ft^3/minute"],
  ["fpm", "1 ft/minute"],
  ["mph", "1 mile/hour"],
  ["kph", "1 km/hour"],
  ["gpm", "1 gallon/minute"],
  ["inH2O", "249.08891 Pa"],
  ["ach", "1 hour^-1"],
  ["therm", "100000 BTU"],
  ["kBTU", "1000 BTU"],
  ["MMBTU", "1000000 BTU"],
  ["clo", "0.155 m^2 K/W"],
];
for (const [name, definition] of ADDED) library.createUnit(name, definition, { override: true });

/** A value with a unit of the library; throws where the unit is unknown. */
export function withUnit(value: number, unit: string): Unit {
  return library.unit(value, unit);
}
