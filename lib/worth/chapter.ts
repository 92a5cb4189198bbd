/** The worth chapter: what does it cost, and what else could be done? @module */
import { chapter, extra } from "../basics/mod.ts";
import type { FanInputs, FanResult } from "../fan/types.ts";
import { fieldGeometry, type FieldInputs } from "../headers/mod.ts";
import type { HeadersInputs, HeadersResult } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { SoilInputs } from "../soil/types.ts";
import { type RankedMeasure, storeRequest, type SummarisedStore } from "../store/mod.ts";
import type { StoreInputs } from "../store/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import { worthChapter } from "./compute.ts";
import { completeWorth } from "./defaults.ts";
import { designFaults } from "./design_faults.ts";
import { designFigures } from "./designs/figures.ts";
import { designQuestion } from "./designs/question.ts";
import { designSearch, designSteps } from "./designs/search.ts";
import { worthFields, type WorthInputs } from "./fields.ts";
import { worthFigures } from "./figures.ts";
import { ladderSteps, measureLadder } from "./ladder.ts";
import { ladderFigures } from "./ladder_figures.ts";
import type { WorthRequest } from "./request.ts";
import { otherWays, otherWaySteps } from "./other_ways.ts";
import { oddsFigures } from "./odds/figures.ts";
import {
  type OddsEarlier,
  oddsSteps,
  type OddsStudy,
  studyOdds,
  takesOdds,
} from "./odds/odds_extra.ts";
import { oddsTables } from "./odds/result_tables.ts";
import { takeOffInputs } from "./take_off_inputs.ts";
import { designTables, ladderTables, otherWayTables, worthTables } from "./result_tables.ts";

interface WorthStudy {
  readonly worth: WorthInputs;
  readonly house: HouseInputs;
  readonly soil: SoilInputs;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
  readonly fan: FanInputs;
  readonly store: StoreInputs;
}

interface WorthEarlier {
  readonly tubes: TubesResult;
  readonly headers: HeadersResult;
  readonly fan: FanResult;
  readonly store: SummarisedStore;
  readonly ranking: readonly RankedMeasure[];
}

function takes(study: WorthStudy, earlier: WorthEarlier): WorthRequest {
  const { store, ranking } = earlier;
  const field = takeOffInputs(study, earlier);
  return {
    inputs: study.worth,
    field,
    energy: {
      backupHeat: store.backupHeat,
      backupHeatNoFan: store.backupHeatNoFan,
      fanEnergy: store.backupFanEnergy,
    },
    faults: faultsOf(study, earlier, field),
    measures: ranking.filter(({ kind }) => kind === "house").map((
      { name, change, saved, coldestHourGain, cropHoursAvoided, work },
    ) => ({ name, change, saved, coldestHourGain, cropHoursAvoided, work })),
    coldestHourGain: store.coldestHour - store.coldestHourNoFan,
    cropHoursAvoided: store.cropNoFan.killing.hours - store.crop.killing.hours,
    runsFree: study.house.heaterPower === 0,
  };
}

function faultsOf(
  { soil }: WorthStudy,
  { headers, fan }: WorthEarlier,
  field: FieldInputs,
): readonly string[] {
  const { footing } = fieldGeometry(field);
  return designFaults({
    flowMin: headers.flowMin,
    flowRatio: fan.flowRatio,
    stalled: fan.stalled,
    footingRoom: footing.room,
    pitDepth: footing.pitDepth,
    waterTableDepth: soil.waterTableDepth,
  });
}

/** Quantities, costs, earnings and the verdict. */
export const worth = chapter({
  name: "worth",
  section: { fields: worthFields, complete: completeWorth },
  after: ["tubes", "headers", "fan", "store", "ranking"],
  takes,
  compute: worthChapter,
  figures: worthFigures,
  tables: worthTables,
  extras: {
    /** Many winters with the store and without: chances instead of one year. */
    odds: extra({
      after: ["soil", "tubes", "headers", "fan", "store"],
      takes: (study: OddsStudy, earlier: OddsEarlier) => takesOdds(study, earlier),
      compute: studyOdds,
      steps: oddsSteps,
      tables: oddsTables,
      figures: oddsFigures,
    }),
    /** The next best measure given those before it, run again after each, until none pays. */
    ladder: extra({
      after: ["soil", "tubes", "headers", "fan", "store", "ranking"],
      takes: (study: WorthStudy & OddsStudy, earlier: WorthEarlier & OddsEarlier) => ({
        request: storeRequest(study, earlier),
        worth: takes(study, earlier),
        withStore: {
          heat: earlier.store.backupHeat,
          fanEnergy: earlier.store.backupFanEnergy,
          hoursBelowCropLimit: earlier.store.crop.killing.hours,
        },
      }),
      compute: measureLadder,
      steps: ladderSteps,
      tables: ladderTables,
      figures: ladderFigures,
    }),
    /** The house used otherwise, and a heater alone on each fuel. */
    otherWays: extra({
      after: ["soil", "tubes", "headers", "fan", "store", "ranking"],
      takes: (study: WorthStudy & OddsStudy, earlier: WorthEarlier & OddsEarlier) => ({
        request: storeRequest(study, earlier),
        worth: takes(study, earlier),
      }),
      compute: otherWays,
      steps: otherWaySteps,
      tables: otherWayTables,
    }),
    /** Other designs of the store on the settled year, where `worth.search` asks for them. */
    designs: extra({
      after: ["soil", "tubes", "headers", "fan", "store"],
      takes: (
        study: WorthStudy & OddsStudy,
        earlier: Omit<WorthEarlier, "ranking"> & OddsEarlier,
      ) => designQuestion(study, earlier, takes(study, { ...earlier, ranking: [] })),
      compute: (question) => designSearch(question),
      steps: (question) => designSteps(question),
      tables: designTables,
      figures: designFigures,
    }),
  },
});
