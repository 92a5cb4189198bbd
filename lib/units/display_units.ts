/** Quantities as a reader sees them, SI first and US second, with the decimals their kind is shown with. @module */
import { type Kind, kindOf, type ShownUnit } from "./kinds.ts";
import { unitSize } from "./scales.ts";
import { roundToDecimals, roundToFigures } from "../basics/round.ts";

/** How a kind is shown in one system: shown value = value × factor + offset. */
export interface DisplayScale {
  /** unit as shown; "–" for a pure number */
  readonly unit: string;
  /** ratio of the shown value to that inside the library */
  readonly factor: number;
  /** added after the factor; only a temperature has one */
  readonly offset: number;
  /** decimals */
  readonly digits: number;
}

/** How one kind of quantity is shown. */
export interface DisplayUnit {
  /** in SI, or the one unit everywhere */
  readonly si: DisplayScale;
  /** in US use; null where that has no unit of its own */
  readonly us: DisplayScale | null;
}

const known = new Map<Kind, DisplayUnit>();

/** The units a kind is shown in. */
export function displayUnit(kind: Kind): DisplayUnit {
  let found = known.get(kind);
  if (found === undefined) {
    const { si, us } = kindOf(kind).shown;
    found = { si: scaleOf(kind, si), us: us === null ? null : scaleOf(kind, us) };
    known.set(kind, found);
  }
  return found;
}

function scaleOf(kind: Kind, [unit, label, digits]: ShownUnit): DisplayScale {
  const { si } = kindOf(kind);
  if (unit === "") return { unit: label, factor: label === "%" ? 100 : 1, offset: 0, digits };
  if (unit === si) return { unit: label, factor: 1, offset: 0, digits };
  return { unit: label, ...unitSize(unit, si), digits };
}

/**
 * Number with fixed decimals, thin groups, a true minus sign and no negative zero.
 *
 * @param value a plain number: shown as it is
 * @param digits number of decimals
 */
export function showNumber(value: number, digits: number): string {
  if (!Number.isFinite(value)) return "–";
  const rounded = Math.abs(value).toFixed(digits);
  const [whole, decimals] = rounded.split(".");
  const grouped = whole!.length > 4 ? whole!.replace(/\B(?=(\d{3})+$)/g, "\u202f") : whole!;
  const sign = value < 0 && Number(rounded) !== 0 ? "−" : "";
  return `${sign}${grouped}${decimals === undefined ? "" : `.${decimals}`}`;
}

/**
 * Number with so many significant figures at most, otherwise as {@link showNumber}: "0.52", "12", "−3.1".
 *
 * @param value a plain number: shown as it is
 * @param figures a count, 1 or more
 */
export function showFigures(value: number, figures: number): string {
  const rounded = Math.abs(roundToFigures(value, figures));
  const decimals = rounded === 0 || !Number.isFinite(rounded)
    ? 0
    : Math.max(0, figures - 1 - Math.floor(Math.log10(rounded)));
  const least = Array.from({ length: decimals }, (_, digits) => digits)
    .find((digits) => roundToDecimals(rounded, digits) === rounded);
  return showNumber(roundToFigures(value, figures), Math.min(100, least ?? decimals));
}

/**
 * A very small or large number as "−4.5e−14"; "–" where it is none.
 *
 * @param value a plain number: shown as it is
 */
export function showPower(value: number): string {
  if (!Number.isFinite(value)) return "–";
  return value.toExponential(1).replaceAll("-", "−").replace("+", "");
}

function show(value: number, scale: DisplayScale, digits: number): string {
  const number = showNumber(value * scale.factor + scale.offset, digits);
  return scale.unit === "–" ? number : `${number}\u00a0${scale.unit}`;
}

/**
 * "−17.2 degC", with an unbreakable space.
 *
 * @param value in the unit the kind has inside the library
 * @param kind what it is
 * @param digits decimals where the usual ones do not do
 */
export function showSi(value: number, kind: Kind, digits?: number): string {
  const { si } = displayUnit(kind);
  return show(value, si, digits ?? si.digits);
}

/** "1.0 degF", or an empty text where US use has no unit of its own; as {@link showSi}. */
export function showUs(value: number, kind: Kind, digits?: number): string {
  const { us } = displayUnit(kind);
  return us === null ? "" : show(value, us, digits ?? us.digits);
}

/**
 * "−17.2 degC (1.0 degF)": how every notice and every sentence gives a quantity, so that one place
 * decides on the units of a text.
 *
 * @param value in the unit the kind has inside the library
 * @param kind what it is
 */
export function showBoth(value: number, kind: Kind): string {
  const us = showUs(value, kind);
  return us === "" ? showSi(value, kind) : `${showSi(value, kind)} (${us})`;
}

/**
 * "0.60 to 1.20 m/s (118 to 236 ft/min)".
 *
 * @param low in the unit the kind has inside the library
 * @param high in the same unit
 * @param kind what they are
 * @param digits decimals in SI where the usual ones do not do
 */
export function showRange(low: number, high: number, kind: Kind, digits?: number): string {
  const { si, us } = displayUnit(kind);
  const range = (scale: DisplayScale) =>
    `${showNumber(low * scale.factor + scale.offset, scale.digits)} to ${
      show(high, scale, scale.digits)
    }`;
  const main = range({ ...si, digits: digits ?? si.digits });
  return us === null ? main : `${main} (${range(us)})`;
}
