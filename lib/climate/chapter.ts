/** The climate chapter: what weather must it live through? @module */
import { chapter } from "../basics/mod.ts";
import { climateFields } from "./fields.ts";
import { climateFigures } from "./figures.ts";
import { summariseClimate } from "./summary.ts";
import type { ClimateYear } from "./types.ts";
import { openWeather } from "./weather.ts";

/** Months, design temperatures, degree-days, cold sunless spells. */
export const climate = chapter({
  name: "climate",
  section: { fields: climateFields, required: true },
  after: [],
  takes: (study: { readonly climate: ClimateYear }) => openWeather(study.climate),
  compute: summariseClimate,
  figures: climateFigures,
  extras: {},
});
