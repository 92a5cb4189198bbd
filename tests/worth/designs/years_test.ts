// Property: years of designs, whoever runs them, and of a fan that never starts
import { assert, assertEquals } from "@std/assert";
import { workPool } from "winterground/study/mod.ts";
import { alone, kilowattHours, shared } from "../../../lib/basics/mod.ts";
import { asItIsYears } from "../../../lib/store/like_houses.ts";
import { ownChoice } from "../../../lib/worth/designs/choices.ts";
import { type BuiltDesign, designJudge } from "../../../lib/worth/designs/judge.ts";
import { designRows } from "../../../lib/worth/designs/rows.ts";
import type { DesignChoice } from "../../../lib/worth/designs/types.ts";
import { settledDesigns } from "../../../lib/worth/designs/years.ts";
import { demoQuestion } from "./demo.ts";

const { request } = demoQuestion;
const question = {
  ...demoQuestion,
  request: { ...request, inputs: { ...request.inputs, slices: 1 } },
};
const judge = designJudge(question);
const built = (changes: Partial<DesignChoice>) =>
  judge({ ...ownChoice(question), ...changes }) as BuiltDesign;
const designs = [
  built({}),
  built({ length: ownChoice(question).length / 2 }),
  built({ chargeStart: 80, dischargeBelow: -60 }),
];
const here = alone(settledDesigns(question.request)(designs));

Deno.test("several workers give the years that one thread gives, to the bit", async () => {
  const pool = workPool({ size: 2 });
  try {
    const steps = settledDesigns(question.request)(designs);
    assertEquals(await shared(steps, (piece) => pool.do(piece)), here);
  } finally {
    pool.close();
  }
});

Deno.test("a design whose fan never starts saves exactly nothing and uses no electricity", () => {
  assertEquals(here.map(({ fanRanFree, fanRanHeld }) => [fanRanFree, fanRanHeld]), [
    [true, true],
    [true, true],
    [false, false],
  ]);
  const { years } = alone(asItIsYears(question.request));
  const backupHeatNoFan = kilowattHours(years.held.ledger.heater);
  const energy = { ...question.worth.energy, backupHeatNoFan };
  const own = { ...question.own, saved: backupHeatNoFan - here[0]!.heat };
  const rows = designRows(
    designs.map((design, k) => ({ design, run: here[k]! })),
    { ...question, own, worth: { ...question.worth, energy } },
  );
  const idle = rows.find(({ choice }) => choice.chargeStart === 80)!;
  assertEquals([idle.saved, idle.fanEnergy], [0, 0]);
  const [, half] = designs.map(({ choice }) => rows.find((row) => row.choice === choice)!);
  assert(half!.saved > 0 && half!.saved < own.saved, `${half!.saved} of ${own.saved}`);
});
