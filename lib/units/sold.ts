/** The units in which a reader of US units buys. @module */
import type { UnitSystem } from "./quantity.ts";

/** US units of what is sold in metres, square metres and cubic metres, with their count in one of SI. */
const SOLD: Readonly<Record<string, readonly [unit: string, perSi: number]>> = {
  m: ["ft", 1 / 0.3048],
  "m²": ["ft²", 1 / 0.3048 ** 2],
  "m³": ["yd³", 1 / 0.9144 ** 3],
};

/**
 * An amount in the unit in which it is bought; what stands behind a unit stays: "m³ bank".
 *
 * @param amount in m, m², m³ or a count, as `unit` says
 * @param unit as the take-off has it
 * @param units of the reader
 * @returns the amount in the other unit, and that unit
 */
export function asSold(
  amount: number,
  unit: string,
  units: UnitSystem,
): { readonly amount: number; readonly unit: string } {
  const [si, ...more] = unit.split(" ");
  const sold = units === "US" ? SOLD[si!] : undefined;
  return sold === undefined
    ? { amount, unit }
    : { amount: amount * sold[1], unit: [sold[0], ...more].join(" ") };
}
