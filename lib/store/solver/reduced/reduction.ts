/** The slice reduced to a few dozen states that see and answer like the full mesh. @module */
import { showPower } from "../../../units/mod.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import type { FreezingZone } from "../../ground/zones.ts";
import { assembleSlice } from "./assembly.ts";
import { factorShifted } from "./banded_cholesky.ts";
import { krylovFields } from "./krylov.ts";
import { fullModes, keptStates } from "./modes.ts";
import { leakOf, slicePorts, tubePatterns, weightOf } from "./ports.ts";
import type { ReducedSlice } from "./slice.ts";
import { keptDirections, weightedInputs, zoneInputs } from "./truncation.ts";
export type { ReducedSlice } from "./slice.ts";

/**
 * Least number of states kept in production: where tubes lie far apart, each needs more
 * (docs/store.md).
 *
 * @param tubes modelled tubes of a slice, or patterns that stand for them
 * @param zones in which its water freezes
 */
export function productionStates(tubes: number, zones = 0): number {
  return Math.min(128, Math.round(30 + 2.2 * tubes + 0.05 * zones));
}

/** 1/s: a slice that cools more slowly, over ten million years, cannot be told from a sealed one. */
const SLOWEST_COOLING = 3e-15;

/** @throws {RangeError} where the slice is sealed, or as good as */
function requireLeak(operator: ConductionOperator, leak: number): void {
  const held = operator.capacity.reduce((sum, value) => sum + value, 0);
  if (leak > SLOWEST_COOLING * held) return;
  throw new RangeError(
    `the slice of soil is sealed: expected a floor, a surface outside or a lower end that lets more than ${
      showPower(SLOWEST_COOLING * held)
    } W/K through for each metre, found ${
      showPower(leak)
    } W/K; let heat pass the floor or the ground outside`,
  );
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
 * @param states how many to keep; unless given, at least {@link productionStates}, and so many that
 * hardly any of what the inputs reach and the ports see is left out
 * @param zones in which its water freezes; none unless given
 * @param least states kept where the number is not given, if the ports ask for fewer
 * @throws {RangeError} where hardly any heat leaves the slice: it has no steady answer
 */
export function reduceSlice(
  operator: ConductionOperator,
  states?: number,
  zones: readonly FreezingZone[] = [],
  least = 0,
): ReducedSlice {
  const tubes = operator.tubes.length;
  const wanted = states ??
    Math.max(least, productionStates(tubePatterns(operator).length, zones.length));
  const ports = slicePorts(operator, zones);
  const weights = ports.map(weightOf);
  requireLeak(operator, leakOf(tubes, weights));
  const atRest = factorShifted(operator, 0);
  const fields = krylovFields(operator, ports, weights, atRest);
  const full = fullModes(operator, fields, ports);
  const kept = keptDirections({
    rates: full.rates,
    gains: full.gains,
    content: full.content,
    inputs: [...weightedInputs(operator), ...zoneInputs(zones, tubes + 3)],
    states: Math.min(wanted, full.rates.length),
    exactly: states !== undefined,
  });
  return assembleSlice({ operator, zones, atRest, ...keptStates(operator, fields, full, kept) });
}
