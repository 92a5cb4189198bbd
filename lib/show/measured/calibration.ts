/**
 * The calibration: what each stage found, how the model does on weeks kept back, and its grade; long
 * because each of its tables stands beside its chart.
 *
 * @module
 */
import * as Plot from "@observablehq/plot";
import type {
  Calibration,
  Estimate,
  FittedStudy,
  Grade,
  GradedValue,
  HeldOutScore,
  ReplayedDay,
  StageRow,
} from "../../measured/mod.ts";
import { AGREEMENT_LIMITS } from "../../measured/mod.ts";
import {
  type Kind,
  showBoth,
  showFigures,
  showNumber,
  showPower,
  showSi,
} from "../../units/mod.ts";
import { dataTable } from "../kit/data_table.ts";
import { type DisplayItem, figure } from "../kit/figure.ts";
import { PALETTE } from "../kit/palette.ts";
import { paragraph, table } from "../kit/table.ts";
import { momentText } from "./moment.ts";

/** Kinds whose inside unit is that of an estimate. */
const KIND_OF_UNIT: Readonly<Record<string, Kind>> = {
  "1/h": "airChange",
  "ach/(m/s)": "airChangePerSpeed",
  "W/(m K)": "conductivity",
  "W/K": "conductance",
  "m3/s": "airFlow",
  "m2/s": "diffusivity",
};
const FIGURES = 3;

/** A value of an estimate in the reader's units. */
function shown(value: number, unit: string): string {
  if (!Number.isFinite(value)) return "–";
  const kind = KIND_OF_UNIT[unit];
  if (kind !== undefined) return showBoth(value, kind);
  const far = value !== 0 && (Math.abs(value) >= 1e5 || Math.abs(value) < 1e-3);
  return `${far ? showPower(value) : showFigures(value, FIGURES)} ${unit}`.trim();
}

const range = (low: number, high: number, unit: string) =>
  `${shown(low, unit)} to ${shown(high, unit)}`;

const noCalibration = ({ reason }: Calibration) => paragraph(`Nothing is fitted here: ${reason}.`);

interface EstimateRow extends Estimate {
  readonly stage: string;
}

function estimateRows(stages: readonly StageRow[]): EstimateRow[] {
  return stages.flatMap(({ name, stage }) =>
    (stage?.estimates ?? []).map((one, k) => ({ ...one, stage: k === 0 ? name : "" }))
  );
}

/** Every estimate with its interval, and what was believed before. */
export function calibrationTable(calibration: Calibration): DisplayItem {
  if (calibration.reason !== null) return noCalibration(calibration);
  const before = new Map(calibration.believed.map((one) => [one.key, one]));
  const prior = ({ key, unit }: Estimate) => {
    const one = before.get(key ?? "");
    return one === undefined ? "–" : `${shown(one.value, unit)}, ${range(one.low, one.high, unit)}`;
  };
  return table(estimateRows(calibration.stages), [
    { head: "stage", value: ({ stage }) => stage },
    { head: "what", value: ({ name }) => name },
    { head: "believed before", value: prior, right: true },
    { head: "found", value: ({ value, unit }) => shown(value, unit), right: true },
    { head: "95 % interval", value: ({ low, high, unit }) => range(low, high, unit), right: true },
    { head: "key of the study", value: ({ key }) => key ?? "none" },
  ], "What the stages found");
}

/** Stages that these logs do not allow, and what those that they do allow cannot tell. */
export function calibrationLimits(calibration: Calibration): DisplayItem {
  if (calibration.reason !== null) return noCalibration(calibration);
  const rows = calibration.stages.flatMap(({ name, stage, reason }) => {
    const words = reason === null ? stage!.cannotTell : [`Not done: ${reason}.`];
    return words.map((one, k) => ({ name: k === 0 ? name : "", words: one }));
  });
  return table(rows, [
    { head: "stage", value: ({ name }) => name },
    { head: "what these logs cannot tell", value: ({ words }) => words },
  ]);
}

/** Correlation of the parameters that were fitted together. */
export function correlationTable(calibration: Calibration): DisplayItem {
  const { joint } = calibration;
  if (joint === null || joint.estimates.length === 0) {
    return calibration.reason === null
      ? paragraph("Nothing was fitted together.")
      : noCalibration(calibration);
  }
  const names = joint.estimates.map(({ name }) => name);
  return table(names.map((name, k) => ({ name, row: joint.correlation[k]! })), [
    { head: "", value: ({ name }) => name },
    ...names.map((head, k) => ({
      head,
      value: ({ row }: { readonly row: readonly number[] }) => row[k]!,
      digits: 2,
    })),
  ], "Correlation of what was fitted together");
}

/** NMBE, CV(RMSE) and errors of temperature, where a fit has seen the log and where not. */
export function holdOutTable(calibration: Calibration): DisplayItem {
  if (calibration.reason !== null) return noCalibration(calibration);
  const { scores, heldWords } = calibration;
  if (scores.length === 0) {
    return paragraph(
      "The model of house and store was not run beside this log, so there is no score.",
    );
  }
  const percent = (value: number) => `${showNumber(100 * value, 1)} %`;
  const kelvins = (value: number | undefined) =>
    value === undefined ? "–" : showBoth(value, "temperatureDifference");
  const rows = scores.flatMap((score: HeldOutScore) =>
    (["fitted", "heldOut"] as const).flatMap((side) => {
      const [hours, days] = [score.heat[side], score.heatByDay[side]];
      return hours === null || days === null ? [] : [{ score, side, hours, days }];
    })
  );
  const { nmbe, cvRmse } = AGREEMENT_LIMITS.hourly;
  return table(
    rows,
    [
      { head: "model", value: ({ score }) => score.name },
      {
        head: "hours",
        value: ({ side, hours }) =>
          `${side === "fitted" ? "seen by the fit" : `held out (${heldWords})`}, ${hours.count}`,
      },
      { head: "p", value: ({ hours }) => hours.parameters, digits: 0 },
      { head: "NMBE", value: ({ hours }) => percent(hours.nmbe), right: true },
      { head: "CV(RMSE) by hour", value: ({ hours }) => percent(hours.cvRmse), right: true },
      { head: "CV(RMSE) by day", value: ({ days }) => percent(days.cvRmse), right: true },
      { head: "limits by hour", value: ({ hours }) => hours.within ? "within" : "outside" },
      { head: "house, error", value: ({ score, side }) => kelvins(score.inside?.[side]?.error) },
      { head: "house, bias", value: ({ score, side }) => kelvins(score.inside?.[side]?.bias) },
      { head: "store, error", value: ({ score, side }) => kelvins(score.store?.[side]?.error) },
    ],
    `Heat moved by the air, measured less computed; usual limits ${percent(nmbe)} and ${
      percent(cvRmse)
    } by hour`,
  );
}

/** Heat day by day: logged, by the plan, by the fitted model; days that no fit has seen are shaded. */
export function holdOutChart(calibration: Calibration): DisplayItem {
  if (calibration.reason !== null) return noCalibration(calibration);
  const { days, heldWords, scores } = calibration;
  if (days.length === 0) return paragraph("The model was not run beside this log.");
  const date = ({ day }: ReplayedDay) => new Date(`${day}T12:00Z`);
  const line = (y: (day: ReplayedDay) => number, stroke: string, dashed = false) =>
    Plot.lineY(days, {
      x: date,
      y,
      stroke,
      strokeWidth: 1.8,
      ...(dashed ? { strokeDasharray: "5 3" } : {}),
    });
  const held = days.filter((day) => day.held);
  const last = scores.at(-1)?.heatByDay.heldOut ?? null;
  return figure({
    height: 320,
    marginLeft: 55,
    x: { type: "utc", label: null },
    y: { label: "heat moved by the air, kWh a day", grid: true, zero: true },
    marks: [
      Plot.ruleX(held, { x: date, stroke: "#e8e8e8", strokeWidth: 5 }),
      line(({ planned }) => planned, PALETTE.latent, true),
      line(({ fitted }) => fitted, PALETTE.warm),
      Plot.dot(days, {
        x: date,
        y: ({ measured }: ReplayedDay) => measured,
        r: 2,
        fill: PALETTE.ink,
      }),
    ],
  }, {
    title: "Does the fitted model foresee weeks that it has not seen?",
    alt: last === null
      ? "Heat moved day by day, logged, planned and fitted; no day was held out."
      : `On ${held.length} days held out the fitted model is off by ${
        showNumber(100 * last.nmbe, 1)
      } % on the mean and ${showNumber(100 * last.cvRmse, 1)} % day by day.`,
    note: heldWords === null
      ? "No day is held out: name some in measured.holdOut."
      : `Shaded days (${heldWords}) entered no fit.`,
    legend: [
      { label: "logged", colour: PALETTE.ink },
      { label: "plan on the logged weather", colour: PALETTE.latent, sign: "dash" },
      { label: "fitted", colour: PALETTE.warm, sign: "line" },
    ],
    table: dataTable(days, [
      { head: "day", value: (row) => row.day },
      { head: "held out", value: (row) => row.held ? "yes" : "no" },
      { head: "logged", value: (row) => row.measured, kind: "energy" },
      { head: "plan", value: (row) => row.planned, kind: "energy" },
      { head: "fitted", value: (row) => row.fitted, kind: "energy" },
    ]),
  });
}

/** What goes into the new study file, and what stays out and why. */
export function fittedStudyTable({ changed, left }: FittedStudy): DisplayItem {
  if (changed.length === 0 && left.length === 0) {
    return paragraph("No value was fitted, so there is no new study file.");
  }
  const rows = [
    ...changed.map(({ key, before, after, estimate }) => ({
      name: key,
      before: before ?? "the default",
      after,
      interval: range(estimate.low, estimate.high, estimate.unit),
      reason: "",
    })),
    ...left.map(({ estimate, reason }) => ({
      name: estimate.key ?? estimate.name,
      before: "",
      after: "stays",
      interval: range(estimate.low, estimate.high, estimate.unit),
      reason,
    })),
  ];
  return table(rows, [
    { head: "key, or name", value: ({ name }) => name },
    { head: "in the study", value: ({ before }) => before, right: true },
    { head: "in the new file", value: ({ after }) => after, right: true },
    { head: "95 % interval", value: ({ interval }) => interval, right: true },
    { head: "why it stays out", value: ({ reason }) => reason },
  ], "The new study file");
}

function gradedTable(values: readonly GradedValue[], title: string): DisplayItem {
  const inside = values.filter((one) => one.inside).length;
  return table(values, [
    { head: "what", value: ({ name }) => name },
    { head: "found", value: ({ found, unit }) => shown(found, unit), right: true },
    { head: "95 % interval", value: ({ low, high, unit }) => range(low, high, unit), right: true },
    { head: "truth", value: ({ truth, unit }) => shown(truth, unit), right: true },
    { head: "", value: (row) => row.inside ? "inside" : "outside" },
  ], `${title}: ${inside} of ${values.length} intervals hold the truth`);
}

/** The run's own calibration beside the truth of made-up logs. */
export function gradeTable({ reason, values }: Grade): DisplayItem {
  return reason === null
    ? gradedTable(values, "The calibration, graded")
    : paragraph(`Nothing is graded here: ${reason}.`);
}

/** Values that a learner found, beside the truth. */
export function myGradeTable(values: readonly GradedValue[]): DisplayItem {
  return values.length === 0
    ? paragraph("Nothing is graded yet: write values of your own, each with both ends.")
    : gradedTable(values, "Yours, graded");
}

/** Faults that were planted, and whether the reader of the log found them. */
export function plantedFaultsTable({ reason, faults, unplanted }: Grade): DisplayItem {
  if (reason !== null || faults.length === 0) {
    return paragraph(`No planted fault is known${reason === null ? "" : `: ${reason}`}.`);
  }
  const found = faults.filter((one) => one.found).length;
  return table(faults, [
    { head: "planted", value: ({ kind }) => kind },
    { head: "where", value: ({ channel }) => channel },
    { head: "from, UTC", value: ({ from }) => momentText(from, 0), right: true },
    { head: "to, UTC", value: ({ to }) => momentText(to, 0), right: true },
    { head: "", value: (row) => row.found ? "found" : "missed" },
  ], `${found} of ${faults.length} planted faults found; ${unplanted} found that were not planted`);
}

/** Words on the share of the replay whose weather was logged. */
export function replayWords({ reason, scores, weatherLogged, factors }: Calibration): DisplayItem {
  if (reason !== null || scores.length === 0) {
    return paragraph(
      reason === null ? "The model was not run beside this log." : `Nothing is fitted: ${reason}.`,
    );
  }
  const times = (value: number) => showFigures(value, FIGURES);
  return paragraph(
    `The fitted model has ${
      times(factors.diffusivity)
    } times the soil conductivity of the study, ` +
      `${times(factors.leakage)} times its leakage, ${
        times(factors.airFlow)
      } times its air flow and ` +
      `${times(factors.film)} times its film in the tubes. Weather was logged in ${
        showSi(weatherLogged, "share")
      } of the hours; in the others the study's weather stands in, and they count in no score.`,
  );
}
