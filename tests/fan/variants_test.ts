import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { fan as fanPart } from "../../lib/fan/chapter.ts";
import {
  curvePoints,
  dirtySystemCurve,
  fanChoices,
  fanCounts,
  fanElevations,
  fanSpeeds,
  pointAgainst,
} from "../../lib/fan/mod.ts";
import { headers as headersPart } from "../../lib/headers/chapter.ts";
import { tubes as tubesPart } from "../../lib/tubes/chapter.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import * as sample from "../show/sample.ts";

const study = await openStudy(defaultStudyPath());
const tubes = tubesPart.compute(tubesPart.takes(study, {}));
const headers = headersPart.compute(headersPart.takes(study, { tubes }));
const { inputs, surroundings } = fanPart.takes(study, { headers });
const fan = fanPart.compute({ inputs, surroundings });

Deno.test("fanCounts(), fanSpeeds() and fanChoices() agree with the chapter and explain failures", () => {
  // Property: the study's own row is the chapter's result; more fans, less than as much more air
  const flows = fanCounts(inputs, surroundings).map(({ result }) => result?.airFlow ?? NaN);
  assertAlmostEquals(flows[inputs.count - 1]!, fan.airFlow, 1e-9);
  assert(flows[1]! > flows[0]! && flows[1]! < 2 * flows[0]!);
  const speeds = fanSpeeds(inputs, surroundings)
    .flatMap(({ result }) => result === null ? [] : [result]);
  for (let i = 1; i < speeds.length; i++) assert(speeds[i]!.power > speeds[i - 1]!.power);
  const hard = { ...inputs, filterPressure: 5000 };
  for (const { result, reason } of fanChoices(hard, surroundings)) {
    if (result === null) assert(reason.length > 30);
  }
  const weak = { ...inputs, riserDiameter: 0.05 };
  for (const { result } of fanChoices(weak, surroundings)) {
    assert(result === null || result.flowRatio < 0.7);
  }
});

Deno.test("fanElevations() carry less heat in thin air, in proportion to the density", () => {
  // Property: flow nearly unchanged, heat for each kelvin with density
  const trials = fanElevations(inputs, {
    house: study.house,
    tubesInputs: study.tubes,
    headersInputs: study.headers,
    airTemperature: surroundings.airTemperature,
  });
  const [low, high] = [trials[0]!, trials.at(-1)!];
  assert(Math.abs(high.result!.airFlow / low.result!.airFlow - 1) < 0.05);
  const ratio = high.capacityRate! / low.capacityRate!;
  const density = high.result!.density / low.result!.density;
  assertAlmostEquals(ratio, density * high.result!.airFlow / low.result!.airFlow, 1e-9);
  assert(density < 0.75);
});

Deno.test("curvePoints() passes through the ends of the curve and never rises above its peak", () => {
  // Property: the drawn curve is the one used, without overshoot
  const points = curvePoints(sample.fanCurve);
  const pressures = sample.fanCurve.staticPressure;
  assertEquals(points[0]!.pressure, pressures[0]);
  assertAlmostEquals(points.at(-1)!.pressure, pressures.at(-1)!, 1e-9);
  for (const point of points) assert(point.pressure <= Math.max(...pressures) + 1e-9);
});

Deno.test("pointAgainst() gives less air against more resistance, on the fan's curve", () => {
  // Property: monotone
  const flows = [0.8, 1, 1.2].map((factor) => pointAgainst(sample.fanResult, factor)!.airFlow);
  assert(flows[0]! > flows[1]! && flows[1]! > flows[2]!);
  assert((pointAgainst(sample.fanResult, 1e9)?.airFlow ?? 0) < 0.01);
});

Deno.test("dirtySystemCurve() adds the filter's growth at the design flow, and nothing without one", () => {
  // Property: a filter of 20 Pa that doubles asks 20 Pa more at the design flow
  const result = {
    ...sample.fanResult,
    flowRatio: 1,
    systemCurve: [{ airFlow: 0.45, pressure: 70 }],
  };
  const inputs = { ...sample.fanInputs, filterPressure: 20, filterDirty: 2 };
  assertAlmostEquals(dirtySystemCurve(inputs, result)[0]!.pressure, 90, 1e-9);
  assertEquals(dirtySystemCurve({ ...inputs, filterPressure: 0 }, result), []);
});
