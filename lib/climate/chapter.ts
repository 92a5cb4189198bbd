/** The climate chapter: what weather must it live through? @module */
import { chapter, extra } from "../basics/mod.ts";
import { daylight } from "./daylight.ts";
import { climateFields } from "./fields.ts";
import { climateFigures } from "./figures.ts";
import { climateQuality } from "./mend/quality.ts";
import { summariseClimate } from "./summary.ts";
import type { ClimateYear } from "./types.ts";
import { openWeather, plainWeather } from "./weather.ts";
import { climateTables, daylightTables, qualityTables } from "./result_tables.ts";

interface ClimateStudy {
  readonly climate: ClimateYear;
}

const takes = ({ climate }: ClimateStudy) => openWeather(climate);

/** Months, design temperatures, degree-days, cold sunless spells. */
export const climate = chapter({
  name: "climate",
  section: { fields: climateFields, required: true },
  after: [],
  takes,
  compute: summariseClimate,
  figures: climateFigures,
  tables: climateTables,
  extras: {
    /** How the radiation of each month fits the sun. */
    climateQuality: extra({ after: [], takes, compute: climateQuality, tables: qualityTables }),
    /** Sun paths, skyline and short days of the place. */
    daylight: extra({
      after: [],
      takes: (study: ClimateStudy) => plainWeather(study.climate).place,
      compute: daylight,
      tables: daylightTables,
    }),
  },
});
