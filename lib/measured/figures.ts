/** Figures of the measured chapter. @module */
import { type FigureRow, numberFigure, withRange } from "../basics/figures.ts";
import type { Banded } from "./flows/sums.ts";
import type { MeasuredResult } from "./types.ts";

const PLAN_WORDS = "study as it stands, nothing fitted, p = 1";

/** The figures; without logs each says why it has no value. */
export function measuredFigures({ reason, season, plan }: MeasuredResult): readonly FigureRow[] {
  const none = (key: string, unit: string, label: string, why: string): FigureRow => [
    key,
    { value: null, unit, label: `${label}: ${why}` },
  ];
  const figure = (
    key: string,
    unit: string,
    label: string,
    found: Banded | null | undefined,
    why: string,
  ): FigureRow =>
    found === null || found === undefined
      ? none(key, unit, label, reason ?? why)
      : withRange(numberFigure(key, found.value, unit, label), [found.low, found.high]);
  const hourly = plan?.hourly;
  const few = "log and plan share too few hours in which the air moved heat";
  return [
    figure(
      "measured.nmbe",
      "1",
      `heat moved by the air, by hour, measured less planned over measured: ${PLAN_WORDS}`,
      hourly && { value: hourly.nmbe, low: hourly.nmbeRange[0], high: hourly.nmbeRange[1] },
      few,
    ),
    figure(
      "measured.cvrmse",
      "1",
      `scatter of the heat moved by the air, by hour, about the plan: ${PLAN_WORDS}`,
      hourly && { value: hourly.cvRmse, low: hourly.cvRmseRange[0], high: hourly.cvRmseRange[1] },
      few,
    ),
    figure(
      "measured.heatIn",
      "kWh",
      "heat put into the store in the hours that were logged",
      season?.sums.heatIn,
      "no hour was logged",
    ),
    figure(
      "measured.cop",
      "1",
      "heat given back for each kilowatt-hour of the fans in the hours that were logged",
      season?.sums.cop,
      "the fan never ran",
    ),
  ];
}
