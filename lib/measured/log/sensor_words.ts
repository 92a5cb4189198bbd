/** Sensors from the words of a map or a list: units, accuracy, place. @module */
import { unitLineOfKind } from "../../climate/read/plan.ts";
import { type Kind, parseQuantity, QuantityError } from "../../units/mod.ts";
import type { SensorColumn } from "./map.ts";
import { LOG_QUANTITIES, logQuantity, type Quantity } from "./quantities.ts";
import { type Accuracy, QUANTITY_ACCURACY } from "./accuracy.ts";
import type { ColumnName } from "../../climate/read/columns_file.ts";

/** Names of all quantities. */
export const QUANTITY_NAMES = Object.keys(LOG_QUANTITIES) as readonly Quantity[];

/** What is said of a sensor; a part that is left out is undefined. */
export interface SensorWords {
  /** unique name */
  readonly name: string;
  /** its logger */
  readonly logger: string;
  /** head or number of its column */
  readonly column: ColumnName;
  /** what it measures */
  readonly quantity: Quantity;
  /** unit of the column; that of the library where undefined */
  readonly unit: string | undefined;
  /** where it hangs */
  readonly zone: string;
  /** such as "0.2 K", "2 %" */
  readonly accuracy: string | number | undefined;
  /** bath or batch it was calibrated in */
  readonly correlatedWith: string | undefined;
  /** such as "0.6 m" */
  readonly depth: string | number | undefined;
  /** along the tubes */
  readonly x: string | number | undefined;
  /** across the tubes */
  readonly y: string | number | undefined;
}

/** What is wrong with a part of a sensor's words. */
export class SensorFault extends Error {
  /** the part: "unit", "accuracy" … */
  readonly part: keyof SensorWords;
  /** Builds the message. */
  constructor(part: keyof SensorWords, message: string) {
    super(message);
    this.part = part;
  }
}

/**
 * A sensor and its column from words.
 *
 * @param words what is said of it
 * @throws {SensorFault} where a unit or a number cannot be read
 */
export function sensorColumn(words: SensorWords): SensorColumn {
  const { kind, unit: plain } = logQuantity(words.quantity);
  const unit = words.unit ?? plain;
  const line = attempt("unit", () => columnLine(unit, kind, words.quantity));
  const given = accuracyOf(words);
  const place = (part: "depth" | "x" | "y") => {
    const text = words[part];
    if (text === undefined) return {};
    const value = typeof text === "number"
      ? text
      : attempt(part, () => parseQuantity(text, "length"));
    return { [part]: value };
  };
  return {
    sensor: {
      name: words.name,
      logger: words.logger,
      quantity: words.quantity,
      zone: words.zone,
      ...given,
      ...(words.correlatedWith === undefined ? {} : { correlatedWith: words.correlatedWith }),
      ...place("depth"),
      ...place("x"),
      ...place("y"),
    },
    column: words.column,
    unit,
    ...line,
  };
}

/** Scale and shift of a column; plain numbers may have any word as their unit. */
function columnLine(unit: string, kind: Kind, quantity: Quantity) {
  if (kind === "number") {
    if (unit === "%" && quantity === "carbonDioxide") return { scale: 1e4, shift: 0 };
    return { scale: 1, shift: 0 };
  }
  return unitLineOfKind(kind, unit);
}

/** Kinds whose accuracy in per cent is one of the reading. */
const PER_CENT_OF_READING: ReadonlySet<Kind> = new Set<Kind>([
  "airFlow",
  "speed",
  "windSpeed",
  "heatFlux",
  "power",
  "pressure",
]);

/** "0.2 K", "5 %", or both as "1 Pa + 0.5 %". */
function accuracyOf(words: SensorWords): Accuracy {
  const text = words.accuracy;
  if (text === undefined) return QUANTITY_ACCURACY[words.quantity];
  const parts = String(text).split(/\s\+\s/).map((part) => accuracyPart(part, words.quantity));
  const found = parts.reduce<Accuracy>((sum, part) => ({
    accuracy: sum.accuracy + part.accuracy,
    ...(part.relativeAccuracy === undefined ? {} : { relativeAccuracy: part.relativeAccuracy }),
    ...(sum.relativeAccuracy === undefined ? {} : { relativeAccuracy: sum.relativeAccuracy }),
  }), { accuracy: 0 });
  if (!(found.accuracy >= 0) || !((found.relativeAccuracy ?? 0) >= 0)) {
    throw new SensorFault("accuracy", `expected 0 or more; found ${text}`);
  }
  return found;
}

function accuracyPart(text: string, quantity: Quantity): Accuracy {
  const { kind } = logQuantity(quantity);
  const perCent = /^\s*([\d.]+)\s*%\s*$/.exec(text);
  if (perCent !== null && PER_CENT_OF_READING.has(kind)) {
    return { accuracy: 0, relativeAccuracy: Number(perCent[1]) / 100 };
  }
  if (/^\s*[\d.]+\s*$/.test(text)) return { accuracy: Number(text) };
  if (kind === "number") {
    return {
      accuracy: attempt("accuracy", () => parseQuantity(text.replace(/\s*ppm$/, ""), kind)),
    };
  }
  const asked = kind === "temperature" ? "temperatureDifference" : kind;
  return { accuracy: attempt("accuracy", () => parseQuantity(text, asked)) };
}

function attempt<T>(part: keyof SensorWords, reader: () => T): T {
  try {
    return reader();
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw new SensorFault(part, error.message.replace("found 0 ", "found "));
  }
}
