/** Years without a store of a house and of others like it, on the ground of the house as it is. @module */
import { each, samePlain, type Steps } from "../basics/mod.ts";
import {
  type BaselineAnswer,
  type BaselineQuestion,
  baselineTask,
  reducedBaselines,
  type ReducedStore,
} from "./runs.ts";
import type { StoreRequest } from "./site.ts";

/** How a house is heated: not at all, or by a heater without limit that holds the set point. */
export type Heating = "free" | "held";

/** The years of one house. */
export type HouseYears = Readonly<Record<Heating, BaselineAnswer>>;

/** The house as it is. */
export interface AsItIs {
  /** its soil and what its years hang on */
  readonly store: ReducedStore;
  /** its settled years */
  readonly years: HouseYears;
}

/** The years of the house as it is, settled from undisturbed ground: those of the store chapter. */
export function* asItIsYears(request: StoreRequest): Steps<AsItIs> {
  const [store] = yield* reducedBaselines([request]);
  const [free, held] = yield* each(baselineTask, [
    { ...store!, heated: false },
    { ...store!, heated: true },
  ]);
  return { store: store!, years: { free: free!, held: held! } };
}

/**
 * Settled years of like houses, from the settled ground of the house as it is heated alike. A house
 * that is the same has the same years, so no change saves exactly nothing.
 *
 * @param asItIs where they settle from
 * @param requests the others
 * @param heating one way for all of them
 */
export function* likeYears(
  asItIs: AsItIs,
  requests: readonly StoreRequest[],
  heating: readonly Heating[],
): Steps<Readonly<Partial<Record<Heating, BaselineAnswer>>>[]> {
  const stores = yield* reducedBaselines(requests);
  const same = stores.map((store) => samePlain(store.request, asItIs.store.request));
  const asked = stores.flatMap((store, k) =>
    same[k] ? [] : heating.map((way): BaselineQuestion => ({
      ...store,
      heated: way === "held",
      from: asItIs.years[way].field,
    }))
  );
  const answers = (yield* each(baselineTask, asked)).values();
  return stores.map((_, k) =>
    Object.fromEntries(
      heating.map((way) => [way, same[k] ? asItIs.years[way] : answers.next().value!]),
    )
  );
}
