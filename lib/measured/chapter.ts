/** The measured chapter: what do the sensors of the built store say? @module */
import { chapter, extra, withoutNotices } from "../basics/mod.ts";
import { type ClimateYear, meanPressure } from "../climate/mod.ts";
import type { FanInputs, FanResult } from "../fan/types.ts";
import type { HeadersInputs, SummarisedHeaders } from "../headers/mod.ts";
import { houseGeometry, type HouseInputs } from "../house/mod.ts";
import type { SoilResult } from "../soil/types.ts";
import type { StoreYear } from "../store/types.ts";
import { designAir } from "../tubes/mod.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import type { PriceList } from "../worth/prices/price_list.ts";
import { calibrate, calibrationSteps } from "./calibrated/calibration.ts";
import { fittedFile, fittedTakes } from "./calibrated/fitted_file.ts";
import { gradeCalibration, type GradeRequest } from "./calibrated/grade.ts";
import { lookAhead, tomorrowTakes } from "./calibrated/tomorrow.ts";
import { aheadTables, calibrationTables, gradeTables } from "./calibrated/tables.ts";
import { type CalibratedStudy, calibrationTakes } from "./calibrated/takes.ts";
import type { StoreBody } from "./balance.ts";
import { measuredChapter, measuredSteps } from "./compute.ts";
import { completeMeasured } from "./defaults.ts";
import { measuredFields, type MeasuredInputs } from "./fields.ts";
import { measuredFigures } from "./figures.ts";
import {
  monitoringPlan,
  type MonitoringRequest,
  monitoringTables,
} from "./plan/monitoring_plan.ts";
import { blockedTables, blockedTakes, blockedTubes } from "./plan/blocked_tubes.ts";
import type { PlannedYear } from "./plan_beside_log.ts";
import type { MeasuredRequest } from "./request.ts";
import type { Calibration } from "./calibrated/types.ts";
import type { MeasuredResult } from "./types.ts";
import { measuredTables } from "./result_tables.ts";

interface MeasuredStudy {
  readonly measured: MeasuredInputs;
  readonly climate: ClimateYear;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
}

interface MeasuredEarlier {
  readonly soil: Pick<SoilResult, "properties">;
  readonly tubes: Pick<TubesResult, "positions">;
  readonly fan: Pick<FanResult, "airFlow">;
  readonly store: { readonly year: StoreYear };
}

const together = (one: Float64Array, other: Float64Array) =>
  one.map((value, hour) => value + other[hour]!);

function plannedYear(study: MeasuredStudy, { store: { year }, fan }: MeasuredEarlier): PlannedYear {
  return {
    heatIn: together(year.sensibleIn, year.latentIn),
    heatOut: together(year.sensibleOut, year.latentOut),
    fanPower: year.fanPower,
    running: year.fanShare.map(Math.abs),
    inside: year.house.airTemperature,
    store: year.storeTemperature,
    outside: study.climate.dryBulb,
    airFlow: fan.airFlow,
  };
}

function storeBody(study: MeasuredStudy, { soil, tubes }: MeasuredEarlier): StoreBody {
  const lowest = Math.max(...tubes.positions.map(({ depth }) => depth));
  return {
    volume: houseGeometry(study.house).floorArea * (lowest + study.tubes.spacing / 2),
    heatCapacity: soil.properties.heatCapacity,
  };
}

/** Without logs nothing of the plan is taken, so that no change of it counts here. */
function takes(study: MeasuredStudy, earlier: MeasuredEarlier): MeasuredRequest {
  const { measured, climate } = study;
  const logged = measured.texts !== null;
  return {
    inputs: measured,
    setting: {
      pressure: logged ? meanPressure({ climate }) : 0,
      timeZone: logged ? climate.place.timeZone : 0,
      step: measured.step,
      fanHeats: measured.fanBetweenProbes,
      fanOff: measured.fanOff,
    },
    plan: logged ? plannedYear(study, earlier) : null,
    body: logged ? storeBody(study, earlier) : null,
  };
}

interface MonitoredStudy extends MeasuredStudy {
  readonly headers: HeadersInputs;
  readonly fan: FanInputs;
  readonly worth: { readonly prices: PriceList | null };
}

interface MonitoredEarlier {
  readonly soil: Pick<SoilResult, "wave">;
  readonly tubes: TubesResult;
  readonly headers: SummarisedHeaders;
  readonly fan: FanResult;
  readonly store: { readonly year: StoreYear };
}

/** Only the hourly series that the plan of the sensors hangs on. */
function monitoringTakes(study: MonitoredStudy, earlier: MonitoredEarlier): MonitoringRequest {
  const { fan, headers, soil, store: { year } } = earlier;
  const tubes = withoutNotices(earlier.tubes);
  const air = designAir(study);
  const { airTemperature, relativeHumidity, solar } = year.house;
  return {
    places: {
      tubes: { positions: tubes.positions, length: tubes.length, count: tubes.count },
      shares: headers.shares,
      houseAlong: study.tubes.direction === "along" ? study.house.length : study.house.width,
      timeZone: study.climate.place.timeZone,
      prices: study.worth.prices,
    },
    houseAcross: study.tubes.direction === "along" ? study.house.width : study.house.length,
    headers: { inputs: study.headers, tubes, state: air },
    shared: withoutNotices(headers),
    fan: {
      inputs: { ...study.fan, note: "" },
      surroundings: {
        tubesInputs: { airFlow: study.tubes.airFlow },
        headers: { systemCurve: headers.systemCurve },
        ...air,
      },
    },
    curve: fan.curve,
    certainty: {
      year: {
        intakeTemperature: year.intakeTemperature,
        outletTemperature: year.outletTemperature,
        airRate: year.airRate,
        fanPower: year.fanPower,
        fanShare: year.fanShare,
        condensate: year.condensate,
        house: { airTemperature, relativeHumidity, solar },
      },
      outside: study.climate.dryBulb,
      pressure: meanPressure(study),
      airFlow: { charge: fan.charge.airFlow, discharge: fan.discharge.airFlow },
      ground: { amplitude: soil.wave.amplitude, diffusivity: soil.wave.diffusivity },
    },
    perforated: tubes.product.perforated,
  };
}

/** Only estimates, findings and the texts of the truth. */
function gradeTakes(
  { measured, fan }: Pick<CalibratedStudy, "measured" | "fan">,
  earlier: { readonly measured: MeasuredResult; readonly calibration: Calibration },
): GradeRequest {
  const { texts } = measured;
  return {
    texts: texts === null ? null : { truth: texts.truth, plantedFaults: texts.plantedFaults },
    estimates: earlier.calibration.stages.flatMap(({ stage }) => stage?.estimates ?? []),
    fanSpeed: fan.speed,
    findings: earlier.measured.season?.findings ?? [],
  };
}

/** Logs of the built store, and the plan beside them. */
export const measured = chapter({
  name: "measured",
  section: { fields: measuredFields, complete: completeMeasured },
  after: ["soil", "tubes", "fan", "store"],
  takes,
  compute: measuredChapter,
  steps: measuredSteps,
  figures: measuredFigures,
  tables: measuredTables,
  extras: {
    /** Stages that the logs allow, the joint fit, and weeks that no fit has seen. */
    calibration: extra({
      after: ["soil", "tubes", "headers", "fan"],
      takes: calibrationTakes,
      compute: calibrate,
      steps: calibrationSteps,
      tables: calibrationTables,
    }),
    /** The study file with the fitted values in it. */
    fittedStudy: extra({ after: ["calibration"], takes: fittedTakes, compute: fittedFile }),
    /** The coming days by the calibrated model, the log and the user's forecast. */
    dayAhead: extra({
      after: ["soil", "tubes", "headers", "fan", "calibration"],
      takes: tomorrowTakes,
      compute: lookAhead,
      tables: aheadTables,
    }),
    /** The calibration of made-up logs beside their truth. */
    grade: extra({
      after: ["measured", "calibration"],
      takes: gradeTakes,
      compute: gradeCalibration,
      tables: gradeTables,
    }),
    /** Sensors, what each adds, shut tubes by pressure, commissioning, calendar. */
    monitoringPlan: extra({
      after: ["soil", "tubes", "headers", "fan", "store"],
      takes: monitoringTakes,
      compute: monitoringPlan,
      tables: monitoringTables,
    }),
    /** Shut and flooded tubes in the logs, by pressure and air flow. */
    blockedTubes: extra({
      after: ["monitoringPlan"],
      takes: blockedTakes,
      compute: blockedTubes,
      tables: blockedTables,
    }),
  },
});
