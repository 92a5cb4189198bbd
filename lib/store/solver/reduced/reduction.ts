/** The slice reduced to a few dozen states that see and answer like the full mesh. @module */
import { assembleSlice } from "./assembly.ts";
import { krylovBasis } from "./krylov.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { cellShapes, fullModes, keptModes } from "./modes.ts";
import type { FreezingZone } from "../../ground/zones.ts";
import { portVectors, zoneVectors } from "./ports.ts";
import type { ReducedSlice } from "./slice.ts";
import { keptDirections, weightedInputs, zoneInputs } from "./truncation.ts";
export type { ReducedSlice } from "./slice.ts";

/**
 * States kept in production: so many that more change the year's heat by less than a thousandth
 * (docs/store.md).
 *
 * @param tubes modelled tubes of a slice
 * @param zones in which its water freezes
 */
export function productionStates(tubes: number, zones = 0): number {
  return Math.min(128, Math.round(30 + 2.2 * tubes + 0.3 * zones));
}

/**
 * Reduces a slice: rational Krylov space at nine shifts, then balanced truncation. The system is
 * symmetric with inputs = outputs, so both Gramians are one and the projection keeps stability;
 * the constant field is kept exactly, so the heat ledger closes. What is left out is added as its
 * steady value, so steady answers are exact.
 *
 * Source: Antoulas 2005 [antoulas-2005], ch. 7 and 11 (chapters from memory); the weighting of the
 * inputs is our own.
 *
 * @param operator slice
 * @param states how many to keep; as in production unless given
 * @param zones in which its water freezes; none unless given
 */
export function reduceSlice(
  operator: ConductionOperator,
  states?: number,
  zones: readonly FreezingZone[] = [],
): ReducedSlice {
  const wanted = states ?? productionStates(operator.tubes.length, zones.length);
  const root = operator.capacity.map(Math.sqrt);
  const driven = portVectors(operator);
  const frozen = zoneVectors(operator, zones);
  const ports = [...driven, ...frozen];
  const { basis, steady } = krylovBasis(operator, driven, root, frozen);
  const full = fullModes(operator, { basis, root, ports });
  const kept = keptDirections({
    rates: full.rates,
    gains: full.gains,
    content: full.content,
    inputs: [...weightedInputs(operator), ...zoneInputs(zones, driven.length)],
    states: Math.min(wanted, basis.length),
  });
  const modal = keptModes(full, kept);
  const shapes = cellShapes({ full, kept, modal, basis, root });
  const rates = Float64Array.from(modal.values);
  return assembleSlice({ operator, zones, ports, steady, shapes, rates });
}
