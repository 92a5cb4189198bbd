// Property: what the calibration found is shown with range, reason and limits, in the reader's units.
import { assertMatch, assertStringIncludes } from "@std/assert";
import * as measured from "winterground/measured";
import { checkFigures } from "../figure_rules.ts";

const estimates: measured.Estimate[] = [
  {
    name: "leakage in calm air",
    key: "house.leakage",
    value: 0.62,
    unit: "1/h",
    standardUncertainty: 0.04,
    low: 0.54,
    high: 0.7,
  },
  {
    name: "heat held",
    key: null,
    value: 2.3e7,
    unit: "J/K",
    standardUncertainty: 1e6,
    low: 2.1e7,
    high: 2.5e7,
  },
];
const stage: measured.Stage = {
  name: "leakage",
  estimates,
  correlation: [[1, 0.4], [0.4, 1]],
  used: "8 nights",
  count: 8,
  places: [],
  cannotTell: ["Where the cracks are cannot be told."],
};
const agreed = (parameters: number): measured.JudgedAgreement => ({
  nmbe: -0.034,
  cvRmse: 0.12,
  parameters,
  count: 48,
  within: true,
  words: "",
});
const calibration: measured.Calibration = {
  reason: null,
  stages: [
    { name: "leakage by tracer decay", stage, reason: null },
    { name: "leaf area", stage: null, reason: "the logs hold no relative humidity outside" },
  ],
  believed: [{ key: "house.leakage", value: 0.5, low: 0.17, high: 1.5 }],
  joint: { ...stage, notIdentified: [], strengths: [1, 0.5], error: 1, settled: true },
  chosen: estimates,
  heldWords: "15 Jan to 14 Feb",
  scores: [{
    name: "fitted",
    parameters: 2,
    heat: { fitted: agreed(2), heldOut: agreed(0) },
    heatByDay: { fitted: agreed(2), heldOut: agreed(0) },
    inside: {
      fitted: { count: 48, error: 0.5, bias: 0.1 },
      heldOut: { count: 48, error: 0.6, bias: -0.2 },
    },
    store: null,
  }],
  days: [1, 2, 3, 4].map((day) => ({
    day: `2026-01-1${day + 2}`,
    held: day > 2,
    measured: 40 + day,
    planned: 50,
    fitted: 41,
  })),
  nightResiduals: [0.1],
  factors: { diffusivity: 0.8, leakage: 1.3, airFlow: 0.85, film: 1 },
  weatherLogged: 0.8,
};
const nothing: measured.Calibration = {
  ...calibration,
  reason: "the study names no logs",
  stages: [],
  scores: [],
  days: [],
  joint: null,
};
const plain = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

checkFigures({
  heldOut: [() => measured.holdOutChart(calibration), ["kWh", "plan", "fitted"]],
});

Deno.test("stages are shown with what was believed, found and cannot be told", () => {
  const found = plain(measured.calibrationTable(calibration));
  assertMatch(
    found,
    /0\.50 1\/h, 0\.17 1\/h to 1\.50 1\/h\s+0\.62 1\/h\s+0\.54 1\/h to 0\.70 1\/h/,
  );
  assertMatch(found, /2\.3e7 J\/K/);
  const limits = plain(measured.calibrationLimits(calibration));
  assertStringIncludes(limits, "Where the cracks are");
  assertStringIncludes(limits, "Not done: the logs hold no relative humidity outside.");
  assertMatch(plain(measured.correlationTable(calibration)), /0\.40/);
});

Deno.test("the hold-out is shown with sign, p and both sides; without logs every item says why", () => {
  const scores = plain(measured.holdOutTable(calibration));
  assertMatch(scores, /seen by the fit, 48\s+2\s+−3\.4 %\s+12\.0 %/);
  assertMatch(scores, /held out \(15 Jan to 14 Feb\), 48\s+0\s/);
  assertStringIncludes(scores, "measured less computed");
  assertMatch(plain(measured.replayWords(calibration)), /0\.8 times the soil conductivity/);
  for (
    const item of [
      measured.calibrationTable(nothing),
      measured.calibrationLimits(nothing),
      measured.correlationTable(nothing),
      measured.holdOutTable(nothing),
      measured.holdOutChart(nothing),
      measured.replayWords(nothing),
    ]
  ) {
    assertStringIncludes(plain(item), "the study names no logs");
  }
});

Deno.test("the grade says what is inside, what was found, and that a real store has none", () => {
  const value: measured.GradedValue = {
    name: "house.leakage",
    found: 0.62,
    low: 0.54,
    high: 0.7,
    truth: 0.65,
    unit: "1/h",
    inside: true,
  };
  const grade: measured.Grade = {
    reason: null,
    known: [{ key: "house.leakage", value: 0.65, unit: "1/h", meaning: "" }],
    values: [value, { ...value, truth: 0.9, inside: false }],
    notGiven: [],
    faults: [{ kind: "drift", channel: "house_2", from: 0, to: 86400, found: true }],
    unplanted: 0,
  };
  assertMatch(
    plain(measured.gradeTable(grade)),
    /1 of 2 intervals hold the truth[\s\S]*inside[\s\S]*outside/,
  );
  assertMatch(plain(measured.plantedFaultsTable(grade)), /1 of 1 planted faults found; 0 found/);
  const mine = measured.gradeMine(grade, { "house.leakage": [0.6, 0.5, 0.7] });
  assertMatch(plain(measured.myGradeTable(mine)), /Yours, graded: 1 of 1/);
  const none = { ...grade, reason: "the study names no truth", values: [], faults: [] };
  assertStringIncludes(plain(measured.gradeTable(none)), "the study names no truth");
  assertStringIncludes(plain(measured.plantedFaultsTable(none)), "the study names no truth");
});

Deno.test("the new study file is shown key by key, with why a value stays out", () => {
  const shown = plain(measured.fittedStudyTable({
    text: "",
    table: "",
    changed: [{
      key: "house.leakage",
      before: "0.5 1/h",
      after: "0.62 1/h",
      estimate: estimates[0]!,
    }],
    left: [{ estimate: estimates[1]!, reason: "no key of the study takes it" }],
  }));
  assertMatch(shown, /house\.leakage\s+0\.5 1\/h\s+0\.62 1\/h/);
  assertMatch(shown, /heat held.*stays.*no key of the study takes it/);
});
