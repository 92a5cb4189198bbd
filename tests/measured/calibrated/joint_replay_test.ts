import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import type { DayData } from "../../../lib/measured/calibrated/joint_days.ts";
import {
  followedDays,
  jointReplay,
  type MovedParameter,
  withCurveDoubt,
  withLastingDoubt,
} from "../../../lib/measured/calibrated/joint_replay.ts";
import type { Replay } from "../../../lib/measured/calibrated/replay.ts";

const DAYS = 60;
const TRUTH = 1.6;
const BY = 1.3;

/** What a day of the made-up model hangs on, and the noise of its log. */
const slope = Array.from({ length: DAYS }, (_, day) => 2 + Math.sin(day / 5));
const noise = Array.from({ length: DAYS }, (_, day) => 0.05 * Math.sin(1.7 * day * day));

/** A model that bends in the logarithm of its one parameter, by its square and by its cube. */
const model = (square: number, cube: number) => (value: number): Replay => {
  const step = Math.log(value);
  const way = step + square * step ** 2 + cube * step ** 3;
  return { days: slope.map((one) => one * way) } as unknown as Replay;
};
const daysOf = (replay: Replay) => (replay as unknown as { readonly days: number[] }).days;

function fitted(square: number, cube = 0) {
  const run = model(square, cube);
  const data: DayData = {
    kinds: [{
      logged: daysOf(run(TRUTH)).map((one, day) => one + noise[day]!),
      of: daysOf,
      lasting: [],
    }],
  };
  const moved: MovedParameter[] = [{
    name: "made up",
    key: null,
    unit: "",
    start: 1,
    prior: { low: 0.1, high: 10 },
    by: BY,
    higher: run(BY),
    lower: run(1 / BY),
  }];
  const fit = jointReplay(followedDays(data, { coarse: run(1), whole: run(1) }, moved));
  const [curved] = fit.stage.estimates;
  const told = withCurveDoubt(fit, run(curved!.value));
  return { curved: curved!, told: told.estimates[0]! };
}

Deno.test("jointReplay() follows a model that bends, and withCurveDoubt() adds nothing there", () => {
  // Property: a parabola through three replays is the model, so a replay at the result says the same
  for (const square of [0, 0.8]) {
    const { curved, told } = fitted(square);
    assert(curved.low < TRUTH && TRUTH < curved.high, `${curved.low} to ${curved.high}`);
    assert(Math.log(curved.high / curved.low) < 0.05);
    assertAlmostEquals(told.low, curved.low, 1e-9);
    assertAlmostEquals(told.high, curved.high, 1e-9);
  }
});

Deno.test("withCurveDoubt() bounds what a model with a cube is off by, and moves no value", () => {
  // Property: beyond the replays the cube is steeper than the parabola, so the residual at the result
  // shows more than the error
  const { curved, told } = fitted(0, 1.5);
  assertAlmostEquals(told.value, curved.value, 1e-12);
  const half = ({ high, value }: typeof told) => Math.log(high / value);
  const added = Math.sqrt(half(told) ** 2 - half(curved) ** 2);
  const error = Math.abs(Math.log(curved.value / TRUTH));
  assert(error > 0.03, "a model with a cube is off");
  const bound = added / 1.96 * Math.sqrt(3);
  assert(bound > error && bound < 3 * error, `${bound} for ${error}`);
});

Deno.test("withLastingDoubt() widens what an instrument acts like, and nothing else", () => {
  // Property: standard uncertainties add up in squares (GUM 5.1.2), the value stays
  const named = (name: string) => ({
    name,
    key: null,
    unit: "",
    start: 1,
    prior: { low: 0.1, high: 10 },
  });
  const { curved } = fitted(0);
  const stage = {
    name: "made up",
    estimates: ["one", "two"].map((name) => ({ ...curved, name })),
    correlation: [[1, 0], [0, 1]],
    used: "",
    count: 0,
    places: [],
    cannotTell: [],
    notIdentified: [],
    strengths: [],
    error: 0,
    settled: true,
  };
  const wide = withLastingDoubt(stage, ["one", "two"].map(named), [{ parameter: 1, share: 0.1 }]);
  assertEquals(wide.estimates[0], stage.estimates[0]);
  const { value, high, low, standardUncertainty } = wide.estimates[1]!;
  assertAlmostEquals(value, curved.value, 1e-12);
  assertAlmostEquals(
    Math.log(high / value),
    Math.hypot(Math.log(curved.high / curved.value), 0.196),
    1e-12,
  );
  assertAlmostEquals(Math.log(high / value), Math.log(value / low), 1e-12);
  assertAlmostEquals(
    standardUncertainty,
    Math.hypot(curved.standardUncertainty, 0.1 * value),
    1e-12,
  );
});
