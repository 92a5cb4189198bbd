import { assert, assertEquals, assertRejects, assertThrows } from "@std/assert";
import fc from "fast-check";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { lessonExercises } from "winterground/commands/lesson_template.ts";
import { judge } from "winterground/show/kit/exercise.ts";
import { LESSON_FOLDER, openLesson } from "winterground/show/lesson/lesson.ts";
import { readLessonFile } from "winterground/show/lesson/lesson_file.ts";
import { drawNumbers, exerciseFor, formulaValue } from "winterground/show/lesson/numbers.ts";
import { inTemporary } from "../../harness/in_temporary.ts";

const [DEPTH] = readLessonFile(lessonExercises(), "x.exercises.yaml");

Deno.test("formulaValue() is the value of the formula (Carslaw & Jaeger 1959)", () => {
  // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6: 0.5 mm²/s and a year give 2.24 m
  const value = formulaValue(DEPTH!.answer, { a: 0.5 });
  assert(Math.abs(value - 2.24) < 0.005, String(value));
  assertEquals(formulaValue("2 ^ 3 + max(1, b)", { b: 4 }), 12);
});

Deno.test("formulaValue() refuses all but sums", () => {
  // Property: no names but its own, no assignments, texts, units, or ways to a program
  for (
    const formula of [
      "c + 1",
      "a = 3",
      '"text"',
      "import({})",
      'createUnit("x")',
      'evaluate("1")',
      "a.constructor",
      "f(x) = x",
      "[1, 2]",
      "sqrt(-1)",
      "1 / 0",
      "1 +",
      "sqrt.constructor(1)",
      "cos(a)",
    ]
  ) assertThrows(() => formulaValue(formula, { a: 1 }), RangeError, "Cannot work out");
});

Deno.test("drawNumbers() gives each learner numbers on the steps, the same each time", () => {
  // Property: range, steps, repeatability; learners differ
  fc.assert(fc.property(fc.string(), (learner) => {
    const { a } = drawNumbers(DEPTH!, learner);
    assert(a! >= 0.3 && a! <= 0.9, String(a));
    assert(Math.abs((a! - 0.3) / 0.05 - Math.round((a! - 0.3) / 0.05)) < 1e-9);
    assertEquals(drawNumbers(DEPTH!, learner), { a: a! });
  }));
  const drawn = Array.from({ length: 100 }, (_, k) => drawNumbers(DEPTH!, `learner ${k}`).a);
  assert(new Set(drawn).size === 13, "all 13 steps are met by a hundred learners");
});

Deno.test("a learner climbs from hint to second hint to solution, and an answer in feet is right", () => {
  // Property: the ladder; the solution names the learner's own numbers
  const one = exerciseFor(DEPTH!, "Kim");
  assertEquals(judge(one, " Hint ").message, one.hints![0]);
  assertEquals(judge(one, "second hint").message, one.hints![1]);
  assertEquals(judge(one, "Solution.").state, "solution");
  assert(judge(one, "solution").message.includes(`${drawNumbers(DEPTH!, "Kim").a}e-6`));
  assertEquals(judge(one, `${Number(one.answer) / 0.3048} ft`).state, "right");
  for (const slip of one.slips) assertEquals(judge(one, `${slip.value} m`).message, slip.hint);
});

Deno.test("readLessonFile() names the line of a fault", () => {
  // Property: file, line, key
  const wrong = (change: (text: string) => string, line: number, words: string) => {
    const error = assertThrows(
      () => readLessonFile(change(lessonExercises()), "x.yaml"),
      InputError,
      words,
    );
    assertEquals(error.location?.line, line, error.message);
  };
  wrong((text) => text.replace("kind: length", "kind: lenght"), 8, "kind");
  wrong((text) => text.replace("    unit: m\n", ""), 8, '"unit"');
  wrong((text) => text.replace("step: 0.05", "step: 1e-9"), 10, "steps");
});

Deno.test("openLesson() counts what is right and keeps the score beside the lesson", async () => {
  // Property: one of one; nothing is kept where a study runs the lesson
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(join(folder, "deep.exercises.yaml"), lessonExercises());
    const before = Deno.cwd();
    const right = `${exerciseFor(DEPTH!, "Kim").answer} m`;
    try {
      Deno.chdir(folder);
      const lesson = await openLesson("deep", "Kim");
      lesson.exercise("depth", "900 m");
      assert(lesson.exercise("depth", right)["text/plain"].includes("Right."));
      assertThrows(() => lesson.exercise("width", null), RangeError, "depth");
      await lesson.score();
      const [score] = [...Deno.readDirSync(folder)].filter(({ name }) => name.includes("score"));
      const kept = JSON.parse(await Deno.readTextFile(join(folder, score!.name)));
      assertEquals([kept.learner, kept.right, kept.of, kept.exercises[0].wrong], ["Kim", 1, 1, 1]);
      await Deno.remove(join(folder, score!.name));
      Deno.env.set(LESSON_FOLDER, folder);
      await (await openLesson("deep")).score();
      assertEquals([...Deno.readDirSync(folder)].length, 1);
      await assertRejects(() => openLesson("none"), InputError, "Cannot find the exercises");
    } finally {
      Deno.env.delete(LESSON_FOLDER);
      Deno.chdir(before);
    }
  });
});
