/** Plans for columns: where they stand and how their unit becomes SI. @module */
import { type Kind, parseQuantity } from "../../units/mod.ts";
import { type ClimateQuantity, QUANTITY_RULES } from "./quantities.ts";
import type { ColumnPlan } from "./table.ts";

/** Sums over an hour are means of the hour; over the part of an hour a row covers, so much more. */
const HOURLY_SUMS: Readonly<Record<string, string>> = {
  "Wh/m2": "W/m2",
  "Wh/m^2": "W/m2",
  "Wh/m²": "W/m2",
  "kWh/m2": "kW/m2",
  "kWh/m²": "kW/m2",
  "J/m2": "J/(m2 h)",
  "kJ/m2": "kJ/(m2 h)",
  "MJ/m2": "MJ/(m2 h)",
  "J/cm2": "J/(cm2 h)",
  "Btu/ft2": "Btu/(ft2 h)",
};

/** Units of pressure and speed the unit reader does not have, in one it has. */
const OTHER_NAMES: Readonly<Record<string, readonly [number, string]>> = {
  // NIST SP 811 (2008) [nist-sp811-2008] appendix B.8: conventional inch of mercury 3386.389 Pa,
  // knot 0.5144444 m/s.
  "inHg": [3386.389, "Pa"],
  "mbar": [100, "Pa"],
  "hPa": [100, "Pa"],
  "kPa": [1000, "Pa"],
  "kn": [0.5144444, "m/s"],
  "knots": [0.5144444, "m/s"],
  "kt": [0.5144444, "m/s"],
};

/**
 * Straight line from a unit to SI: value · scale + shift.
 *
 * @param quantity decides what kind of unit is allowed
 * @param unit as in "degF", "%", "W/m2", "mph", "inHg"; "" for a plain share
 * @returns scale and shift
 * @throws {QuantityError} for unknown units and units of another kind
 */
export function unitLine(
  quantity: ClimateQuantity,
  unit: string,
): { scale: number; shift: number } {
  return unitLineOfKind(QUANTITY_RULES[quantity].kind, unit);
}

/**
 * The same for any kind of quantity.
 *
 * @param kind of the quantity
 * @param unit as people write it; "" for a plain number
 */
export function unitLineOfKind(kind: Kind, unit: string): { scale: number; shift: number } {
  const other = OTHER_NAMES[unit];
  const [factor, known] = other ?? [1, HOURLY_SUMS[unit] ?? unit];
  const shift = withoutNoise(parseQuantity(`0 ${known}`.trim(), kind));
  const scale = factor * (parseQuantity(`1 ${known}`.trim(), kind) - shift);
  return { scale: withoutNoise(scale), shift };
}

/** The number without the noise of unit conversion in its last digits, so that SI stays as it is. */
function withoutNoise(value: number): number {
  if (Math.abs(value) < 1e-10) return 0;
  const rounded = Number(value.toPrecision(12));
  return String(rounded).length <= 10 ? rounded : value;
}

/**
 * Plan of one column.
 *
 * @param quantity what it holds
 * @param index of the column, from 0
 * @param unit unit in the file
 * @param head head of the column; its number from 1 where there is none
 * @returns the plan
 */
export function planColumn(
  quantity: ClimateQuantity,
  index: number,
  unit: string,
  head: string | number = index + 1,
): ColumnPlan {
  return { quantity, index, head, unit, sum: unit in HOURLY_SUMS, ...unitLine(quantity, unit) };
}

/** Plans for the columns a layout names by head; heads that are absent are left out. */
export function planByHeads(
  heads: readonly string[],
  wanted: readonly (readonly [ClimateQuantity, string, string])[],
): ColumnPlan[] {
  return wanted.flatMap(([quantity, head, unit]) => {
    const index = heads.indexOf(head);
    return index === -1 ? [] : [planColumn(quantity, index, unit, head)];
  });
}
