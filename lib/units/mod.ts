/** Quantities as text with units, in and out. @module */
export {
  type DisplayScale,
  type DisplayUnit,
  displayUnit,
  showBoth,
  showFigures,
  showNumber,
  showPower,
  showRange,
  showSi,
  showUs,
} from "./display_units.ts";
export { type Kind, kindOf, type KindOfQuantity, KINDS, type ShownUnit } from "./kinds.ts";
export { feetInches } from "./feet_inches.ts";
export { formatMonthly } from "./monthly.ts";
export { formatQuantity, parseQuantity, QuantityError, type UnitSystem } from "./quantity.ts";
export { inOrderOf } from "./reading_order.ts";
export { readsAsTemperature } from "./difference.ts";
export { clockShares, hourOfClock, readClockSpan, readSeason, seasonDays } from "./season.ts";
export { asSold } from "./sold.ts";
export { readTimeZone } from "./time_zone.ts";
export { matchWord } from "./words.ts";
