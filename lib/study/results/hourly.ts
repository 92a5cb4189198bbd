/** The hourly table of a run. @module */
import Papa from "papaparse";
import { undisturbedTemperature } from "../../soil/mod.ts";
import { timeOfHour } from "../../climate/dates.ts";
import type { ChapterResults } from "../chapters.ts";
import type { Study } from "../types.ts";

interface Column {
  readonly head: string;
  readonly digits: number;
  readonly at: (hour: number) => number;
}

/** The results whose hours are written. */
export type HourlyResults = Pick<ChapterResults, "soil" | "house" | "store">;

function columns(study: Study, { soil, house, store }: HourlyResults): readonly Column[] {
  const { climate } = study;
  const { year, noFan } = store;
  const series = (head: string, values: Float64Array, digits: number): Column => ({
    head,
    digits,
    at: (hour) => values[hour]!,
  });
  return [
    series("outdoor temperature (degC)", climate.dryBulb, 2),
    series("global radiation (W/m2)", climate.globalHorizontal, 1),
    series("house temperature in screening year (degC)", house.freeRunning.airTemperature, 2),
    series("house temperature without store (degC)", noFan.airTemperature, 2),
    series("house temperature with store (degC)", year.house.airTemperature, 2),
    series("house humidity without store (1)", noFan.relativeHumidity, 3),
    series("house humidity with store (1)", year.house.relativeHumidity, 3),
    series("solar heat in house (W)", year.house.solar, 0),
    series("heater holding the set point without store (W)", store.heaterNoFan, 0),
    series("vent heat (W)", year.house.vent, 0),
    series("floor heat into soil (W)", year.floor, 0),
    series("store sensible heat into soil (W)", year.sensible, 0),
    series("store latent heat into soil (W)", year.latent, 0),
    series("condensate (kg/h)", year.condensate, 3),
    series("air through tubes (W/K)", year.airRate, 2),
    series("tube intake temperature (degC)", year.intakeTemperature, 3),
    series("tube outlet temperature (degC)", year.outletTemperature, 3),
    series("soil temperature between tubes (degC)", year.storeTemperature, 2),
    {
      head: "undisturbed soil temperature at tube depth (degC)",
      digits: 2,
      at: (hour) => undisturbedTemperature(soil.wave, soil.tubeDepth, (hour + 0.5) / 24),
    },
    series("fan share charge positive (1)", year.fanShare, 3),
    series("fan power (W)", year.fanPower, 3),
  ];
}

/** CSV of the year, one row an hour, the unit in each head; cells that do not apply are empty. */
export function hourlyCsv(study: Study, results: HourlyResults): string {
  const list = columns(study, results);
  const rows = Array.from({ length: study.climate.dryBulb.length }, (_, hour) => [
    timeOfHour(hour),
    ...list.map(({ at, digits }) => {
      const value = at(hour);
      return Number.isFinite(value) ? String(Number(value.toFixed(digits))) : "";
    }),
  ]);
  const fields = ["hour starts (local standard time)", ...list.map(({ head }) => head)];
  return Papa.unparse({ fields, data: rows }, { newline: "\n" }) + "\n";
}
