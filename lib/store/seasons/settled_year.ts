/** The year that repeats of a house on a soil, without tags: for comparisons. @module */
import { HOUR } from "../../basics/mod.ts";
import { emptyHouseYear, initialHouseState, recordStep, stepHouse } from "../../house/mod.ts";
import type { HouseModel, HouseYear } from "../../house/types.ts";
import type { SoilLedger } from "../ledger/ledger.ts";
import type { StoreRequest } from "../site.ts";
import { freshEngine, settlingEngine, type SoilModel } from "./soil_model.ts";
import type { CutState } from "../cut_states.ts";
import { cutRecorder } from "./cut_state.ts";
import { periodicYear, type Settling } from "./spin_up.ts";
import { startState, type YearSetting } from "./year.ts";

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
  /** degC of all cells at its end, lane by lane; none unless asked for */
  readonly cells: readonly Float64Array[];
  /** whether the fan ran in any of the years */
  readonly fanRan: boolean;
  /** house and ground at the hours of a power cut */
  readonly cutStates: readonly CutState[];
}

/** What a year of a study's house on a soil is run with. */
export interface SettledCase {
  /** study and results of the earlier chapters */
  readonly request: StoreRequest;
  /** the soil */
  readonly model: SoilModel;
  /** house as it is heated */
  readonly house: HouseModel;
  /** whether the fan may run */
  readonly fan: boolean;
}

/** The setting of such a year. */
export function settledSetting({ request, model, house, fan }: SettledCase): YearSetting {
  const { inputs, climate, soil } = request;
  return { site: model.site, inputs, climate, wave: soil.wave, house, stepHouse, fan };
}

/** Where the years run that only settle the ground of a case, from soil states or undisturbed ground. */
export function settlingOf(
  { model, house }: SettledCase,
  start?: Float64Array,
): Settling | undefined {
  const engine = settlingEngine(model);
  if (engine === null) return undefined;
  if (start !== undefined) engine.load(start);
  return { engine, state: startState(model.site, engine, initialHouseState(house)) };
}

/**
 * Runs to the year that repeats.
 *
 * @param given study, soil, house as heated, fan on or off, soil states to start from (undisturbed
 * ground unless given), years with a jump (one from a start, two without), and whether the cells are
 * wanted
 */
export function settledYear(
  given: SettledCase & {
    readonly start?: Float64Array;
    readonly jumps?: number;
    readonly keepCells?: boolean;
  },
): SettledYear {
  const { model, house, start } = given;
  const engine = freshEngine(model);
  if (start !== undefined) engine.load(start);
  const year = emptyHouseYear();
  const state = startState(model.site, engine, initialHouseState(house));
  const cut = cutRecorder(given.request.climate.dryBulb, state);
  const { ledger, fanRan } = periodicYear({
    setting: settledSetting(given),
    state,
    engine,
    settling: settlingOf(given, start),
    jumps: given.jumps ?? (start === undefined ? JUMPS_FROM_AFAR : JUMPS_FROM_SETTLED),
    listen: (report) => {
      recordStep(year, house, report.hour, report.house, report.seconds / HOUR);
      cut.listen(report);
    },
  });
  return {
    ledger,
    year,
    soilState: engine.save(),
    cells: given.keepCells === true
      ? Array.from({ length: engine.lanes }, (_, lane) => engine.cells(lane))
      : [],
    fanRan,
    cutStates: cut.kept(),
  };
}
