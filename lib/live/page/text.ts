/** Values of a live page as its reader sees them. @module */
import type { Kind } from "../../units/kinds.ts";
import { displayUnit, showSi, showUs } from "../../units/display_units.ts";
import type { UnitSystem } from "../../units/quantity.ts";
import type { Changes, LiveFigures, LiveYear, Slider, WeatherHead } from "../types.ts";

/** Text made safe for markup. */
export function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;").replaceAll("'", "&#39;");
}

/**
 * A quantity with its unit, in one system.
 *
 * @param value in the unit the kind has inside the library
 */
export function shown(value: number, kind: Kind, units: UnitSystem): string {
  return (units === "US" ? showUs(value, kind) : "") || showSi(value, kind);
}

/** A quantity as the reader's unit has it, for a scale. */
export function inUnit(value: number, kind: Kind, units: UnitSystem): number {
  const { si, us } = displayUnit(kind);
  const { factor, offset } = units === "US" ? us ?? si : si;
  return value * factor + offset;
}

/** Name of the reader's unit of a kind. */
export function unitName(kind: Kind, units: UnitSystem): string {
  const { si, us } = displayUnit(kind);
  return (units === "US" ? us ?? si : si).unit;
}

/** A row of the table of figures. */
export interface FigureLine {
  readonly key: keyof LiveFigures;
  readonly label: string;
  readonly kind: Kind;
  /** true for what everybody pays for in kWh */
  readonly electric?: boolean;
}

/** The rows in their order. */
export const FIGURE_LINES: readonly FigureLine[] = [
  { key: "savedHeat", label: "Annual heat saved by the store", kind: "energy" },
  { key: "backupHeat", label: "Annual back-up heat, with the store", kind: "energy" },
  { key: "backupHeatNoFan", label: "Annual back-up heat, fan always off", kind: "energy" },
  { key: "coldestHour", label: "Coldest hour, with the store, no heater", kind: "temperature" },
  {
    key: "coldestHourNoFan",
    label: "Coldest hour, fan always off, no heater",
    kind: "temperature",
  },
  { key: "hoursBelowFreezing", label: "Hours below freezing, with the store", kind: "hours" },
  { key: "hoursBelowFreezingNoFan", label: "Hours below freezing, fan always off", kind: "hours" },
  { key: "heatIn", label: "Heat charged through the tubes in a year", kind: "energy" },
  { key: "heatOut", label: "Heat discharged through the tubes in a year", kind: "energy" },
  { key: "fanEnergy", label: "Annual fan electricity", kind: "energy", electric: true },
  { key: "airFlow", label: "Air flow of the fans", kind: "airFlow" },
];

/** A figure as a cell. */
export function figureText(line: FigureLine, value: number | undefined, units: UnitSystem): string {
  if (value === undefined) return "…";
  return shown(value, line.kind, line.electric === true ? "SI" : units);
}

/** How far a figure lies from that of the study, signed. */
export function changeText(
  line: FigureLine,
  value: number | undefined,
  of: number,
  units: UnitSystem,
): string {
  if (value === undefined) return "…";
  const kind: Kind = line.kind === "temperature" ? "temperatureDifference" : line.kind;
  const text = shown(value - of, kind, line.electric === true ? "SI" : units);
  return value > of && /[1-9]/.test(text) ? `+${text}` : text;
}

/**
 * The values a reader has moved, in words.
 *
 * @param changes moved values
 * @param sliders of the page
 */
export function caseText(
  changes: Changes,
  sliders: readonly Slider[],
  units: UnitSystem,
): string {
  return sliders.filter(({ name }) => changes[name] !== undefined)
    .map(({ name, label, kind, value }) => {
      const [first, ...rest] = label;
      return `${first!.toLowerCase()}${rest.join("")} ${shown(changes[name]!, kind, units)} ` +
        `(study: ${shown(value, kind, units)})`;
    }).join("; ");
}

/** One sentence on a year that is computed. */
export function finishedText(whose: string, { figures }: LiveYear, units: UnitSystem): string {
  const { savedHeat, backupHeat, coldestHour } = figures;
  return `${whose}: the store saves ${shown(savedHeat, "energy", units)} of heat a year, back-up ` +
    `heat with it is ${
      shown(backupHeat, "energy", units)
    }, and without a heater the coldest hour ` +
    `is ${shown(coldestHour, "temperature", units)}.`;
}

/**
 * Whose weather the years are of.
 *
 * @param head of the year of weather
 * @param own the reader's files; null for the weather of the study
 */
export function weatherText(
  { place, layout }: Pick<WeatherHead, "place" | "layout">,
  own: { readonly names: string } | null,
): string {
  return own === null
    ? `On the weather of the study: ${place.name}.`
    : `On your weather, from ${own.names}: ${place.name} (${layout}).`;
}
