/** The settled years of a case, each worked out once. @module */
import { samePlain } from "../../basics/mod.ts";
import { baselineRequest } from "../../store/baseline.ts";
import type { StoreRequest } from "../../store/request.ts";
import {
  baselineTask,
  orBaseline,
  type ReducedStore,
  reduceTask,
  settledTask,
} from "../../store/runs.ts";
import type { SettledYear } from "../../store/seasons/settled_year.ts";
import type { SoilField } from "../../store/seasons/soil_field.ts";
import { ownSite, type SliceQuestion, sliceQuestion } from "../../store/seasons/soil_model.ts";
import { patternsOneByOne } from "../../store/solver/reduced/ports.ts";
import { productionStates } from "../../store/solver/reduced/reduction.ts";
import { remembered } from "./remembered.ts";

/** A settled year with the soil at its end. */
export type Settled = Pick<SettledYear, "ledger" | "year" | "fanRan"> & {
  readonly field: SoilField;
};

/** Which settled year. */
interface Asked {
  readonly request: StoreRequest;
  /** true: a heater without limit holds the set point; false: the house runs free */
  readonly heated: boolean;
  /** settled soil of the study to start from; null for undisturbed ground */
  readonly from: SoilField | null;
}

const start = (from: SoilField | null) => from === null ? {} : { from };

/**
 * What is reduced of a store's soil. A quick year has its tubes taken together, but as many states as
 * the tubes one by one ask for: the years with the fan always off, whose frost needs them, then run
 * on the same slice, and it is reduced once.
 *
 * @param request of the store
 */
export const soilOf = remembered((request: StoreRequest): SliceQuestion => {
  const question = sliceQuestion(ownSite(request));
  if (request.rough !== true) return question;
  const { operator, zones } = question;
  return { ...question, least: productionStates(patternsOneByOne(operator), zones.length) };
});

/** A store with its soil reduced. */
export function reducedStore(request: StoreRequest): ReducedStore {
  return { request, slice: reduceTask.run(soilOf(request)) };
}

const withFan = remembered(({ request, heated, from }: Asked): Settled => {
  const asked = { ...reducedStore(request), heated, keepField: true, ...start(from) };
  const { ledger, year, fanRan, field } = settledTask.run(asked);
  return { ledger, year, fanRan, field: field! };
});

const withoutFan = remembered(({ request, heated, from }: Asked): Settled => {
  const { ledger, year, fanRan, field } = baselineTask.run({
    ...reducedStore(request),
    heated,
    ...start(from),
  });
  return { ledger, year, fanRan, field };
});

/** The settled years of one store. */
export interface SettledYears {
  /** the request as the years with the fan always off see it */
  readonly bare: StoreRequest;
  /** with the store; as the year with the fan always off where the fan never ran */
  readonly store: (heated: boolean) => Settled;
  /** as the tubes gave and took, whether the fan ran or not */
  readonly asRun: (heated: boolean) => Settled;
  /** with the fan always off; hangs on house, soil and place of the tubes alone */
  readonly noFan: (heated: boolean) => Settled;
}

/**
 * The settled years of a store, each run when it is asked for.
 *
 * @param request of the store
 * @param from the study's own years on as many slices, to settle from their soils, as comparisons of
 * stores do; null to settle from undisturbed ground, as a study's own years do
 */
export function settledYears(request: StoreRequest, from: SettledYears | null): SettledYears {
  // on the ports of the store, through which no heat comes here
  const bare = { ...baselineRequest(request), rough: request.rough };
  const asRun = (heated: boolean) =>
    withFan({ request, heated, from: from?.asRun(heated).field ?? null });
  // where nothing of house, soil and place of the tubes has moved, these years are the study's own
  const alike = from !== null && samePlain(from.bare, bare);
  const noFan = (heated: boolean) =>
    alike
      ? from.noFan(heated)
      : withoutFan({ request: bare, heated, from: from?.noFan(heated).field ?? null });
  return { bare, asRun, noFan, store: (heated) => orBaseline(asRun(heated), noFan(heated)) };
}
