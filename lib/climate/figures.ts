/** Figures of the climate chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import { dateAfterMidsummer } from "./dates.ts";
import type { ClimateResult } from "./types.ts";

/** Every figure of the chapter. */
export function climateFigures(climate: ClimateResult): readonly FigureRow[] {
  const week = climate.coldSpells.find((spell) => spell.length === 7);
  return [
    numberFigure(
      "climate.meanTemperature",
      climate.meanTemperature,
      "degC",
      "mean outdoor temperature",
    ),
    numberFigure("climate.coldestHour", climate.coldestHour, "degC", "coldest hour outdoors"),
    numberFigure(
      "climate.design99_6",
      climate.design99_6,
      "degC",
      "temperature exceeded in 99.6 % of the year",
    ),
    numberFigure(
      "climate.design99",
      climate.design99,
      "degC",
      "temperature exceeded in 99 % of the year",
    ),
    numberFigure(
      "climate.heatingDegreeDays18",
      climate.heatingDegreeDays18,
      "K d",
      "heating degree-days below 18 degC (64 degF)",
    ),
    numberFigure(
      "climate.heatingDegreeDays18_3",
      climate.heatingDegreeDays18_3,
      "K d",
      "heating degree-days below 18.3 degC (65 degF), from hours",
    ),
    numberFigure(
      "climate.worstWeekTemperature",
      week?.meanTemperature,
      "degC",
      "mean temperature of the worst cold sunless week",
    ),
    numberFigure(
      "climate.worstWeekRadiation",
      week?.globalRadiation,
      "kWh/(m2 d)",
      "mean daily horizontal radiation in that week",
    ),
    numberFigure(
      "climate.globalRadiation",
      climate.globalRadiation,
      "kWh/m2",
      "annual global horizontal radiation",
    ),
  ];
}

/**
 * A day of the winter as a date; where there is none the value is null and the label says so.
 *
 * @param key `chapter.name`
 * @param hour hour index of the year, null where it never happens
 * @param label name shown, such as "last frost in the house with the store"
 * @param from words after the name where there is a day, such as " after 1 July"; none unless given
 */
export function dayFigure(key: string, hour: number | null, label: string, from = ""): FigureRow {
  return [
    key,
    hour === null || !Number.isFinite(hour)
      ? { value: null, unit: "date", label: `${label}: it never freezes there` }
      : {
        value: dateAfterMidsummer(hour),
        unit: "date",
        label:
          `${label}${from} (a typical year has no calendar year; its winter is dated 2001 to 2002)`,
      },
  ];
}

/**
 * First frost after midsummer as a date; without one the value is null and the label says why.
 *
 * @param key `chapter.name`
 * @param hour hour index of the year, null where it never freezes
 * @param where place named in the label, such as "in the house with the store"
 */
export function freezeFigure(key: string, hour: number | null, where: string): FigureRow {
  return dayFigure(key, hour, `first frost ${where}`, " after 1 July");
}
