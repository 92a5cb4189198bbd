/** House and ground on 1 July after years of the mean climate. @module */
import { FIRST_OF_JULY } from "../../basics/mod.ts";
import { houseModel, initialHouseState, withHeater } from "../../house/mod.ts";
import { inOneLane, JUMPS } from "../baseline.ts";
import { JUMPS_FROM_AFAR, settledSetting, settlingOf } from "../seasons/settled_year.ts";
import { freshEngine, type SoilModel, soilModel } from "../seasons/soil_model.ts";
import { periodicYear } from "../seasons/spin_up.ts";
import { runYear, startState, type YearState } from "../seasons/year.ts";
import type { HouseModel } from "../../house/types.ts";
import type { SoilEngine } from "../solver/engine.ts";
import type { FirstOfJuly, StartQuestion } from "./types.ts";
import type { ReducedStore } from "../runs.ts";

/** The soil of a store, or of a house whose fan is always off. */
export function wayModel(
  { request, slice }: ReducedStore,
  house: HouseModel,
  fan: boolean,
): SoilModel {
  const model = soilModel(request, house, slice);
  return fan ? model : inOneLane(model);
}

/**
 * Runs the study's year until it repeats, and on to 1 July. The year stands for the mean climate:
 * one made from normals has their months.
 */
export function firstOfJuly(question: StartQuestion): FirstOfJuly {
  const { request, heated, fan } = question;
  const house = withHeater(
    houseModel(request.houseInputs, request.climate),
    heated ? Infinity : 0,
  );
  const model = wayModel(question, house, fan);
  const engine = freshEngine(model);
  const state = startState(model.site, engine, initialHouseState(house));
  const setting = settledSetting({ request, model, house, fan });
  const { fanRan } = periodicYear({
    setting,
    state,
    engine,
    settling: settlingOf({ request, model, house, fan }),
    jumps: fan ? JUMPS_FROM_AFAR : JUMPS,
  });
  runYear({ ...setting, hours: FIRST_OF_JULY }, state);
  return {
    soil: engine.save(),
    house: { ...state.house },
    control: { ...state.control },
    water: state.water.slice(),
    owed: state.owed,
    vapourOwed: state.vapourOwed,
    fanRan,
  };
}

/** The state of a run that starts there. */
export function stateOf(start: FirstOfJuly, engine: SoilEngine): YearState {
  return {
    engine,
    house: { ...start.house },
    control: { ...start.control },
    water: start.water.slice(),
    owed: start.owed,
    vapourOwed: start.vapourOwed,
  };
}
