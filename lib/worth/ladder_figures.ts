/** Figures of the ladder. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import type { MeasureLadder } from "./ladder_types.ts";

/** What the ladder builds, costs and saves; null with the reason where it was not climbed. */
export function ladderFigures(ladder: MeasureLadder | null | undefined): readonly FigureRow[] {
  const money = ladder?.currency ?? "money";
  const why = ladder === undefined
    ? "climbed when asked for, and by the whole study"
    : "no price of heat or electricity";
  const last = ladder?.rungs.at(-1);
  const figure = (key: string, value: number, unit: string, label: string): FigureRow =>
    ladder
      ? numberFigure(key, value, unit, label)
      : [key, { value: null, unit, label: `${label}: ${why}` }];
  const label = "steps that pay, one after the other";
  const steps = ladder?.rungs.map(({ name }) => name).join(", then ");
  return [
    ["worth.ladder", {
      value: ladder ? steps || "none" : null,
      unit: "text",
      label: ladder ? label : `${label}: ${why}`,
    }],
    figure("worth.ladderCapital", last?.capitalSoFar ?? 0, money, "first cost of those steps"),
    figure("worth.ladderSavedHeat", last?.savedSoFar ?? 0, "kWh", "heat that they save a year"),
    figure(
      "worth.ladderNetSavings",
      last?.netSavingsSoFar ?? 0,
      money,
      "present value that they save against a heater alone",
    ),
  ];
}
