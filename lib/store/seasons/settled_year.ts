/** The year that repeats of a house on a soil, without tags: for comparisons. @module */
import { HOUR } from "../../basics/mod.ts";
import { emptyHouseYear, initialHouseState, recordStep, stepHouse } from "../../house/mod.ts";
import type { HouseModel, HouseYear } from "../../house/types.ts";
import type { SoilLedger } from "../ledger/ledger.ts";
import type { StoreRequest } from "../ground/site.ts";
import { freshEngine, type SoilModel } from "../ground/soil_model.ts";
import { periodicYear } from "./spin_up.ts";
import { startState } from "./year.ts";

/** Years with a jump from undisturbed ground, and from a soil that is settled but for a change. */
const JUMPS = { undisturbed: 2, settled: 1 } as const;

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
 * @param given study, soil, house as heated, fan on or off, and soil states to start from
 */
export function settledYear(given: {
  readonly request: StoreRequest;
  readonly model: SoilModel;
  readonly house: HouseModel;
  readonly fan: boolean;
  readonly start?: Float64Array;
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
    jumps: start === undefined ? JUMPS.undisturbed : JUMPS.settled,
    listen: (report) => recordStep(year, house, report.hour, report.house, report.seconds / HOUR),
  });
  return { ledger, year, soilState: engine.save() };
}
