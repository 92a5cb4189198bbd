// Property: a planted blocked tube is found by pressure and flow, a clean field is not; limits follow
// from the header chapter.
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { randomNormal } from "d3-random";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { fanAirPath, fanChapter } from "../../../lib/fan/mod.ts";
import { headersChapter, summariseHeaders } from "../../../lib/headers/mod.ts";
import {
  blockedLimits,
  commissioning,
  findBlocked,
  judgeCommissioning,
  type Log,
} from "../../../lib/measured/mod.ts";
import { DEFAULTS } from "../../harness/defaults.ts";
import { field, HEADERS, STATE, TUBES } from "../../headers/fields.ts";

const tubes = field();
const inputs = { ...HEADERS, layout: "Z" as const };
const question = { inputs, tubes, state: STATE };
const headers = headersChapter(inputs, tubes, STATE);
const FAN = { ...DEFAULTS.fan, fan: "duct-315", count: 1, speed: 0.7, riserDiameter: 0.315 };
const surroundings = { tubes, tubesInputs: TUBES, headers, ...STATE };
const fan = fanChapter(FAN, surroundings);
const limits = blockedLimits({
  headers: question,
  path: fanAirPath(FAN, surroundings),
  curve: fan.curve,
});

Deno.test("blockedLimits(): the clean state is the fan's own operating point", () => {
  const [clean] = limits.states;
  assertAlmostEquals(clean!.airFlow, fan.airFlow, 2e-3 * fan.airFlow);
  assertEquals(clean!.resistance, 1);
  assertEquals(clean!.found, false);
});

Deno.test("blockedLimits(): more tubes shut, less air and more resistance", () => {
  const shut = limits.states.filter((state) => state.name !== "every tube a third full of water");
  shut.slice(1).forEach((state, i) => {
    assert(state.airFlow < shut[i]!.airFlow, state.name);
    assert(state.resistance > shut[i]!.resistance, state.name);
  });
  // n tubes in parallel between wide headers: resistance near (n/(n − k))², less where headers lose
  const [, one] = shut;
  const ideal = (tubes.count / (tubes.count - 1)) ** 2;
  assert(one!.resistance > 1.03 && one!.resistance < ideal * 1.01, String(one!.resistance));
  const wet = limits.states.at(-1)!;
  assert(wet.resistance > 1.3 && wet.found, "water in every tube shows");
  assert(limits.fewest !== null && limits.fewest <= 3, String(limits.fewest));
});

/** Log of pressure and flow with tubes shut from a day on. */
function logOf(seed: number, shutFrom: number, shut: number): Log {
  const random = xoroshiro128plus(seed);
  const normal = randomNormal.source(() => uniformFloat64(random))(0, 1);
  const [step, days] = [900, 40];
  const count = days * 96;
  const state = (day: number) =>
    limits.states.find((one) => one.shut === (day >= shutFrom ? shut : 0))!;
  const [pressure, flow] = [new Float64Array(count), new Float64Array(count)];
  // meters that are off, but always by the same
  const [pressureOff, flowOff] = [1 * normal(), 1 + 0.05 * normal()];
  for (let k = 0; k < count; k++) {
    const day = Math.floor(k / 96);
    const runs = k % 96 >= 40 && k % 96 < 64;
    const { airFlow, pressure: drop } = state(day);
    pressure[k] = (runs ? drop : 0) + pressureOff + 0.6 * normal();
    flow[k] = runs ? airFlow * flowOff * (1 + 0.02 * normal()) : 0;
  }
  const channel = (name: string, quantity: "pressure" | "airFlow", values: Float64Array) => ({
    sensor: {
      name,
      logger: "duct",
      quantity,
      zone: quantity === "pressure" ? "supply header" : "duct",
      accuracy: 1,
    },
    values,
    flags: new Uint8Array(count),
  });
  return {
    start: 0,
    step,
    count,
    channels: [channel("dp", "pressure", pressure), channel("flow", "airFlow", flow)],
    findings: [],
    files: [],
    named: [],
    untested: [],
  };
}

Deno.test("findBlocked(): finds planted shut tubes from their day on, none in a clean field", () => {
  for (let seed = 1; seed <= 60; seed++) {
    assertEquals(findBlocked(logOf(seed, Infinity, 0), limits).findings, [], `clean, seed ${seed}`);
    const shut = Math.max(limits.fewest!, 2);
    const { findings, days } = findBlocked(logOf(seed, 20, shut), limits);
    assertEquals(findings.length, 1, `seed ${seed}`);
    assertEquals(findings[0]!.from, 20 * 86400);
    assertEquals(findings[0]!.to, 40 * 86400);
    assert(Math.abs(days.at(-1)!.shut - shut) <= 1, `${days.at(-1)!.shut} of ${shut}`);
  }
});

Deno.test("findBlocked(): says what it needs where a channel is missing", () => {
  const log = logOf(1, Infinity, 0);
  const check = findBlocked({ ...log, channels: log.channels.slice(1) }, limits);
  assert(check.untested!.includes("supply header"));
});

Deno.test("commissioning(): the design itself is accepted, a shut or rich tube is not", () => {
  const result = summariseHeaders(headers, tubes);
  const sheet = commissioning(question, result);
  const speeds = sheet.tubes.map(({ speed }) => speed);
  const mean = speeds.reduce((sum, one) => sum + one, 0) / speeds.length;
  assertAlmostEquals(mean, tubes.airSpeed, 1e-6 * mean);
  const verdicts = (list: readonly number[]) =>
    judgeCommissioning(sheet, list).map(({ verdict }) => verdict);
  assert(verdicts(speeds).every((one) => one === "accept"));
  assert(verdicts(speeds.map((one) => 0.8 * one)).every((one) => one === "accept"), "another fan");
  const shut = verdicts(speeds.map((one, i) => i === 4 ? 0.3 * one : one));
  assertEquals(shut.filter((one) => one !== "accept"), ["low"]);
  assertEquals(shut[4], "low");
  assertEquals(verdicts(speeds.map((one, i) => i === 2 ? NaN : one))[2], "not measured");
  assert(sheet.testPressure > headers.pressureDrop);
});
