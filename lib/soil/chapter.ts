/** The soil chapter: how warm is the ground, when, how deep? @module */
import { chapter } from "../basics/mod.ts";
import { soilChapter } from "./compute.ts";
import { completeSoil } from "./defaults.ts";
import { soilFields } from "./fields.ts";
import { soilFigures } from "./figures.ts";
import { summariseSoil } from "./summary.ts";
import { soilTaken } from "./takes.ts";
import { soilTables } from "./result_tables.ts";

/** Properties of the soil, temperature of the undisturbed ground, frost. */
export const soil = chapter({
  name: "soil",
  section: { fields: soilFields, complete: completeSoil },
  after: [],
  takes: soilTaken,
  compute: ({ inputs, climate, tubeDepth }) =>
    summariseSoil(inputs, soilChapter(inputs, climate, tubeDepth)),
  figures: soilFigures,
  tables: soilTables,
  extras: {},
});
