/** Quantities as text with units, in and out. @module */
export { type Kind, kindOf, type KindOfQuantity, KINDS } from "./kinds.ts";
export { formatQuantity, parseQuantity, QuantityError, type UnitSystem } from "./quantity.ts";
export { readsAsTemperature } from "./difference.ts";
export { readTimeZone } from "./time_zone.ts";
export { matchWord } from "./words.ts";
