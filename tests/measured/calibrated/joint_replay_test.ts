import { assert, assertAlmostEquals } from "@std/assert";
import {
  type DayData,
  jointReplay,
  type MovedParameter,
  weighDays,
  withLineDoubt,
} from "../../../lib/measured/calibrated/joint_replay.ts";
import type { Replay } from "../../../lib/measured/calibrated/replay.ts";

const DAYS = 60;
const TRUTH = 1.3;

/** What a day of the made-up model hangs on, and the noise of its log. */
const slope = Array.from({ length: DAYS }, (_, day) => 2 + Math.sin(day / 5));
const noise = Array.from({ length: DAYS }, (_, day) => 0.05 * Math.sin(1.7 * day * day));

/** A model that bends in the logarithm of its one parameter. */
const model = (bend: number) => (value: number): Replay => {
  const step = Math.log(value);
  return { days: slope.map((one) => one * (step + bend * step ** 2)) } as unknown as Replay;
};
const daysOf = (replay: Replay) => (replay as unknown as { readonly days: number[] }).days;

function fitted(bend: number) {
  const run = model(bend);
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
    movedTo: 1.15,
    replay: run(1.15),
  }];
  const days = weighDays(data, run(1), moved);
  const straight = jointReplay(days);
  const [estimate] = straight.estimates;
  const told = withLineDoubt(straight, run(estimate!.value), days);
  return { straight: estimate!, told: told.estimates[0]! };
}

Deno.test("withLineDoubt() adds nothing where the model is straight", () => {
  // Property: a replay at the result says what the lines say
  const { straight, told } = fitted(0);
  assert(straight.low < TRUTH && TRUTH < straight.high);
  assertAlmostEquals(told.low, straight.low, 1e-9);
  assertAlmostEquals(told.high, straight.high, 1e-9);
});

Deno.test("withLineDoubt() bounds what a bent model is off by, and moves no value", () => {
  // Property: the curve of a step x and its square is steeper than the line at the start, so the residual
  // at the result shows more than the error
  const { straight, told } = fitted(1.5);
  assertAlmostEquals(told.value, straight.value, 1e-12);
  const half = ({ high, value }: typeof told) => Math.log(high / value);
  const added = Math.sqrt(half(told) ** 2 - half(straight) ** 2);
  const error = Math.abs(Math.log(straight.value / TRUTH));
  assert(error > 0.03, "a bent model is off");
  const bound = added / 1.96 * Math.sqrt(3);
  assert(bound > error && bound < 3 * error, `${bound} for ${error}`);
});
