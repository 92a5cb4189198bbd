/** The first year of a store dug under a house that has stood for years. @module */
import { alone, kilowattHours, piece, type Steps, together } from "../basics/mod.ts";
import { baselineRequest } from "./baseline.ts";
import { type FirstYear, firstYear } from "./first_years.ts";
import { baselineTask, firstYearsTask, reducedStores } from "./runs.ts";
import type { StoreRequest } from "./site.ts";

/**
 * The first year from the ground that the same house, its fan never on, has settled to: warmer than open
 * ground, colder at its edges than in its middle.
 *
 * @param request the store's request
 * @param heatOut kWh that the store gives back in the year that repeats
 */
export function existingHouse(request: StoreRequest, heatOut: number): FirstYear {
  return alone(existingHouseSteps(request, heatOut));
}

/** The same in pieces. Parameters and result are those of {@link existingHouse}. */
export function* existingHouseSteps(request: StoreRequest, heatOut: number): Steps<FirstYear> {
  const [store, bare] = yield* reducedStores([request, baselineRequest(request)]);
  const [{ field }] = yield* together(piece(baselineTask, { ...bare!, heated: false }));
  const [[ledger]] = yield* together(piece(firstYearsTask, { ...store!, from: field, years: 1 }));
  const early = {
    year: 1,
    heatIn: kilowattHours(ledger!.heatIn),
    heatOut: kilowattHours(ledger!.heatOut),
  };
  return firstYear(early, heatOut, true);
}
