/** Which values of a study its live page lets the reader move, and how far. @module */
import { roundTo } from "../../basics/mod.ts";
import { fieldKind, fieldRow } from "../../study/file/fields.ts";
import type { Study } from "../../study/types.ts";
import { type Kind, parseQuantity } from "../../units/mod.ts";
import type { ChangeName, Slider } from "../types.ts";

interface Movable {
  readonly name: ChangeName;
  readonly label: string;
  /** key of the study file */
  readonly key: string;
  /** what the page shows it as; what the table of fields says unless given */
  readonly kind?: Kind;
  /** step of the slider, in the unit the kind has inside the library */
  readonly step: number;
  /** null where this study has no such thing */
  readonly value: (study: Study) => number | null;
  /** true where the slider reaches from half of the study's value to twice as much */
  readonly around?: boolean;
  /** the most that makes sense, where that hangs on the study */
  readonly most?: (study: Study, porosity: number) => number;
}

const MOVABLE: readonly Movable[] = [
  {
    name: "length",
    label: "Length of the tubes",
    key: "tubes.length",
    step: 0.5,
    value: ({ tubes }) => tubes.length,
    around: true,
  },
  {
    name: "count",
    label: "Number of tubes",
    key: "tubes.count",
    kind: "count",
    step: 1,
    value: ({ tubes }) => tubes.count,
    around: true,
  },
  {
    name: "speed",
    label: "Fan speed, of the rated speed",
    key: "fan.speed",
    kind: "share",
    step: 0.05,
    value: ({ fan }) => fan.speed,
  },
  {
    name: "moisture",
    label: "Water in the soil, by volume",
    key: "soil.moisture",
    step: 0.01,
    value: ({ soil }) => soil.measuredConductivity === null ? soil.moisture : null,
    most: (_study, porosity) => porosity - 0.01,
  },
  {
    name: "conductivity",
    label: "Measured conductivity of the soil",
    key: "soil.measuredConductivity",
    step: 0.05,
    value: ({ soil }) => soil.measuredConductivity,
  },
  {
    name: "leakage",
    label: "Air leakage of the house in calm air",
    key: "house.leakage",
    step: 0.05,
    value: ({ house }) => house.leakage,
  },
  {
    name: "curtain",
    label: "Resistance of the night curtain",
    key: "house.curtain.resistance",
    step: 0.05,
    value: ({ house }) => house.curtain?.resistance ?? null,
  },
  {
    name: "setPoint",
    label: "Heating set point",
    key: "house.heatSetPoint",
    step: 0.5,
    value: ({ house }) => house.heatSetPoint,
    most: ({ house }) => house.ventSetPoint - 4,
  },
];

function sliderOf(one: Movable, study: Study, porosity: number): Slider[] {
  const value = one.value(study);
  if (value === null) return [];
  const row = fieldRow(one.key);
  const usual = (text: string) => parseQuantity(text, fieldKind(one.key));
  const { step } = one;
  const around = one.around === true;
  const low = Math.max(usual(row.usualLeast), around ? value / 2 : -Infinity);
  const high = Math.min(
    usual(row.usualMost),
    around ? value * 2 : Infinity,
    one.most?.(study, porosity) ?? Infinity,
  );
  return [{
    name: one.name,
    label: one.label,
    kind: one.kind ?? fieldKind(one.key),
    value,
    least: roundTo(Math.min(Math.ceil(low / step - 1e-9), Math.floor(value / step)) * step, step),
    most: roundTo(Math.max(Math.floor(high / step + 1e-9), Math.ceil(value / step)) * step, step),
    step,
  }];
}

/**
 * The sliders of a study, over the usual range of each key.
 *
 * @param study opened
 * @param porosity of its soil, 0 to 1: it holds no more water
 */
export function slidersOf(study: Study, porosity: number): Slider[] {
  return MOVABLE.flatMap((one) => sliderOf(one, study, porosity));
}
