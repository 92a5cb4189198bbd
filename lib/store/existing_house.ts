/** The first year of a store dug under a house that has stood for years. @module */
import { alone, kilowattHours, piece, type Steps, together } from "../basics/mod.ts";
import { baselineRequest } from "./baseline.ts";
import { baselineTask, firstYearsTask, reducedStores } from "./runs.ts";
import type { StoreRequest } from "./site.ts";
import type { EarlyYear } from "./types.ts";

/**
 * Heat of the first year from the ground that the same house, its fan never on, has settled to: warmer
 * than open ground, colder at its edges than in its middle.
 *
 * @param request the store's request
 */
export function existingHouse(request: StoreRequest): EarlyYear {
  return alone(existingHouseSteps(request));
}

/** The same in pieces. Parameter and result are those of {@link existingHouse}. */
export function* existingHouseSteps(request: StoreRequest): Steps<EarlyYear> {
  const [store, bare] = yield* reducedStores([request, baselineRequest(request)]);
  const [{ field }] = yield* together(piece(baselineTask, { ...bare!, heated: false }));
  const [[ledger]] = yield* together(piece(firstYearsTask, { ...store!, from: field, years: 1 }));
  return {
    year: 1,
    heatIn: kilowattHours(ledger!.heatIn),
    heatOut: kilowattHours(ledger!.heatOut),
  };
}
