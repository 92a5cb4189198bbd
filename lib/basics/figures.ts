/** Figures: the numbers of a study that stand in results.json under a key of their own. @module */

/** One figure of results.json. */
export interface Figure {
  /** SI, degC, kWh; text for dates; null where the event does not occur */
  readonly value: number | string | null;
  /** unit of the value */
  readonly unit: string;
  /** name shown */
  readonly label: string;
}

/** All figures by key `chapter.name`. */
export type Figures = Readonly<Record<string, Figure>>;

/** A figure with its key. */
export type FigureRow = readonly [key: string, figure: Figure];

/**
 * A number as a figure; one that is not finite does not exist in this run and says so.
 *
 * @param key `chapter.name`
 * @param value in `unit`
 * @param unit SI, degC or kWh; "1" for a ratio
 * @param label name shown
 */
export function numberFigure(key: string, value: number, unit: string, label: string): FigureRow {
  return [
    key,
    Number.isFinite(value)
      ? { value, unit, label }
      : { value: null, unit, label: `${label}: there is none in this run` },
  ];
}
