/** What the calibration takes of a study and of the chapters before it. @module */
import { meanPressure } from "../../climate/mod.ts";
import type { FanInputs } from "../../fan/types.ts";
import {
  coarseRequest,
  type StoreEarlier,
  storeRequest,
  type StoreStudy,
} from "../../store/takes.ts";
import { logsAlone, type MeasuredInputs } from "../fields.ts";
import type { CalibrationRequest } from "./types.ts";

/** What the calibration reads of a study. */
export interface CalibratedStudy extends StoreStudy {
  readonly measured: MeasuredInputs;
  readonly fan: FanInputs;
}

/** Without logs nothing of the study is taken, so that no change of it counts here. */
export function calibrationTakes(
  study: CalibratedStudy,
  earlier: StoreEarlier,
): CalibrationRequest {
  const { measured } = study;
  if (measured.texts === null) {
    return { texts: null, setting: null, plan: null, whole: null, house: null };
  }
  const { fan, soil: { properties } } = earlier;
  return {
    texts: logsAlone(measured.texts),
    setting: {
      pressure: meanPressure(study),
      timeZone: study.climate.place.timeZone,
      step: measured.step,
      fanHeats: measured.fanBetweenProbes,
      fanOff: measured.fanOff,
      holdOut: measured.holdOut,
      plannedFlow: { charge: fan.charge.airFlow, discharge: fan.discharge.airFlow },
      fanSpeed: study.fan.speed,
      heatCapacity: properties.heatCapacity,
      conductivity: properties.conductivity,
    },
    plan: coarseRequest(study, earlier),
    whole: storeRequest(study, earlier),
    house: study.house,
  };
}
