/** What the channels of a log measure, in which units, and which values cannot be true. @module */
import type { Kind } from "../../units/mod.ts";

/** What a value of a quantity may be; in SI, temperatures in degC. */
export interface LogQuantityRule {
  /** as a reader would say it */
  readonly words: string;
  /** kind whose units the column may be in */
  readonly kind: Kind;
  /** unit of the limits, for messages */
  readonly unit: string;
  /** least value a working sensor gives, in that unit */
  readonly low: number;
  /** greatest value a working sensor gives, in that unit */
  readonly high: number;
  /**
   * least height of a lone value over both its fellows that is called a spike, in that unit; null
   * where lone peaks are part of the job (sun, switches)
   */
  readonly spike: number | null;
  /** s that a working sensor may keep one value, if it never did so longer; null: not looked at */
  readonly stuck: number | null;
  /** true where the quantity rests at 0 for long times */
  readonly rests: boolean;
  /** least drift against a neighbour that is told, in that unit; null: not looked at */
  readonly drift: number | null;
}

const HOUR = 3600;
const DAY = 86400;

/** Air temperatures, inside and out. */
const AIR_TEMPERATURE = {
  kind: "temperature",
  unit: "degC",
  spike: 4,
  stuck: 8 * HOUR,
  rests: false,
  drift: 0.5,
} as const;

/** Switched or set by hand or controller: they jump, and they stay. */
const SWITCHED = { spike: null, stuck: null, rests: true, drift: null } as const;

/**
 * Rules of every quantity.
 *
 * Limits outside which a value is a fault of the logger and not weather or house, and sizes from
 * which a fault is told: common practice, no source. Outdoor temperature: a little beyond the
 * records of the World Meteorological Organization (-89.2 and 56.7 degC), as for climate files.
 */
export const LOG_QUANTITIES = {
  airTemperature: { words: "air temperature", low: -60, high: 75, ...AIR_TEMPERATURE },
  outsideTemperature: { words: "outdoor air temperature", low: -90, high: 60, ...AIR_TEMPERATURE },
  wetBulbTemperature: { words: "wet-bulb temperature", low: -60, high: 60, ...AIR_TEMPERATURE },
  // heated pipes are switched
  surfaceTemperature: {
    words: "surface temperature",
    kind: "temperature",
    unit: "degC",
    low: -60,
    high: 110,
    ...SWITCHED,
  },
  soilTemperature: {
    words: "soil temperature",
    kind: "temperature",
    unit: "degC",
    low: -50,
    high: 70,
    spike: 1.5,
    stuck: 2 * DAY,
    rests: false,
    drift: 0.4,
  },
  relativeHumidity: {
    words: "relative humidity",
    kind: "share",
    unit: "",
    low: 0,
    high: 1.1,
    spike: 0.2,
    stuck: 12 * HOUR,
    rests: false,
    drift: 0.05,
  },
  soilMoisture: {
    words: "soil moisture",
    kind: "share",
    unit: "",
    low: 0,
    high: 0.9,
    spike: 0.08,
    stuck: null,
    rests: false,
    drift: null,
  },
  airSpeed: { words: "air speed", kind: "speed", unit: "m/s", low: 0, high: 60, ...SWITCHED },
  airFlow: { words: "air flow", kind: "airFlow", unit: "m³/s", low: 0, high: 100, ...SWITCHED },
  pressure: {
    words: "pressure difference",
    kind: "pressure",
    unit: "Pa",
    low: -5000,
    high: 5000,
    ...SWITCHED,
  },
  barometer: {
    words: "air pressure",
    kind: "pressure",
    unit: "Pa",
    low: 45000,
    high: 110000,
    spike: 2000,
    stuck: DAY,
    rests: false,
    drift: 200,
  },
  power: { words: "fan power", kind: "power", unit: "W", low: -10, high: 1e6, ...SWITCHED },
  heaterPower: {
    words: "heater power",
    kind: "power",
    unit: "W",
    low: -10,
    high: 1e7,
    ...SWITCHED,
  },
  globalRadiation: {
    words: "global radiation",
    kind: "heatFlux",
    unit: "W/m²",
    low: -20,
    high: 1600,
    spike: null,
    stuck: 4 * HOUR,
    rests: true,
    drift: null,
  },
  netLongwave: {
    words: "net long-wave radiation",
    kind: "heatFlux",
    unit: "W/m²",
    low: -250,
    high: 150,
    spike: null,
    stuck: 12 * HOUR,
    rests: true,
    drift: null,
  },
  windSpeed: {
    words: "wind speed",
    kind: "speed",
    unit: "m/s",
    low: 0,
    high: 75,
    spike: null,
    stuck: 12 * HOUR,
    rests: true,
    drift: null,
  },
  carbonDioxide: {
    words: "carbon dioxide",
    kind: "number",
    unit: "ppm",
    low: 0,
    high: 20000,
    spike: 2000,
    stuck: DAY,
    rests: false,
    drift: null,
  },
  ventOpening: {
    words: "vent opening",
    kind: "share",
    unit: "",
    low: -0.05,
    high: 1.05,
    ...SWITCHED,
  },
  curtain: { words: "curtain", kind: "share", unit: "", low: -0.05, high: 1.05, ...SWITCHED },
  other: {
    words: "another value",
    kind: "number",
    unit: "",
    low: -Infinity,
    high: Infinity,
    ...SWITCHED,
  },
} as const satisfies Record<string, LogQuantityRule>;

/** What a channel measures. */
export type Quantity = keyof typeof LOG_QUANTITIES;

/**
 * The rule of a quantity.
 *
 * @param quantity its name
 */
export function logQuantity(quantity: Quantity): LogQuantityRule {
  return LOG_QUANTITIES[quantity];
}
