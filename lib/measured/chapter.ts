/** The measured chapter: what do the sensors of the built store say? @module */
import { chapter } from "../basics/mod.ts";
import { type ClimateYear, meanPressure } from "../climate/mod.ts";
import type { FanResult } from "../fan/types.ts";
import { houseGeometry, type HouseInputs } from "../house/mod.ts";
import type { SoilResult } from "../soil/types.ts";
import type { StoreYear } from "../store/types.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import type { StoreBody } from "./balance.ts";
import { measuredChapter, measuredSteps } from "./compute.ts";
import { completeMeasured } from "./defaults.ts";
import { measuredFields, type MeasuredInputs } from "./fields.ts";
import { measuredFigures } from "./figures.ts";
import type { PlannedYear } from "./plan_beside_log.ts";
import type { MeasuredRequest } from "./request.ts";
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
  extras: {},
});
