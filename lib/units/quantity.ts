/** Quantities written as text with their unit. @module */
import { type Kind, kindOf, type KindOfQuantity } from "./kinds.ts";
import { plainForm } from "./trade_forms.ts";
import { withUnit } from "./unit_library.ts";
import { spellUnit } from "./spell_unit.ts";

/** System of units for tables. */
export type UnitSystem = "SI" | "US";

/** A text is not a quantity of the kind that is wanted. */
export class QuantityError extends SyntaxError {
  /** shown in front of the message */
  override name = "QuantityError";
}

const SHAPE = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s;

function expected(kind: KindOfQuantity, found: string, hint = ""): QuantityError {
  const [first, second] = kind.examples;
  return new QuantityError(
    `expected ${kind.phrase} such as ${first} or ${second}; found ${found}${hint}`,
  );
}

/** Size and zero of a linear unit, in the inside unit: inside = offset + slope·value. */
function toInside(value: number, from: string, to: string, difference: boolean): number {
  const convert = (amount: number) => withUnit(amount, from).toNumber(to);
  return difference ? value * (convert(1) - convert(0)) : convert(value);
}

/** In the inside unit of the kind, through the reciprocal where the unit is that of one. */
function insideOf(value: number, unit: string, kind: KindOfQuantity): number {
  const difference = kind.difference === true;
  try {
    return toInside(value, unit, kind.si, difference);
  } catch (error) {
    if (kind.reciprocal === undefined) throw error;
    return 1 / toInside(value, unit, kind.reciprocal, difference);
  }
}

const PER_CENT = /^(%|percent|per cent)$/i;

/** A number as the workbook prints it: narrow spaces for thousands, a true minus sign. */
function printedForm(text: string): string {
  return text.trim().replace(/^[\u2212\u2013]/, "-")
    .replaceAll(/(?<=\d)\u202f(?=\d{3}(?!\d))/g, "");
}

function parsePlain(value: number, unit: string, kind: KindOfQuantity, found: string): number {
  if (unit === "") return value;
  if (PER_CENT.test(unit) && kind.examples[0].endsWith("%")) return value / 100;
  throw expected(kind, found);
}

/**
 * Reads a quantity such as `26 m`, `85 ft`, `0.5 1/h`, `30 %` or `-3 degC`.
 *
 * A transmittance may be written as the resistance it is the reciprocal of, such as `R-19`.
 *
 * Temperatures come out in degC, differences in K (so 9 degF is 5 K), angles in degrees, air changes
 * per hour, energy in kWh, everything else in SI base units.
 *
 * @example
 * ```ts
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 * import { parseQuantity } from "./quantity.ts";
 *
 * assertAlmostEquals(parseQuantity("85 ft", "length"), 25.908, 1e-12);
 * assertAlmostEquals(parseQuantity("9 degF", "temperatureDifference"), 5, 1e-12);
 * assertEquals(parseQuantity("30 %", "share"), 0.3);
 * ```
 *
 * @param text what the user wrote; a bare number is taken only for plain numbers and shares
 * @param kind what it must be
 * @returns value in the inside unit of that kind
 * @throws {QuantityError} where the unit is missing, unknown or of another kind
 */
export function parseQuantity(text: string | number, kind: Kind): number {
  const wanted = kindOf(kind);
  const found = printedForm(String(text));
  const parts = SHAPE.exec(plainForm(found));
  if (parts === null) {
    throw expected(wanted, found === "" ? "nothing" : `"${found}"`);
  }
  // "2 500 cfm" is never 2 of something; "0.5 1/h" is a unit
  if (/^(?!1\s*\/\s*[A-Za-z(])\d/.test(parts[2]!)) {
    throw expected(wanted, found, " (write a single number, without spaces or fractions)");
  }
  if (/^[+-]?\d+,\d/.test(found)) {
    throw expected(
      wanted,
      found,
      " (use a point as the decimal mark and no thousands separator)",
    );
  }
  const value = Number(parts[1]);
  const unit = parts[2]!.trim();
  if (!Number.isFinite(value)) throw expected(wanted, found);
  if (wanted.si === "") return parsePlain(value, unit, wanted, found);
  if (unit === "") throw expected(wanted, `${found} without a unit`);
  const spelled = spellUnit(unit);
  try {
    withUnit(1, spelled);
  } catch {
    throw expected(wanted, found, ` (the unit "${unit}" is not known)`);
  }
  try {
    const inside = insideOf(value, spelled, wanted);
    if (Number.isFinite(inside)) return inside;
  } catch {
    // told below: the unit is of another kind
  }
  throw expected(wanted, found);
}

/** Value in the unit of a system, from the inside unit. */
function inSystem(value: number, kind: Kind, system: UnitSystem): number {
  const { si, us, difference } = kindOf(kind);
  if (system === "SI" || si === us) return value;
  return toInside(value, si, us, difference === true);
}

/** Unit of a kind as a reader writes it; "" for plain numbers. */
function unitLabel(kind: Kind, system: UnitSystem = "SI"): string {
  return system === "SI" ? kindOf(kind).siLabel : kindOf(kind).usLabel;
}

/** Rounds to significant digits without exponent for the sizes that occur in a study. */
function roundTo(value: number, digits: number): string {
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size >= 1e7 || size < 1e-4) return value.toExponential(digits - 1);
  return String(Number(value.toPrecision(Math.max(digits, Math.ceil(Math.log10(size))))));
}

/**
 * Writes a quantity for a table, in SI or US units; `parseQuantity` reads it back.
 *
 * @returns the value with its unit
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { formatQuantity } from "./quantity.ts";
 *
 * assertEquals(formatQuantity(25.908, "length", "US"), "85 ft");
 * assertEquals(formatQuantity(0.3, "share"), "30 %");
 * ```
 *
 * @param value in the unit of the kind inside the library
 * @param kind what it is
 * @param system units to write it in
 * @param digits significant digits
 */
export function formatQuantity(
  value: number,
  kind: Kind,
  system: UnitSystem = "SI",
  digits = 4,
): string {
  if (kindOf(kind).shown.si[1] === "%") return `${roundTo(value * 100, digits)} %`;
  const label = unitLabel(kind, system);
  const text = roundTo(inSystem(value, kind, system), digits);
  return label === "" ? text : `${text} ${label}`;
}
