/** The house chapter: what does the house lose and gain, before any store? @module */
import { chapter, extra } from "../basics/mod.ts";
import { type ClimateYear, plainWeather } from "../climate/mod.ts";
import { type SoilInputs, type SoilResult, studyLayers } from "../soil/mod.ts";
import { assumedSteps, assumedYears } from "./assumptions.ts";
import { houseChapter } from "./compute.ts";
import { findCrop } from "./crop/crop_table.ts";
import { limitsOutdoors } from "./crop/limits_outdoors.ts";
import { completeHouse } from "./defaults.ts";
import { houseFields } from "./fields.ts";
import { houseFigures, screeningFigures } from "./figures.ts";
import { glazingLight } from "./skin/glazing_light.ts";
import { summariseHouse } from "./summary.ts";
import {
  assumptionTables,
  glazingTables,
  houseTables,
  outdoorLimitTables,
} from "./result_tables.ts";
import type { HouseGround, HouseInputs, HouseResult } from "./types.ts";

interface HouseStudy {
  readonly house: HouseInputs;
  readonly climate: ClimateYear;
  readonly soil: SoilInputs;
}

interface HouseEarlier {
  readonly soil: SoilResult;
  readonly house: HouseResult;
}

interface HouseTaken {
  readonly inputs: HouseInputs;
  readonly climate: ClimateYear;
  readonly soil: HouseGround;
}

/** The footing decides nothing in the heat balance: the tubes chapter looks at it. */
function takes(study: HouseStudy, { soil }: { readonly soil: SoilResult }): HouseTaken {
  return {
    inputs: { ...study.house, footingDepth: 0 },
    climate: plainWeather(study.climate),
    soil: { properties: soil.properties, wave: soil.wave, layers: studyLayers(study.soil) },
  };
}

/** Hourly heat and vapour balance of the house in its screening year. */
export const house = chapter({
  name: "house",
  section: { fields: houseFields, required: true, complete: completeHouse },
  after: ["soil"],
  takes,
  compute: ({ inputs, climate, soil }: HouseTaken) =>
    summariseHouse(inputs, climate, houseChapter(inputs, climate, soil)),
  figures: houseFigures,
  provisionalFigures: screeningFigures,
  tables: houseTables,
  extras: {
    /** Radiation on the glazed planes, and what glazings let through at each angle. */
    glazingLight: extra({
      after: [],
      takes: ({ house, climate }: HouseStudy) => ({
        inputs: house,
        climate: plainWeather(climate),
      }),
      compute: ({ inputs, climate }) => glazingLight(inputs, climate),
      tables: glazingTables,
    }),
    /** The screening year with what is not known well: leaf area, floor cover, snow. */
    assumptions: extra({
      after: ["soil", "house"],
      takes: (study: HouseStudy, earlier: HouseEarlier) => {
        const { coldestHour, crop, heatDemand } = earlier.house;
        return { ...takes(study, earlier), planned: { coldestHour, crop, heatDemand } };
      },
      compute: ({ inputs, climate, soil, planned }) => assumedYears(inputs, climate, soil, planned),
      steps: ({ inputs, climate, soil, planned }) => assumedSteps(inputs, climate, soil, planned),
      tables: assumptionTables,
    }),
    /** Cold outdoors against the limits of the crop and the set point. */
    limitsOutdoors: extra({
      after: [],
      takes: ({ house, climate }: HouseStudy) => ({
        outdoors: climate.dryBulb,
        crop: house.crop,
        heatSetPoint: house.heatSetPoint,
      }),
      compute: ({ outdoors, crop, heatSetPoint }) =>
        limitsOutdoors(outdoors, findCrop(crop), heatSetPoint),
      tables: outdoorLimitTables,
    }),
  },
});
