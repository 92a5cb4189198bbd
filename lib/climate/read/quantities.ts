/** Quantities a climate file may hold and the values they may take. @module */
import type { Kind } from "../../units/mod.ts";

/** Name of a quantity of a climate file. */
export type ClimateQuantity =
  | "dryBulb"
  | "dewPoint"
  | "relativeHumidity"
  | "globalHorizontal"
  | "directNormal"
  | "diffuseHorizontal"
  | "windSpeed"
  | "pressure"
  | "skyLongwave"
  | "albedo";

/** What a value of a quantity may be; in SI, temperatures in degC. */
export interface QuantityRule {
  /** as a reader would say it */
  readonly words: string;
  readonly kind: Kind;
  /** unit of the limits, for messages */
  readonly unit: string;
  readonly low: number;
  readonly high: number;
}

/**
 * Limits outside which a value is a fault of the file and not weather.
 *
 * Temperature: a little beyond the records of the World Meteorological Organization (-89.2 and
 * 56.7 degC). Radiation: the extraterrestrial value, for the global with the brightening beside
 * clouds. Others: common practice, no source.
 */
export const QUANTITY_RULES: Readonly<Record<ClimateQuantity, QuantityRule>> = {
  dryBulb: { words: "dry-bulb temperature", kind: "temperature", unit: "degC", low: -90, high: 60 },
  dewPoint: { words: "dew point", kind: "temperature", unit: "degC", low: -100, high: 40 },
  relativeHumidity: {
    words: "relative humidity",
    kind: "share",
    unit: "",
    low: 0,
    high: 1.1,
  },
  globalHorizontal: {
    words: "global radiation",
    kind: "heatFlux",
    unit: "W/m²",
    low: -20,
    high: 1600,
  },
  directNormal: { words: "direct radiation", kind: "heatFlux", unit: "W/m²", low: -20, high: 1420 },
  diffuseHorizontal: {
    words: "diffuse radiation",
    kind: "heatFlux",
    unit: "W/m²",
    low: -20,
    high: 1000,
  },
  windSpeed: { words: "wind speed", kind: "speed", unit: "m/s", low: 0, high: 75 },
  pressure: { words: "air pressure", kind: "pressure", unit: "Pa", low: 45000, high: 110000 },
  skyLongwave: { words: "long-wave radiation", kind: "heatFlux", unit: "W/m²", low: 40, high: 600 },
  albedo: { words: "albedo", kind: "share", unit: "", low: 0, high: 1 },
};

/** Every quantity name. */
export const QUANTITIES = Object.keys(QUANTITY_RULES) as readonly ClimateQuantity[];
