// Property: a grade counts what is inside and what is not, and refuses what it cannot grade.
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { gradeCalibration, gradeMine } from "../../../lib/measured/calibrated/grade.ts";
import type { Estimate } from "../../../lib/measured/mod.ts";

const TRUTH = {
  name: "truth.csv",
  text:
    "key,value,unit,meaning\nhouse.leakage,0.65,1/h,air changes\nsoil.diffusivity,4e-7,m2/s,soil\n" +
    "change.airFlow,0.8,1,over the plan\nhouse.leafArea,2,1,leaves\n",
};
const PLANTED = {
  name: "planted.csv",
  text: "kind,channel,other,from,to,size\n" +
    "spike,intake,,2025-11-02T00:00:00Z,2025-11-02T00:15:00Z,9\n" +
    "swapped,a,b,2025-11-03T00:00:00Z,2025-11-09T00:00:00Z,0\n" +
    "drift,house,,2025-11-03T00:00:00Z,2025-12-09T00:00:00Z,1\n",
};
const at = (text: string) => Date.parse(text) / 1000;
const estimate = (
  part: Partial<Estimate> & Pick<Estimate, "value" | "low" | "high">,
): Estimate => ({
  name: "x",
  key: null,
  unit: "",
  standardUncertainty: 1,
  ...part,
});

const grade = gradeCalibration({
  texts: { truth: TRUTH, plantedFaults: PLANTED },
  fanSpeed: 0.5,
  estimates: [
    estimate({ key: "house.leakage", unit: "1/h", value: 0.6, low: 0.5, high: 0.7 }),
    estimate({ key: "fan.speed", value: 0.5, low: 0.45, high: 0.55 }),
    estimate({ name: "soil diffusivity", unit: "m2/s", value: 5e-7, low: 4e-7, high: 6e-7 }),
    estimate({ name: "conductance of the tubes", value: 1, low: 0, high: 2 }),
  ],
  findings: [
    {
      kind: "spike",
      channel: "intake",
      from: at("2025-11-02T00:00:00Z"),
      to: at("2025-11-02T00:15:00Z"),
      message: "",
    },
    {
      kind: "swapped",
      channel: "b",
      from: at("2025-11-03T02:00:00Z"),
      to: at("2025-11-09T00:00:00Z"),
      message: "",
    },
    { kind: "stuck", channel: "c", from: 0, to: 1, message: "" },
    { kind: "gap", channel: "c", from: 0, to: 1, message: "" },
  ],
});

Deno.test("gradeCalibration(): inside, outside, not given; faults found, missed and never planted", () => {
  assertEquals(grade.reason, null);
  assertEquals(grade.values.map(({ name, truth, inside }) => [name, truth, inside]), [
    ["house.leakage", 0.65, true],
    ["fan.speed", 0.4, false],
    ["soil diffusivity", 4e-7, true],
  ]);
  assertEquals(grade.notGiven.map(({ key }) => key), ["house.leafArea"]);
  assertEquals(grade.faults.map(({ found }) => found), [true, true, false]);
  assertEquals(grade.unplanted, 1);
});

Deno.test("gradeCalibration(): without a truth nothing is graded, and it says why", () => {
  const none = gradeCalibration({ texts: null, fanSpeed: 1, estimates: [], findings: [] });
  assertEquals([none.values, none.faults], [[], []]);
  assertEquals(/names no truth/.test(none.reason!), true);
});

Deno.test("gradeMine(): a learner's values are graded; keys and ends are checked", () => {
  const [one, other] = gradeMine(grade, {
    "house.leakage": [0.6, 0.5, 0.62],
    "house.leafArea": [2.1, 1.5, 2.7],
  });
  assertEquals([one!.inside, one!.truth, one!.unit], [false, 0.65, "1/h"]);
  assertEquals([other!.inside, other!.unit], [true, ""]);
  assertThrows(() => gradeMine(grade, { "house.leaks": [1, 0, 2] }), InputError, "house.leakage");
  assertThrows(() => gradeMine(grade, { "house.leakage": [1, 2, 0] }), InputError, "lower end");
  assertThrows(() => gradeMine(grade, { "house.leakage": [NaN, 0, 1] }), InputError, "found [NaN");
});
