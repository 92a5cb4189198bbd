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
    for (const slip of one.slips.filter(({ because }) => because === undefined)) {
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
  assertEquals(judge(find("headers.starving"), "left").state, "unreadable");
});

Deno.test("a value without a known slip is told its direction", () => {
  // Property: never silent
  assertEquals(judge(find("fan.halfSpeed"), "17 W").message, "Too large.");
  assertEquals(judge(find("fan.halfSpeed"), "-15 W").message, "The sign is wrong.");
  assert(judge(find("fan.halfSpeed"), "15 kW").message.includes("units"));
});

Deno.test("every exercise has two hints that do not give it away, and a solution that its answer is in", () => {
  // Property: the ladder of each; a hint holds no number that is right, the solution holds one
  for (const one of EXERCISES) {
    const { hints, solution } = one;
    assert(hints !== undefined && solution !== undefined, `no help for ${one.id}`);
    const answers = ["hint", "second hint", "solution"].map((asked) => judge(one, asked));
    assertEquals(answers.map(({ state }) => state), ["hint", "hint", "solution"]);
    assertEquals(answers.map(({ message }) => message), [...hints, solution]);
    if (one.kind === "choice") continue;
    const { si } = KINDS[one.kind];
    const given = (text: string) =>
      (text.replaceAll(/(\d) (?=\d{3})/g, "$1").match(
        /\d+(?:\.\d+)?(?:\s?%| \p{L}[^\s.,;:]*)?/gu,
      ) ?? [])
        .flatMap((
          found,
        ) => [found, `${found} ${si}`, `${found.replace(/^([\d.]+).*$/, "$1")} ${si}`])
        .some((text) => judge({ ...one, tolerance: 0.01 }, text).state === "right");
    for (const hint of hints) assert(!given(hint), `${one.id}: ${hint}`);
    assert(given(solution), `${one.id}: ${solution}`);
  }
});

Deno.test("typical slips of any sum get a hint of their own", () => {
  // Property: ten ways to go wrong by a factor or a sign, each told apart from "too large" and "too small"
  for (const one of EXERCISES) {
    if (one.kind === "choice") continue;
    const answer = Number(one.answer);
    const { si } = KINDS[one.kind];
    const slips = [
      2,
      1 / 2,
      4,
      1 / 4,
      Math.PI,
      1 / Math.PI,
      10,
      1 / 10,
      1000,
      1 / 1000,
      -1,
      3600,
      1 / 3600,
    ];
    const told = slips.map((factor) => judge(one, `${answer * factor} ${si}`));
    for (const { state, message } of told) {
      assertEquals(state, "wrong", one.id);
      assert(!/^(?:Too large|Too small)\.$/.test(message), `${one.id}: ${message}`);
    }
    assert(new Set(told.map(({ message }) => message)).size >= 10, one.id);
  }
});

Deno.test("exercise() refuses an unknown id and lists the known ones", () => {
  // Property: message
  assertThrows(() => exercise("soil.colour", null), RangeError, "soil.penetration");
});
