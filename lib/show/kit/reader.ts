/**
 * The reader's units, decided here for all that is shown: words, tables, axes. SI unless a study says
 * US; what the chapters compute stays in SI.
 *
 * @module
 */
import {
  type DisplayScale,
  displayUnit,
  inOrderOf,
  type Kind,
  showBoth,
  showNumber,
  showRange,
  showSi,
  showUs,
  type UnitSystem,
} from "../../units/mod.ts";

let system: UnitSystem = "SI";

/** Shows everything from now on in these units, the other ones second. */
export function readIn(units: UnitSystem): void {
  system = units;
}

/** The units shown first. */
export function readersUnits(): UnitSystem {
  return system;
}

/** How the reader sees a kind: unit, size, decimals. */
export function readersScale(kind: Kind): DisplayScale {
  const { si, us } = displayUnit(kind);
  return system === "US" && us !== null ? us : si;
}

/**
 * A quantity in the reader's units alone, such as "−17.2 degC".
 *
 * @param value in the unit the kind has inside the library
 * @param kind what it is
 * @param digits decimals in SI where the usual ones do not do
 */
export function shown(value: number, kind: Kind, digits?: number): string {
  const us = system === "US" ? showUs(value, kind) : "";
  return us === "" ? showSi(value, kind, digits) : us;
}

/** A quantity in the reader's units with the other ones in brackets; as {@link shown}. */
export function shownBoth(value: number, kind: Kind): string {
  return inReadersOrder(showBoth(value, kind));
}

/** A range in the reader's units with the other ones in brackets; as {@link shown}. */
export function shownRange(low: number, high: number, kind: Kind, digits?: number): string {
  return inReadersOrder(showRange(low, high, kind, digits));
}

/** A value in the reader's units as a plain number with its kind's decimals; the unit stands elsewhere. */
export function shownNumber(value: number, kind: Kind, digits?: number): string {
  const scale = readersScale(kind);
  const decimals = scale === displayUnit(kind).si ? digits ?? scale.digits : scale.digits;
  return showNumber(value * scale.factor + scale.offset, decimals);
}

/** "2.5 degC (36.6 degF)", as the chapters write it, in the order of the reader. */
export function inReadersOrder(text: string): string {
  return inOrderOf(system, text);
}
