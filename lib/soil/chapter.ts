/** The soil chapter: how warm is the ground, when, how deep? @module */
import { chapter } from "../basics/mod.ts";
import { type ClimateYear, openWeather } from "../climate/mod.ts";
import { soilChapter } from "./compute.ts";
import { completeSoil } from "./defaults.ts";
import { soilFields } from "./fields.ts";
import { soilFigures } from "./figures.ts";
import { summariseSoil } from "./summary.ts";
import type { SoilInputs } from "./types.ts";
import { soilTables } from "./result_tables.ts";

/** Where the layers of tubes lie, m. */
interface TubeLayers {
  readonly depth: number;
  readonly layers: number;
  readonly layerSpacing: number;
}

/** m, middle of the layers of tubes. */
function middleOfLayers({ tubes }: { readonly tubes: TubeLayers }): number {
  return tubes.depth + (tubes.layers - 1) * tubes.layerSpacing / 2;
}

interface SoilStudy {
  readonly soil: SoilInputs;
  readonly climate: ClimateYear;
  readonly tubes: TubeLayers;
}

/** Properties of the soil, temperature of the undisturbed ground, frost. */
export const soil = chapter({
  name: "soil",
  section: { fields: soilFields, complete: completeSoil },
  after: [],
  takes: (study: SoilStudy) => ({
    inputs: study.soil,
    climate: openWeather(study.climate),
    tubeDepth: middleOfLayers(study),
  }),
  compute: ({ inputs, climate, tubeDepth }) =>
    summariseSoil(inputs, soilChapter(inputs, climate, tubeDepth)),
  figures: soilFigures,
  tables: soilTables,
  extras: {},
});
