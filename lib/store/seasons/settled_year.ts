/** The year that repeats of a house on a soil, without tags: for comparisons. @module */
import { HOUR } from "../../basics/mod.ts";
import { emptyHouseYear, initialHouseState, recordStep, stepHouse } from "../../house/mod.ts";
import type { HouseModel, HouseYear } from "../../house/types.ts";
import type { SoilLedger } from "../ledger/ledger.ts";
import type { StoreRequest } from "../site.ts";
import { freshEngine, type SoilModel } from "./soil_model.ts";
import { periodicYear } from "./spin_up.ts";
import { startState } from "./year.ts";

/** Years with a jump after each, before the year that counts: from ground that is far from it, */
export const JUMPS_FROM_AFAR = 2;
/** and from the settled soil of the same house and fan that is only heated otherwise. */
const JUMPS_FROM_SETTLED = 1;

/** A settled year. */
export interface SettledYear {
  readonly ledger: SoilLedger;
  readonly year: HouseYear;
  /** states of the reduced soil at its end */
  readonly soilState: Float64Array;
}

/**
 * Runs to the year that repeats.
 *
 * @param given study, soil, house as heated, fan on or off, soil states to start from (undisturbed
 * ground unless given) and years with a jump (one from a start, two without)
 */
export function settledYear(given: {
  readonly request: StoreRequest;
  readonly model: SoilModel;
  readonly house: HouseModel;
  readonly fan: boolean;
  readonly start?: Float64Array;
  readonly jumps?: number;
}): SettledYear {
  const { request, model, house, fan, start } = given;
  const engine = freshEngine(model);
  if (start !== undefined) engine.load(start);
  const year = emptyHouseYear();
  const { ledger } = periodicYear({
    setting: {
      site: model.site,
      inputs: request.inputs,
      climate: request.climate,
      wave: request.soil.wave,
      house,
      stepHouse,
      fan,
    },
    state: startState(model.site, engine, initialHouseState(house)),
    engine,
    plainYears: 0,
    jumps: given.jumps ?? (start === undefined ? JUMPS_FROM_AFAR : JUMPS_FROM_SETTLED),
    listen: (report) => recordStep(year, house, report.hour, report.house, report.seconds / HOUR),
  });
  return { ledger, year, soilState: engine.save() };
}
