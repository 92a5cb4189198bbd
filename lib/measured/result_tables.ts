/** Tables of the measured chapter for the files of a run. @module */
import { type ResultTable, resultTable } from "../basics/mod.ts";
import { kindOf } from "../units/mod.ts";
import type { MeasuredResult } from "./types.ts";

/** Days, plan beside log and faults; none where nothing is measured. */
export function measuredTables({ season, plan }: MeasuredResult): readonly ResultTable[] {
  if (season === null) return [];
  return [
    resultTable("measured-days", season.days, [
      ["day", "", (row) => row.day],
      ["hours logged", "h", (row) => row.hours],
      ["heat in", "kWh", (row) => row.heatIn.value],
      ["heat in, low", "kWh", (row) => row.heatIn.low],
      ["heat in, high", "kWh", (row) => row.heatIn.high],
      ["heat out", "kWh", (row) => row.heatOut.value],
      ["heat out, low", "kWh", (row) => row.heatOut.low],
      ["heat out, high", "kWh", (row) => row.heatOut.high],
      ["latent heat in", "kWh", (row) => row.latentIn.value],
      ["fan energy", "kWh", (row) => row.fanEnergy.value],
      ["between the tubes", "degC", (row) => row.store],
      ["inside", "degC", (row) => row.inside],
    ]),
    ...(plan === null ? [] : [
      resultTable("measured-plan", plan.rows, [
        ["name", "", (row) => row.name],
        ["unit of the numbers", "", (row) => kindOf(row.kind).siLabel],
        ["planned", "", (row) => row.planned],
        ["measured", "", (row) => row.measured.value],
        ["low", "", (row) => row.measured.low],
        ["high", "", (row) => row.measured.high],
      ]),
    ]),
    resultTable("measured-findings", season.findings, [
      ["fault", "", (row) => row.kind],
      ["channel", "", (row) => row.channel],
      ["from", "", (row) => new Date(1000 * row.from).toISOString()],
      ["to", "", (row) => new Date(1000 * row.to).toISOString()],
      ["what to do", "", (row) => row.message],
    ]),
  ];
}
