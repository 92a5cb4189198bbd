/** Axes of plots in the reader's units. @module */
import type * as Plot from "@observablehq/plot";
import { displayUnit, type Kind, KINDS } from "../../units/mod.ts";
import { readersScale, readersUnits } from "./reader.ts";

/** Which kind an axis means where several share a unit. */
const CHOSEN: Readonly<Record<string, Kind>> = {
  m: "depth",
  "m/s": "speed",
  W: "power",
  "m³/s": "airFlow",
  "W/m²": "heatFlux",
  "kWh/m²": "radiation",
};

/** Unit at the end of an axis label, with what may stand behind it. */
const LABEL = /^(.*, )([^,]+?)((?: (?:a|per) (?:day|month|year|winter))?(?: \([^)]*\))?)$/;

/**
 * The kind of quantity whose SI unit ends a label, such as "house air, degC".
 *
 * @param label words at an axis
 */
export function kindOfAxis(
  label: string,
): { readonly words: string; readonly kind: Kind; readonly rest: string } | null {
  const found = LABEL.exec(label);
  if (found === null) return null;
  const unit = found[2]!;
  const bought = unit === "kWh" && /electricity/.test(found[1]!); // sold by the kilowatt-hour everywhere
  const kind = bought ? "electricity" : CHOSEN[unit] ??
    (Object.keys(KINDS) as Kind[]).find((one) =>
      displayUnit(one).si.unit === unit && unit !== "–" && unit !== "%"
    );
  return kind === undefined ? null : { words: found[1]!, kind, rest: found[3]! };
}

/** A plot whose axes are in the reader's units; as it is where those are SI. */
export function readersAxes(plot: Plot.PlotOptions): Plot.PlotOptions {
  if (readersUnits() === "SI") return plot;
  return {
    ...plot,
    ...(plot.x === undefined || plot.x === null ? {} : { x: readersAxis(plot.x) }),
    ...(plot.y === undefined || plot.y === null ? {} : { y: readersAxis(plot.y) }),
  };
}

function readersAxis(axis: Plot.ScaleOptions): Plot.ScaleOptions {
  const found = typeof axis.label === "string" ? kindOfAxis(axis.label) : null;
  if (found === null) return axis;
  const { si } = displayUnit(found.kind);
  const to = readersScale(found.kind);
  if (to.unit === si.unit) return axis;
  // the values drawn are those of the SI axis
  const factor = to.factor / si.factor;
  const offset = to.offset - si.offset * factor;
  const convert = (value: number) => value * factor + offset;
  const domain = axis.domain as Iterable<unknown> | undefined;
  const ends = domain === undefined ? undefined : [...domain];
  const numeric = ends?.every((end) => typeof end === "number") === true;
  const { ticks: _, ...rest } = axis; // round in SI, not here
  return {
    ...rest,
    label: `${found.words}${to.unit}${found.rest}`,
    transform: (value: unknown) => typeof value === "number" ? convert(value) : value,
    ...(numeric ? { domain: (ends as number[]).map(convert) } : {}),
  };
}
