/** What the steps of a year share, made once. @module */
import { HOUR } from "../../basics/mod.ts";
import type { HouseModel } from "../../house/types.ts";
import {
  type MarchOutput,
  marchOutput,
  type MarchSlopes,
  marchSlopes,
} from "../air/march_buffers.ts";
import { type CollectorYear, collectorYear } from "../air/collector_year.ts";
import { flowAirs } from "../air/flow_air.ts";
import type { Allowed } from "../control.ts";
import type { SoilLedger } from "../ledger/ledger.ts";
import { allowedByHour } from "../season.ts";
import type { StepListener } from "../step_report.ts";
import type { YearSetting, YearState } from "./year_state.ts";

/** Everything a year's steps share; buffers are reused. */
export interface YearWork {
  readonly setting: YearSetting;
  /** the setting's house, in the shade of a plate collector where there is one inside */
  readonly house: HouseModel;
  readonly collector: CollectorYear | null;
  readonly state: YearState;
  readonly ledger: SoilLedger;
  readonly listen: StepListener | undefined;
  /** by hour: what the season lets the fan do */
  readonly allowed: readonly Allowed[];
  /** the fan's air at degC, kg/kg and Pa, charging or discharging */
  readonly airAt: ReturnType<typeof flowAirs>;
  /** W/K of the air while charging, at the fan's own density */
  readonly chargeRate: number;
  readonly result: MarchOutput;
  readonly slopes: MarchSlopes;
  /** by lane: degC outside, below, driving the floor */
  readonly outdoor: Float64Array;
  readonly deep: Float64Array;
  readonly driving: Float64Array;
  /** W/m of soil by lane and tube */
  readonly laneHeat: Float64Array;
  readonly partsPerHour: number;
  /** s, shortest step of the engine, to which a switch of the fan is placed */
  readonly finest: number;
  /** s to the moment for which a switch of the fan was foreseen; 0 or less where none is ahead */
  untilSwitch: number;
}

/** Prepares a year. */
export function yearWork(
  setting: YearSetting,
  state: YearState,
  ledger: SoilLedger,
  listen: StepListener | undefined,
): YearWork {
  const { site } = setting;
  const { engine } = state;
  const byLane = () => new Float64Array(engine.lanes);
  return {
    setting,
    ...houseAndCollector(setting),
    state,
    ledger,
    listen,
    allowed: allowedByHour(setting.inputs, setting.wave, site.tubeDepth),
    airAt: flowAirs(site, engine),
    chargeRate: site.heatRate * site.modes.charge.flow,
    result: marchOutput(site.field),
    slopes: marchSlopes(),
    outdoor: byLane(),
    deep: byLane(),
    driving: byLane(),
    laneHeat: new Float64Array(engine.lanes * site.field.tubes),
    partsPerHour: Math.round(HOUR / engine.steps[0]!),
    finest: Math.min(...engine.steps),
    untilSwitch: 0,
  };
}

function houseAndCollector(setting: YearSetting): Pick<YearWork, "house" | "collector"> {
  const { inputs: { collector: plate }, climate, house, site } = setting;
  if (plate === undefined) return { house, collector: null };
  const airFlow = site.airFlow * site.modes.charge.flow;
  const given = { plate, climate, houseInputs: house.inputs, airFlow };
  return collectorYear(given, house);
}
