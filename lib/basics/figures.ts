/** Figures: the numbers of a study that stand in results.json under a key of their own. @module */

/** One figure of results.json. */
export interface Figure {
  /** SI, degC, kWh; text for dates; null where the event does not occur */
  readonly value: number | string | null;
  /** unit of the value */
  readonly unit: string;
  /** name shown */
  readonly label: string;
  /** low end of the range in which the value lies in 95 of 100 cases, in the same unit; where it is known */
  readonly low?: number;
  /** high end of that range, in the same unit */
  readonly high?: number;
  /** true where what was not computed, a later chapter or a result on demand, would give the figure better founded */
  readonly provisional?: true;
}

/** All figures by key `chapter.name`. */
export type Figures = Readonly<Record<string, Figure>>;

/** A figure with its key. */
export type FigureRow = readonly [key: string, figure: Figure];

/**
 * A number as a figure; one that is null or not finite does not exist in this run and says so.
 *
 * @param key `chapter.name`
 * @param value in `unit`; null or undefined where there is none
 * @param unit SI, degC or kWh; "1" for a ratio
 * @param label name shown
 * @param why reason where there is none
 */
export function numberFigure(
  key: string,
  value: number | null | undefined,
  unit: string,
  label: string,
  why = "there is none in this run",
): FigureRow {
  return [
    key,
    value !== null && value !== undefined && Number.isFinite(value)
      ? { value, unit, label }
      : { value: null, unit, label: `${label}: ${why}` },
  ];
}

/**
 * A figure with the range in which its value lies in 95 of 100 cases; one without a value, without a
 * range, or with a range whose ends are no finite numbers stays as it is.
 *
 * @param row the figure
 * @param range low and high end, in the figure's unit
 */
export function withRange(
  [key, figure]: FigureRow,
  range: readonly [low: number, high: number] | null,
): FigureRow {
  if (range === null || figure.value === null || !range.every(Number.isFinite)) {
    return [key, figure];
  }
  return [key, { ...figure, low: range[0], high: range[1] }];
}
