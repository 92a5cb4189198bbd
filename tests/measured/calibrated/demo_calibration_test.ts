// Property: a calibration of the demo's made-up winter holds its truth in every interval, never sees the
// days held out, and gives a study file that opens.
import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import { dayData } from "../../../lib/measured/calibrated/joint_days.ts";
import { type LoggedHouse, loggedHouse } from "../../../lib/measured/calibrated/logged_house.ts";
import { loggedWeather } from "../../../lib/measured/calibrated/replay.ts";
import { calibrationStages } from "../../../lib/measured/calibrated/stages.ts";
import { calibrationTakes } from "../../../lib/measured/calibrated/takes.ts";
import { fromFullHour } from "../../../lib/measured/logged_season.ts";
import { readStudyLog } from "../../../lib/measured/study_log.ts";
import { readSweep } from "../../../lib/study/sweep/mod.ts";
import { defaultStudyPath, openStudy, openStudyText, startRun } from "../../../lib/study/mod.ts";

const study = await openStudy(defaultStudyPath());
const run = startRun(study);

Deno.test("run.calibration(): every interval of the demo's winter holds the truth", async () => {
  const { values, faults, unplanted } = await run.grade();
  assertEquals(values.filter(({ inside }) => !inside).map(({ name }) => name), []);
  const names = new Set(values.map(({ name }) => name));
  for (
    const name of [
      "house.leakage",
      "house.leakageWind",
      "fan.speed",
      "soil.measuredConductivity",
      "soil diffusivity",
      "loss coefficient",
    ]
  ) {
    assert(names.has(name), name);
  }
  // an interval that holds everything would be no use
  for (const key of ["house.leakage", "fan.speed", "soil.measuredConductivity"]) {
    const narrow = values.filter(({ name }) => name === key)
      .some(({ low, high }) => high / low < 2);
    assert(narrow, `${key} is told within a factor of two`);
  }
  assertEquals(faults.length, 11);
  assertEquals(faults.filter(({ found }) => !found), []);
  assertEquals(unplanted, 0);
});

Deno.test("run.calibration(): scores on days held out, with sign and p", async () => {
  const { scores, days, heldWords, nightResiduals, joint } = await run.calibration();
  assertEquals(heldWords, study.measured.holdOut);
  assertEquals(scores.map(({ name }) => name), [
    "the plan on the logged weather",
    "fitted, on the logged weather",
  ]);
  const [, fitted] = scores;
  assertEquals(fitted!.heat.fitted.parameters, joint!.estimates.length);
  assertEquals(fitted!.heat.heldOut!.parameters, 0);
  const heldHours = days.filter(({ held }) => held).length * 24;
  const { count } = fitted!.heat.heldOut!;
  assert(count > 0.9 * heldHours && count <= heldHours, `${count} of ${heldHours}`);
  assertStringIncludes(fitted!.heat.heldOut!.words, "measured less computed, p 0");
  assert(nightResiduals.length > 300);
  // the house by night comes nearer to what was logged than the plan's does
  assert(Math.abs(fitted!.inside!.heldOut!.bias) < Math.abs(scores[0]!.inside!.heldOut!.bias));
});

Deno.test("run.fittedStudy(): a study file that opens, with the fitted values and nothing else changed", async () => {
  const { text, changed } = await run.fittedStudy();
  const again = await openStudyText(text, study.path);
  assert(changed.length >= 3);
  const at = (root: unknown, key: string) =>
    key.split(".").reduce<unknown>((part, name) => (part as Record<string, unknown>)[name], root);
  for (const { key, estimate } of changed) {
    const value = at(again, key) as number;
    // numbers in the file are rounded, and the study holds SI
    const si = key === "house.leakage" || key === "house.leakageWind"
      ? value / (at(study, key) as number) *
        (await run.calibration()).believed.find((one) => one.key === key)!.value
      : value;
    assert(Math.abs(si / estimate.value - 1) < 0.02, key);
  }
  const lines = (one: string) => one.split("\n");
  const differing = lines(text).filter((line) => !lines(study.text).includes(line));
  assertEquals(differing.length, changed.length);
  for (const line of differing) assertStringIncludes(line, "# measured: ");
});

Deno.test("run.fittedStudy(): the intervals make a sweep of doubt that is read", async () => {
  const { doubt, changed } = await run.fittedStudy();
  const plan = readSweep(doubt!, "doubt.yaml");
  assertEquals(plan.form, "sample");
  assertEquals(plan.keys.map(({ key }) => key), changed.map(({ key }) => key));
  for (const { key, axis } of plan.keys) {
    assert(axis.form === "range", key);
    assert(axis.low < axis.high, key);
  }
});

/** The log with every compared reading of the hours held out replaced by nonsense. */
function spoilt(house: LoggedHouse): LoggedHouse {
  const nonsense = (values: Float64Array, step: number) =>
    values.map((value, place) =>
      house.held[Math.floor(place * step / 3600)] === 1 ? 50 + 10 * Math.sin(place) : value
    );
  const { inside, insideHumidity, store } = house.series;
  const spoil = (values: Float64Array | null) => values === null ? null : nonsense(values, 3600);
  const depths = house.ground.filter(({ zone }) => zone === "garden").map(({ depth }) => depth);
  const ends = [Math.min(...depths), Math.max(...depths)];
  const flows = Object.fromEntries(
    Object.entries(house.heat!.flows).map(([name, values]) => [name, nonsense(values, 3600)]),
  ) as NonNullable<LoggedHouse["heat"]>["flows"];
  return {
    ...house,
    heat: { ...house.heat!, flows },
    series: {
      ...house.series,
      inside: spoil(inside),
      insideHumidity: spoil(insideHumidity),
      store: spoil(store),
    },
    ground: house.ground.map((probe) =>
      probe.zone === "garden" && !ends.includes(probe.depth)
        ? { ...probe, values: nonsense(probe.values, 3600) }
        : probe
    ),
    tracer: { ...house.tracer!, values: nonsense(house.tracer!.values, house.step) },
    air: {
      ...house.air!,
      store: nonsense(house.air!.store!, house.step),
      readings: house.air!.readings.map((reading, k) =>
        // the fan's power says when it ran
        k === 5 ? reading : { ...reading, values: nonsense(reading.values, house.step) }
      ),
    },
  };
}

Deno.test("calibrationStages(): hours held out enter no stage and no day of the joint fit", async () => {
  const request = calibrationTakes(study, {
    soil: await run.soil(),
    tubes: await run.tubes(),
    headers: await run.headers(),
    fan: await run.fan(),
  });
  const setting = request.setting!;
  const log = fromFullHour(readStudyLog(request.texts!, setting));
  const house = loggedHouse(log, setting, setting.holdOut);
  assert(house.held.includes(1));
  const of = (one: LoggedHouse) => {
    const question = { house: one, setting, inputs: request.house!, plan: request.plan! };
    return calibrationStages(question).map(({ stage, reason }) => [stage?.estimates, reason]);
  };
  assertEquals(of(spoilt(house)), of(house));
  const { there } = loggedWeather(house, request.plan!.climate);
  const logged = (one: LoggedHouse) => dayData(one, there).kinds.map((kind) => kind.logged);
  assertEquals(logged(spoilt(house)), logged(house));
});
