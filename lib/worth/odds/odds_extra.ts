/** The odds of a study: many winters run and counted. @module */
import { alone, type Steps } from "../../basics/mod.ts";
import { normalsOfYear, plainWeather } from "../../climate/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import {
  coarseRequest,
  type StoreEarlier,
  type StoreRequest,
  type StoreStudy,
  type SummarisedStore,
  type WinterSet,
  winterSteps,
} from "../../store/mod.ts";
import type { WorthInputs } from "../fields.ts";
import type { WinterOdds } from "./types.ts";
import { type OddsFacts, winterOdds } from "./winter_odds.ts";

/** All odds are drawn under this seed, so that they do not hang on the year the study is judged by. */
const ODDS_SEED = 1;

/** What the odds are computed from. */
export interface OddsQuestion {
  /** the store in few slices; its weather stands for the mean climate */
  readonly request: StoreRequest;
  /** winters to make, or measured years */
  readonly set: WinterSet;
  /** number of winters; 0 for none */
  readonly count: number;
  /** how they were made */
  readonly facts: OddsFacts;
}

/** What the odds read of a study. */
export interface OddsStudy extends StoreStudy {
  readonly worth: WorthInputs;
  /** measured years that follow one another; none where winters are made */
  readonly measuredYears: readonly ClimateYear[];
}

/** Results that the odds are computed from. */
export interface OddsEarlier extends StoreEarlier {
  readonly store: SummarisedStore;
}

/** Picks what the odds are computed from. */
export function takesOdds(study: OddsStudy, earlier: OddsEarlier): OddsQuestion {
  const request = coarseRequest(study, earlier);
  const measured = study.measuredYears.length > 0;
  const normals = study.climate.normals ?? normalsOfYear(study.climate);
  const made = normals.monthToMonthSpread === undefined ? "usual rule" : "published deviations";
  const { winters } = study.worth;
  return {
    request,
    set: measured
      ? { years: study.measuredYears.map(plainWeather) }
      : { normals, place: request.climate.place, seed: ODDS_SEED },
    count: measured && winters > 0 ? study.measuredYears.length - 1 : winters,
    facts: {
      spread: measured ? "measured winters" : made,
      normalsOfOneYear: !measured && study.climate.normals === undefined,
      cropValue: study.worth.cropValue,
      currency: study.worth.prices?.currency ?? null,
      year: {
        withStore: earlier.store.coldestHour,
        without: earlier.store.coldestHourNoFan,
      },
    },
  };
}

/** The odds in pieces; null where no winters are wanted. */
export function* oddsSteps({ request, set, count, facts }: OddsQuestion): Steps<WinterOdds | null> {
  if (count === 0) return null;
  return winterOdds(yield* winterSteps(request, set, count), facts);
}

/** The odds of a study; null where no winters are wanted. */
export function studyOdds(question: OddsQuestion): WinterOdds | null {
  return alone(oddsSteps(question));
}
