import { assert, assertEquals, assertThrows } from "@std/assert";
import { exercise, EXERCISES } from "../../lib/show/exercises.ts";
import { judge } from "../../lib/show/kit/exercise.ts";
import { KINDS } from "../../lib/units/mod.ts";
import { dampingDepth } from "../../lib/soil/mod.ts";

const find = (id: string) => EXERCISES.find((one) => one.id === id)!;

for (const one of EXERCISES) {
  Deno.test(`exercise ${one.id} takes its answer and gives each slip its own hint`, () => {
    // Property: right is right, a usual slip is told apart, open is open
    const unit = one.kind === "choice" ? "" : KINDS[one.kind].si;
    assertEquals(judge(one, `${one.answer} ${unit}`).state, "right");
    assertEquals(judge(one, null).state, "open");
    for (const slip of one.slips) {
      const verdict = judge(one, `${slip.value} ${unit}`);
      assertEquals(verdict, { state: "wrong", message: slip.hint });
    }
    assert(!one.question.includes("undefined") && one.explanation.length > 20);
  });
}

Deno.test("penetration of the yearly wave is 2.24 m for k = 1.0, C = 2.0 (Carslaw & Jaeger 1959)", () => {
  // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6, √(a·P/π), recomputed from the formula
  const answer = Number(find("soil.penetration").answer);
  assertEquals(answer.toFixed(2), "2.24");
  assert(Math.abs(dampingDepth(1.0 / 2.0e6) - answer) < 1e-9);
});

Deno.test("an answer in US units counts the same", () => {
  // Property: unit-aware
  assertEquals(judge(find("soil.penetration"), "7.35 ft").state, "right");
  assertEquals(judge(find("tubes.effectiveness"), "77 %").state, "right");
  assertEquals(judge(find("tubes.effectiveness"), 0.77).state, "right");
});

Deno.test("a wrong unit, a missing unit and nonsense are unreadable, not wrong", () => {
  // Property: messages of the unit reader reach the reader
  assertEquals(judge(find("soil.penetration"), "3 kg").state, "unreadable");
  assertEquals(judge(find("soil.penetration"), "2.24").state, "unreadable");
  assertEquals(judge(find("headers.starving"), "middle").state, "unreadable");
});

Deno.test("a value without a known slip is told its direction", () => {
  // Property: never silent
  assertEquals(judge(find("fan.halfSpeed"), "17 W").message, "Too large.");
  assertEquals(judge(find("fan.halfSpeed"), "-15 W").message, "The sign is wrong.");
  assert(judge(find("fan.halfSpeed"), "15 kW").message.includes("units"));
});

Deno.test("exercise() refuses an unknown id and lists the known ones", () => {
  // Property: message
  assertThrows(() => exercise("soil.colour", null), RangeError, "soil.penetration");
});
