/** Tables of the calibration for the files of a run. @module */
import { type ResultTable, resultTable } from "../../basics/mod.ts";
import type { Grade } from "./grade.ts";
import type { Tomorrow } from "./tomorrow.ts";
import type { Calibration } from "./types.ts";

/** Stages with their estimates, correlation and limits, and the hold-out. */
export function calibrationTables(calibration: Calibration): readonly ResultTable[] {
  const { stages, scores, days, believed } = calibration;
  if (calibration.reason !== null) return [];
  const before = new Map(believed.map((one) => [one.key, one]));
  const estimates = stages.flatMap(({ name, stage }) =>
    (stage?.estimates ?? []).map((one) => ({
      stage: name,
      ...one,
      prior: before.get(one.key ?? ""),
    }))
  );
  const pairs = stages.flatMap(({ name, stage }) =>
    (stage?.estimates ?? []).flatMap((one, a) =>
      stage!.estimates.slice(0, a).map((other, b) => ({
        stage: name,
        one: one.name,
        other: other.name,
        correlation: stage!.correlation[a]?.[b] ?? NaN,
      }))
    )
  );
  const limits = stages.flatMap(({ name, stage, reason }) =>
    [...(reason === null ? [] : [reason]), ...(stage?.cannotTell ?? [])].map((words) => ({
      name,
      words,
    }))
  );
  const sides = scores.flatMap(({ name, parameters, heat, heatByDay }) =>
    [["by hour", heat], ["by day", heatByDay]].flatMap(([step, both]) =>
      (["fitted", "heldOut"] as const).flatMap((side) => {
        const one = (both as typeof heat)[side];
        return one === null ? [] : [{ name, step: step as string, side, all: parameters, one }];
      })
    )
  );
  return [
    resultTable("measured-calibration", estimates, [
      ["stage", "", (row) => row.stage],
      ["what", "", (row) => row.name],
      ["key of the study", "", (row) => row.key ?? ""],
      ["unit of the numbers", "", (row) => row.unit],
      ["believed before", "", (row) => row.prior?.value ?? null],
      ["believed, low", "", (row) => row.prior?.low ?? null],
      ["believed, high", "", (row) => row.prior?.high ?? null],
      ["found", "", (row) => row.value],
      ["low", "", (row) => row.low],
      ["high", "", (row) => row.high],
    ]),
    resultTable("measured-calibration-correlation", pairs, [
      ["stage", "", (row) => row.stage],
      ["one", "", (row) => row.one],
      ["other", "", (row) => row.other],
      ["correlation", "1", (row) => row.correlation],
    ]),
    resultTable("measured-calibration-limits", limits, [
      ["stage", "", (row) => row.name],
      ["what these logs cannot tell", "", (row) => row.words],
    ]),
    resultTable("measured-hold-out", sides, [
      ["model", "", (row) => row.name],
      ["heat moved by the air", "", (row) => row.step],
      ["side", "", (row) => row.side === "fitted" ? "seen by the fit" : "held out"],
      ["values", "", (row) => row.one.count],
      ["p", "", (row) => row.one.parameters],
      ["NMBE, measured less computed", "1", (row) => row.one.nmbe],
      ["CV(RMSE)", "1", (row) => row.one.cvRmse],
    ]),
    resultTable("measured-replay", days, [
      ["day", "", (row) => row.day],
      ["held out", "", (row) => row.held],
      ["heat moved, logged", "kWh", (row) => row.measured],
      ["heat moved, plan", "kWh", (row) => row.planned],
      ["heat moved, fitted", "kWh", (row) => row.fitted],
    ]),
  ];
}

/** The coming days by the hour, frost warnings and hours to charge. */
export function aheadTables({ ahead, hours }: Tomorrow): readonly ResultTable[] {
  if (ahead === null) return [];
  return [
    resultTable("measured-day-ahead", hours, [
      ["hour", "", (row) => row.time],
      ["outdoors by the forecast", "degC", (row) => row.outdoors],
      ["inside", "degC", (row) => row.inside],
      ["inside, low", "degC", (row) => row.low],
      ["inside, high", "degC", (row) => row.high],
      ["inside without fan", "degC", (row) => row.withoutFan],
      ["inside with heater", "degC", (row) => row.heated],
      ["heat into the store", "kW", (row) => row.stored],
    ]),
    resultTable("measured-frost-warning", ahead.warnings, [
      ["what", "", (row) => row.name],
      ["limit", "degC", (row) => row.limit],
      ["fan", "", (row) => row.fan],
      ["heater", "", (row) => row.heater],
      ["possible in", "h", (row) => row.possible],
      ["likely in", "h", (row) => row.likely],
      ["nearly certain in", "h", (row) => row.nearlyCertain],
    ]),
    resultTable("measured-charging", ahead.charging, [
      ["from", "h", (row) => row.from],
      ["to", "h", (row) => row.to],
      ["heat", "kWh", (row) => row.heat],
      ["fan energy", "kWh", (row) => row.fanEnergy],
      ["heat for each kWh of the fan", "1", (row) => row.ratio],
    ]),
  ];
}

/** Estimates beside the truth, and planted faults. */
export function gradeTables({ values, faults, reason }: Grade): readonly ResultTable[] {
  if (reason !== null) return [];
  return [
    resultTable("measured-grade", values, [
      ["what", "", (row) => row.name],
      ["unit of the numbers", "", (row) => row.unit],
      ["found", "", (row) => row.found],
      ["low", "", (row) => row.low],
      ["high", "", (row) => row.high],
      ["truth", "", (row) => row.truth],
      ["inside", "", (row) => row.inside],
    ]),
    resultTable("measured-planted-faults", faults, [
      ["fault", "", (row) => row.kind],
      ["channel", "", (row) => row.channel],
      ["from", "", (row) => new Date(1000 * row.from).toISOString()],
      ["to", "", (row) => new Date(1000 * row.to).toISOString()],
      ["found", "", (row) => row.found],
    ]),
  ];
}
