/**
 * What the next metre of tube brings.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { kilowattHours, requireInRange } from "../basics/mod.ts";
import { filmCoefficient } from "./film.ts";
import { periodicResponse, type TubeSoil } from "./periodic.ts";
import { crossSection, tubeLoss } from "./pressure.ts";
import type { TubeProduct } from "./types.ts";

/** A tube whose length is in question; air flow and swing stay. */
export interface LengthQuestion {
  /** the tube */
  readonly product: TubeProduct;
  /** the soil round it */
  readonly soil: TubeSoil;
  /** m³/s in the tube */
  readonly airFlow: number;
  /** properties of the air */
  readonly air: AirProperties;
  /** velocity heads besides inlet and exit */
  readonly extraLosses: number;
  /** amplitude of the inlet air about the soil's mean, K */
  readonly swing: number;
  /** s: a day for the daily store, some days for a spell */
  readonly period: number;
}

/** One length of a tube. */
export interface LengthRow {
  /** m */
  readonly length: number;
  /** kWh in a half wave */
  readonly heat: number;
  /** kWh per metre that the next metre brings */
  readonly marginalHeat: number;
  /** Pa */
  readonly pressureDrop: number;
}

/**
 * Heat of one tube in a half wave.
 *
 * @param question tube, soil, air and swing
 * @param length m
 * @returns kWh
 */
export function tubeHeat(question: LengthQuestion, length: number): number {
  const { product, air, airFlow } = question;
  const diameter = product.insideDiameter;
  const film = filmCoefficient(airFlow / crossSection(diameter), diameter, air);
  const { heatPerHalfWave } = periodicResponse({
    soil: question.soil,
    diameter,
    length,
    filmCoefficient: film,
    capacityRate: airFlow * air.density * air.heatCapacity,
    period: question.period,
  });
  return kilowattHours(heatPerHalfWave * question.swing);
}

/**
 * Heat, marginal heat and pressure by length.
 *
 * @param question tube, soil, air and swing
 * @param lengths m, rising
 * @returns one row a length
 */
export function marginalHeat(
  question: LengthQuestion,
  lengths: readonly number[],
): readonly LengthRow[] {
  return lengths.map((length) => {
    requireInRange("tube length", length, 0.01, 1000, "m");
    const step = 0.01;
    const after = tubeHeat(question, length + step / 2);
    const before = tubeHeat(question, length - step / 2);
    return {
      length,
      heat: tubeHeat(question, length),
      marginalHeat: (after - before) / step,
      pressureDrop: tubeLoss({ ...question, length }).pressureDrop,
    };
  });
}

/**
 * Length at the knee of the curve of heat by length: the point farthest above the straight line from
 * its first to its last point, both axes scaled to 1.
 *
 * Source: Satopää et al. 2011 [satopaa-2011]. The knee depends on the longest length looked at:
 * give the longest that the floor allows.
 *
 * @param rows rows of rising length, 3 or more
 * @returns m
 */
export function kneeLength(
  rows: readonly { readonly length: number; readonly heat: number }[],
): number {
  requireInRange("rows of the curve", rows.length, 3, Infinity, "rows");
  const first = rows[0]!;
  const last = rows.at(-1)!;
  const above = (row: { readonly length: number; readonly heat: number }): number =>
    (row.heat - first.heat) / (last.heat - first.heat) -
    (row.length - first.length) / (last.length - first.length);
  return rows.reduce((best, row) => above(row) > above(best) ? row : best, first).length;
}
